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
 * Hides the whole screen from eyes beside the examiner; what runs under it runs on. The cover itself takes the
 * focus, not its button, so that the main key still means what it meant.
 */
export function Cover({ title, detail, liftLabel, keyCode, onLift }: CoverProps) {
  const cover = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    cover.current?.showModal()
    cover.current?.focus()
  }, [])
  return (
    <dialog
      className="cover"
      aria-label={title}
      ref={cover}
      tabIndex={-1}
      onCancel={(event) => {
        event.preventDefault()
        onLift()
      }}
    >
      <p className="cover-title">{title}</p>
      <p>{detail}</p>
      <button type="button" className="cover-lift" onClick={onLift}>
        {liftLabel}
        <KeyCap code={keyCode} />
      </button>
    </dialog>
  )
}
