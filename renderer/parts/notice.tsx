import type { ReactNode } from 'react'
import { say } from '../words/index.ts'
import './notice.css'

export interface NoticeProps {
  readonly tone: 'plain' | 'caution' | 'fault'
  readonly title?: string | undefined
  readonly children?: ReactNode
  /** Read out when it appears, without moving the focus. */
  readonly isLive?: boolean
}

/** A message in place. Its tone shows in a sign and in words for those who hear it, not in colour alone. */
export function Notice({ tone, title, children, isLive = false }: NoticeProps) {
  return (
    <div
      className={`notice notice-${tone}`}
      {...(isLive ? { role: tone === 'fault' ? 'alert' : 'status' } : {})}
    >
      <span className="notice-sign" aria-hidden="true" />
      <div className="stack stack-tight">
        {tone === 'plain' ? null : <span className="unseen">{say(`parts.tone.${tone}`)}</span>}
        {title ? <p className="notice-title">{title}</p> : null}
        {children}
      </div>
    </div>
  )
}
