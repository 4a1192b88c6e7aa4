import { Switch } from 'react-aria-components'
import './toggle.css'

export interface ToggleProps {
  readonly label: string
  readonly isOn: boolean
  readonly onChange: (isOn: boolean) => void
  readonly hint?: string | undefined
}

/** On or off, at once. */
export function Toggle({ label, isOn, onChange, hint }: ToggleProps) {
  return (
    <Switch className="toggle" isSelected={isOn} onChange={onChange}>
      <span className="toggle-track" aria-hidden="true">
        <span className="toggle-knob" />
      </span>
      <span>
        {label}
        {hint ? <span className="choice-detail">{hint}</span> : null}
      </span>
    </Switch>
  )
}
