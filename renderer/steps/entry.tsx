import { useEffect, useRef, useState } from 'react'
import type { Refusal } from '../../protocols/runner/view.ts'
import { KeyCap } from '../parts/key-cap.tsx'
import { readNumber } from '../parts/read-number.ts'
import { isTyping } from '../parts/use-main-key.ts'
import { say } from '../words/index.ts'
import { tellRefusal } from './refusal.tsx'
import { tellNumber } from './tell.ts'
import './steps.css'

interface Props {
  readonly label: string
  readonly unit: string
  readonly isWhole: boolean
  /** Sends the number; null once it was taken, else why not. */
  readonly onEnter: (value: number, confirmed: boolean) => Promise<Refusal | null>
}

const WIDEST = { least: -1_000_000, most: 1_000_000 }
const DIGIT = /^[0-9.,-]$/

/** The first digit typed anywhere on the stage goes into the box: the letters stay free for the other keys. */
function useDigits(box: React.RefObject<HTMLInputElement | null>): void {
  useEffect(() => {
    const listen = (event: KeyboardEvent): void => {
      if (!DIGIT.test(event.key) || event.ctrlKey || event.altKey || event.metaKey) return
      if (isTyping(event.target) || document.querySelector('dialog[open], [role=dialog], [role=alertdialog]'))
        return
      box.current?.focus()
    }
    addEventListener('keydown', listen, true)
    return () => removeEventListener('keydown', listen, true)
  }, [box])
}

/** What was typed, and what is to be said about it in place. */
function useEntry({ isWhole, unit, onEnter }: Pick<Props, 'isWhole' | 'unit' | 'onEnter'>) {
  const [typed, setTyped] = useState('')
  const [problem, setProblem] = useState<string | null>(null)
  const [doubted, setDoubted] = useState<number | null>(null)
  const enter = async (): Promise<boolean> => {
    const read = readNumber(typed, { ...WIDEST, isWhole })
    if (!('number' in read) || read.number === null) {
      setProblem(
        'problem' in read
          ? say(`parts.number.${read.problem}`, { ...WIDEST, least: 0 })
          : say('steps.entry.empty'),
      )
      return false
    }
    const refusal = await onEnter(read.number, doubted === read.number)
    const isDoubted = refusal?.refused === 'out_of_range'
    setDoubted(isDoubted ? read.number : null)
    setProblem(
      refusal === null
        ? null
        : isDoubted
          ? say('steps.entry.doubted', {
              value: typed,
              unit,
              lowest: tellNumber(Number(refusal.detail.lowest), 0),
              highest: tellNumber(Number(refusal.detail.highest), 0),
            })
          : tellRefusal(refusal),
    )
    if (refusal === null) setTyped('')
    return refusal === null
  }
  const type = (text: string): void => {
    setTyped(text)
    setProblem(null)
  }
  return { typed, problem, type, enter }
}

/** A number typed at arm's length: large, sent by Enter, asked for once more where it isn't plausible. */
export function Entry({ label, unit, isWhole, onEnter }: Props) {
  const box = useRef<HTMLInputElement>(null)
  const said = useRef<HTMLOutputElement>(null)
  const { typed, problem, type, enter } = useEntry({ isWhole, unit, onEnter })
  useDigits(box)
  // Under a long text the box may stand at the edge of the screen: what is said about it comes into sight.
  useEffect(() => {
    if (problem !== null) said.current?.scrollIntoView({ block: 'center' })
  }, [problem])
  return (
    <form
      className="step-entry"
      onSubmit={(event) => {
        event.preventDefault()
        void enter().then((taken) => taken && box.current?.blur())
      }}
    >
      <label className="step-entry-label">
        {label}
        <span className="step-entry-line">
          <input
            ref={box}
            className="step-entry-box"
            inputMode={isWhole ? 'numeric' : 'decimal'}
            autoComplete="off"
            maxLength={9}
            value={typed}
            onChange={(event) => type(event.target.value)}
            aria-invalid={problem !== null}
            aria-describedby="step-entry-problem"
          />
          <span className="step-entry-unit">{unit}</span>
          <button type="submit" className="step-entry-go">
            {say('steps.entry.enter')}
            <KeyCap code="Enter" />
          </button>
        </span>
      </label>
      <output ref={said} id="step-entry-problem" className="step-entry-problem">
        {problem}
      </output>
    </form>
  )
}
