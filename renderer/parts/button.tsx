import type { ReactNode } from 'react'
import { Button as AriaButton } from 'react-aria-components'
import { KeyCap } from './key-cap.tsx'
import './button.css'

export interface ButtonProps {
  readonly children: ReactNode
  readonly onPress: () => void
  /** `strong`: the one thing a screen is for; `plain`: with an edge; `quiet`: like a link. */
  readonly look?: 'strong' | 'plain' | 'quiet'
  /** `KeyboardEvent.code` of the key that does the same, shown beside the label. */
  readonly keyCode?: string
  readonly isDisabled?: boolean
  /** 44 px and more: for all that is used during a trial. */
  readonly isLarge?: boolean
  readonly label?: string
}

export function Button({
  children,
  onPress,
  look = 'plain',
  keyCode,
  isDisabled = false,
  isLarge = false,
  label,
}: ButtonProps) {
  return (
    <AriaButton
      className={`button button-${look}${isLarge ? ' button-large' : ''}`}
      onPress={onPress}
      isDisabled={isDisabled}
      {...(label === undefined ? {} : { 'aria-label': label })}
    >
      {children}
      {keyCode === undefined ? null : <KeyCap code={keyCode} />}
    </AriaButton>
  )
}
