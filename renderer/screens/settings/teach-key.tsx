import { useEffect, useState } from 'react'
import { COMMAND_KEYS } from '../../input/keys.ts'
import { Button } from '../../parts/button.tsx'
import { KeyCap } from '../../parts/key-cap.tsx'
import { Notice } from '../../parts/notice.tsx'
import { say } from '../../words/index.ts'
import './settings.css'

export interface TeachKeyProps {
  readonly label: string
  readonly hint?: string
  /** Null: none taught. */
  readonly code: string | null
  /** A key that already means something else here. */
  readonly taken: string | null
  readonly onTaught: (code: string) => void
  readonly onForgotten?: () => void
}

/** Keys that move the focus, leave a dialog or change the meaning of others: they can't be the one key. */
const KEPT = /^(Tab|Escape|Shift|Control|Alt|Meta|CapsLock|Fn|OS|ContextMenu|F(\d|1[0-2])$)/

/** Letters that mean something of their own during a test. */
const COMMANDS = new Set(Object.values(COMMAND_KEYS).map((key) => `Key${key.toUpperCase()}`))

/** A key taught by pressing it: whatever the keyboard or pedal sends is what will be listened for. */
export function TeachKey({ label, hint, code, taken, onTaught, onForgotten }: TeachKeyProps) {
  const [isListening, setListening] = useState(false)
  const [problem, setProblem] = useState<'kept' | 'taken' | 'command' | null>(null)
  useEffect(() => {
    if (!isListening) return
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.repeat) return
      event.preventDefault()
      event.stopPropagation()
      if (event.code === 'Escape' || event.code === 'Tab') return setListening(false)
      if (event.code === '' || KEPT.test(event.code)) return setProblem('kept')
      if (COMMANDS.has(event.code)) return setProblem('command')
      if (event.code === taken) return setProblem('taken')
      setProblem(null)
      setListening(false)
      onTaught(event.code)
    }
    window.addEventListener('keydown', onKeyDown, { capture: true })
    return () => window.removeEventListener('keydown', onKeyDown, { capture: true })
  }, [isListening, taken, onTaught])
  return (
    <div className="stack stack-tight">
      <div className="settings-key">
        <div>
          <p className="settings-key-label">{label}</p>
          {hint ? <p className="soft small">{hint}</p> : null}
        </div>
        <output className="settings-key-cap">
          {isListening ? say('settings.press') : code ? <KeyCap code={code} /> : say('settings.none')}
        </output>
        <div className="row">
          <Button
            label={say('settings.teach.label', { what: label })}
            onPress={() => {
              setProblem(null)
              setListening(true)
            }}
          >
            {say('settings.teach')}
          </Button>
          {code && onForgotten ? (
            <Button look="quiet" label={say('settings.forget.label', { what: label })} onPress={onForgotten}>
              {say('settings.forget')}
            </Button>
          ) : null}
        </div>
      </div>
      {problem ? <Notice tone="fault" isLive title={say(`settings.key.${problem}`)} /> : null}
    </div>
  )
}
