/** Several things of which one is picked: by its digit, by its letter where it has one, or by the pointer. */
import { useEffect, useRef } from 'react'
import type { StepView } from '../../protocols/runner/view.ts'
import { COMMAND_KEYS, happeningKeys, printed } from '../input/keys.ts'
import { capOf } from '../input/keys-shown.ts'
import { KeyCap } from '../parts/key-cap.tsx'
import { isTyping } from '../parts/use-main-key.ts'
import './picks.css'

interface Pick {
  readonly id: string
  readonly text: string
  /** The sign that comes before the text, such as the grade itself. */
  readonly sign?: string
  /** Marked as one that takes a reason. */
  readonly aside?: string | null
}

const DIALOGS = 'dialog[open], [role=dialog], [role=alertdialog]'
const LETTERS = [...'abcdefghijklmnopqrstuvwxyz']

/** Letters that mean something else while this step is given: commands, and what may happen. */
const takenBy = (step: StepView): readonly (string | null)[] => [
  ...Object.values(COMMAND_KEYS),
  ...Object.values(
    happeningKeys(step.happenings.filter(({ becomes, key }) => becomes === 'tally' || key !== null)),
  ),
]

/**
 * The keys of what may be picked: one that is a digit has its own, the others are counted from 1; past the ninth,
 * a free letter of the id or the alphabet.
 */
export function pickKeys(
  ids: readonly string[],
  taken: readonly (string | null)[],
): Readonly<Record<string, string | null>> {
  const ownDigits = ids.some((id) => /^\d+$/.test(id))
  const used = new Set(taken)
  const keys = ids.map((id, index) => {
    const digit = ownDigits ? id : String(index + 1)
    if (/^\d$/.test(digit)) return [id, digit] as const
    const letter = [...id, ...LETTERS].find((each) => LETTERS.includes(each) && !used.has(each)) ?? null
    used.add(letter)
    return [id, letter] as const
  })
  return Object.fromEntries(keys)
}

/** The digit of a key wherever the layout has it, else what is printed on it. */
export function pickedBy(event: { readonly key: string; readonly code: string }): string {
  return /^(?:Digit|Numpad)(\d)$/.exec(event.code)?.[1] ?? printed(event.key)
}

/** Picks by key; `at` is the press's own time, on the page's clock. */
function usePickKeys(keys: Readonly<Record<string, string | null>>, onPick: OnPick): void {
  const newest = useRef({ keys, onPick })
  useEffect(() => {
    newest.current = { keys, onPick }
  })
  useEffect(() => {
    const listen = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.repeat) return
      if (isTyping(event.target) || document.querySelector(DIALOGS)) return
      const pressed = pickedBy(event)
      const found = Object.entries(newest.current.keys).find(([, key]) => key === pressed)
      if (found === undefined) return
      event.preventDefault()
      newest.current.onPick(found[0], { at: event.timeStamp, input: 'key' })
    }
    addEventListener('keydown', listen)
    return () => removeEventListener('keydown', listen)
  }, [])
}

type OnPick = (id: string, press: { readonly at: number; readonly input: 'key' | 'pointer' }) => void

interface Props {
  readonly label: string
  readonly step: StepView
  readonly picks: readonly Pick[]
  readonly picked: string | null
  readonly onPick: OnPick
}

/** A press picks, another one picks anew: nothing stands before the main key keeps it. */
export function Picks({ label, step, picks, picked, onPick }: Props) {
  const keys = pickKeys(
    picks.map(({ id }) => id),
    takenBy(step),
  )
  usePickKeys(keys, onPick)
  const down = useRef<number | null>(null)
  return (
    <fieldset className="picks">
      <legend className="picks-label">{label}</legend>
      {picks.map(({ id, text, sign, aside }) => {
        const key = keys[id] ?? null
        return (
          <button
            key={id}
            type="button"
            className="picks-one"
            aria-pressed={id === picked}
            // The focus stays on the stage, so that the main key never presses what the pointer pressed last.
            onPointerDown={(event) => {
              event.preventDefault()
              down.current = event.timeStamp
            }}
            onClick={(event) => {
              onPick(id, {
                at: down.current ?? event.timeStamp,
                input: down.current === null ? 'key' : 'pointer',
              })
              down.current = null
            }}
          >
            {sign === undefined ? null : <span className="picks-sign">{sign}</span>}
            <span className="picks-text">
              {text}
              {aside ? <span className="picks-aside">{aside}</span> : null}
            </span>
            {key === null ? null : <KeyCap code={capOf(key)} />}
          </button>
        )
      })}
    </fieldset>
  )
}
