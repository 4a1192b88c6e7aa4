import type { Output } from '../../../main/contract/procedures.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useReading } from '../../app/host.tsx'
import { Field } from '../../parts/field.tsx'
import { bornLine } from '../../app/person.ts'
import { say } from '../../words/index.ts'

export type Found = Output<'clients.search'>['found'][number]

export interface SearchProps {
  readonly text: string
  readonly onText: (text: string) => void
  readonly onChosen: (found: Found) => void
  readonly isBusy: boolean
  readonly takesFocus?: boolean
}

/** Finds clients by part of a name or number. Nobody is listed before three letters. */
export function Search({ text, onText, onChosen, isBusy, takesFocus = false }: SearchProps) {
  const { value, fault, again } = useReading('clients.search', { text })
  return (
    <div className="stack">
      <Field
        kind="search"
        label={say('first.find')}
        hint={say('first.find.hint')}
        value={text}
        onChange={onText}
        maxLength={200}
        takesFocus={takesFocus}
      />
      <FaultNotice fault={fault} onAgain={again} />
      <output className="soft">{value ? foundWords(value, text) : ''}</output>
      {value && value.found.length > 0 ? (
        <ul className="first-found" aria-label={say('first.found')}>
          {value.found.map((found) => (
            <li key={found.id}>
              <button
                type="button"
                className="first-client"
                disabled={isBusy}
                onClick={() => onChosen(found)}
              >
                <span className="first-client-name">
                  {found.name || say('person.number', { number: found.number })}
                </span>
                <span className="soft small">
                  {[found.name ? found.number : '', found.secondIdentifier, bornLine(found.born)]
                    .filter(Boolean)
                    .join(' · ')}
                </span>
              </button>
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  )
}

function foundWords(answer: Output<'clients.search'>, text: string): string {
  if (!answer.enough) return text.trim() === '' ? '' : say('first.find.more_letters')
  if (answer.more) return say('first.find.too_many', { shown: answer.found.length })
  return say('first.find.count', { count: answer.found.length })
}
