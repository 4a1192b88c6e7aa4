import type { ComponentProps } from 'react'
import { KeyCap } from './key-cap.tsx'
import './main-action.css'

export interface MainActionProps extends Omit<ComponentProps<'button'>, 'children' | 'className' | 'type'> {
  readonly label: string
  /** `KeyboardEvent.code` of the key that does it. */
  readonly keyCode: string
  /** True while it can't be done yet: it stays in place, is shown as waiting and does nothing. */
  readonly isWaiting?: boolean
}

/**
 * The next thing to do: large, always in the same place, with the key that does it. A native button, so that
 * whoever times something can take the input event's own stamp from `onPointerDown`.
 */
export function MainAction({ label, keyCode, isWaiting = false, ...rest }: MainActionProps) {
  return (
    <button
      {...rest}
      type="button"
      className="main-action"
      aria-disabled={isWaiting}
      {...(isWaiting ? { onClick: undefined, onPointerDown: undefined } : {})}
    >
      <span>{label}</span>
      <KeyCap code={keyCode} />
    </button>
  )
}
