import { type ReactNode, useRef } from 'react'
import { Button } from './button.tsx'
import { useArrival } from './use-arrival.ts'
import './page.css'

export interface PageProps {
  readonly title: string
  readonly lead?: ReactNode
  /** The way back, above the title. */
  readonly back?: { readonly label: string; readonly onPress: () => void } | undefined
  readonly children: ReactNode
  /** Wider, for lists and tables. */
  readonly isWide?: boolean
}

/** An ordinary screen: its heading takes the focus when it opens, so that reading begins there. */
export function Page({ title, lead, back, children, isWide = false }: PageProps) {
  const heading = useRef<HTMLHeadingElement>(null)
  useArrival(heading)
  return (
    <main className={isWide ? 'page page-wide' : 'page'}>
      {back ? (
        <div className="page-back">
          <Button look="quiet" onPress={back.onPress}>
            <span aria-hidden="true">←</span>
            {back.label}
          </Button>
        </div>
      ) : null}
      <h1 className="page-title" ref={heading} tabIndex={-1}>
        {title}
      </h1>
      {lead ? <div className="page-lead">{lead}</div> : null}
      {children}
    </main>
  )
}

export interface SectionProps {
  readonly title: string
  readonly hint?: ReactNode
  readonly children: ReactNode
}

/** A part of a page under a heading of its own. */
export function Section({ title, hint, children }: SectionProps) {
  return (
    <section className="section">
      <div className="section-head">
        <h2 className="section-title">{title}</h2>
        {hint ? <p className="soft">{hint}</p> : null}
      </div>
      {children}
    </section>
  )
}
