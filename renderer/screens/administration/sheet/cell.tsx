import type { KeyboardEvent } from 'react'
import type { SheetCell, Trial } from '../../../../protocols/runner/view.ts'
import { cellFaceOf } from '../../../steps/registry.ts'
import { tellOutcome } from '../../../steps/tell.ts'
import { say } from '../../../words/index.ts'
import type { Typing } from './use-typing.ts'

interface Props {
  readonly cell: SheetCell
  /** The row that stands for it. */
  readonly trial: Trial | null
  readonly draft: ReturnType<Typing['draft']>
  readonly labelledBy: string
  readonly hold: (box: HTMLInputElement | null) => void
  readonly onFocus: () => void
  readonly onType: (typed: string) => void
  /** What was typed and left without Enter is entered too. */
  readonly onLeave: () => void
  readonly onKey: (event: KeyboardEvent<HTMLInputElement>) => void
}

const LONGEST = { number: 9, words: 1000 }

/** A sign beside the value, so that kept is told by more than colour. */
const Kept = () => (
  <>
    <span aria-hidden="true">✓</span>
    <span className="unseen">{say('sheet.kept')}</span>
  </>
)

/** What is known of a cell beside its value. */
function About({ trial, draft }: Pick<Props, 'trial' | 'draft'>) {
  if (draft !== null) return draft.isSaving ? say('sheet.saving') : null
  if (trial === null) return null
  return trial.outcome === 'done' ? <Kept /> : tellOutcome(trial.outcome)
}

/** One value of a page: what is typed, then, once it is on disk, what is kept. */
export function Cell({ cell, trial, draft, labelledBy, hold, ...on }: Props) {
  const face = cellFaceOf(cell.kind)
  const hasLetters = face?.hasLetters(cell.face) ?? false
  const shown = trial?.outcome === 'done' ? (face?.shown(cell.face) ?? '') : ''
  const isKept = draft === null && trial !== null
  const about = `${labelledBy.replaceAll(' ', '-')}-about`
  return (
    <td className={isKept ? 'sheet-cell sheet-kept' : 'sheet-cell'}>
      <input
        ref={hold}
        className={hasLetters ? 'sheet-box sheet-words' : 'sheet-box'}
        inputMode={hasLetters ? 'text' : 'decimal'}
        autoComplete="off"
        maxLength={hasLetters ? LONGEST.words : LONGEST.number}
        aria-labelledby={labelledBy}
        aria-describedby={about}
        aria-invalid={(draft?.problem ?? null) !== null}
        readOnly={!cell.inTurn}
        value={draft?.typed ?? shown}
        onChange={(event) => on.onType(event.target.value)}
        onFocus={(event) => {
          event.target.select()
          on.onFocus()
        }}
        onBlur={on.onLeave}
        onKeyDown={on.onKey}
      />
      <span id={about} className="sheet-about">
        <About trial={trial} draft={draft} />
      </span>
    </td>
  )
}
