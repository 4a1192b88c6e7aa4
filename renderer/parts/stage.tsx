import type { ReactNode } from 'react'
import './stage.css'

export interface StageProps {
  /** Where we are: hand, trial, name of the test. */
  readonly head: ReactNode
  readonly children: ReactNode
  /** The next thing to do, always at this spot of the screen. */
  readonly main: ReactNode
  /** What else may be done now. */
  readonly others?: ReactNode
}

/** A screen that is read at arm's length: one thing fills it and the next action never moves. */
export function Stage({ head, children, main, others }: StageProps) {
  return (
    <main className="stage">
      <div className="stage-head">{head}</div>
      <div className="stage-body">{children}</div>
      <div className="stage-foot">
        <div className="stage-main">{main}</div>
        <div className="stage-others">{others}</div>
      </div>
    </main>
  )
}
