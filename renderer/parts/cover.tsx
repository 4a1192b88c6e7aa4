import { useEffect, useRef } from 'react'
import { KeyCap } from './key-cap.tsx'
import './cover.css'

export interface CoverProps {
  readonly title: string
  readonly detail: string
  readonly liftLabel: string
  /** The key that lifts it again. */
  readonly keyCode: string
  readonly onLift: () => void
}

/**
 * Hides the whole screen from eyes beside the examiner; what runs under it runs on. It is no dialog and takes
 * the focus itself, not for its button, so that the main key still means what it meant.
 */
export function Cover({ title, detail, liftLabel, keyCode, onLift }: CoverProps) {
  const cover = useRef<HTMLElement>(null)
  useEffect(() => {
    const before = document.activeElement
    cover.current?.showPopover()
    cover.current?.focus()
    return () => {
      if (before instanceof HTMLElement) before.focus()
    }
  }, [])
  return (
    <section className="cover" aria-label={title} ref={cover} tabIndex={-1} popover="manual">
      <p className="cover-title">{title}</p>
      <p>{detail}</p>
      <button type="button" className="cover-lift" onClick={onLift}>
        {liftLabel}
        <KeyCap code={keyCode} />
      </button>
    </section>
  )
}
