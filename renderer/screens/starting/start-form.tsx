import type { SidedRestriction } from '../../app/person.ts'
import { AnswerKeys } from '../../parts/answer-keys.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Section } from '../../parts/page.tsx'
import { say } from '../../words/index.ts'
import type { View } from '../giving/index.tsx'
import { ClearancePart } from './clearance-part.tsx'
import {
  askedConditions,
  type Card,
  conditionsOf,
  conditionTitle,
  type Problems,
  type StartDraft,
} from './draft.ts'
import { KitPart } from './kit-part.tsx'
import { VisitPart } from './visit-part.tsx'

export interface StartFormProps {
  readonly view: View
  readonly card: Card
  readonly draft: StartDraft
  /** From what the form holds by then: an answer may come while a piece of kit is still being registered. */
  readonly onChange: (next: (now: StartDraft) => StartDraft) => void
  readonly problems: Problems
  readonly restrictions: readonly SidedRestriction[]
  readonly wasVisitAsked: boolean
  readonly today: string
}

const PAIN = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '10', 'unknown'] as const

export function StartForm(props: StartFormProps) {
  const { view, card, draft, onChange, problems, today } = props
  const change = (part: Partial<StartDraft>) => onChange((now) => ({ ...now, ...part }))
  const pain = PAIN.find((id) => id === draft.pain) ?? null
  return (
    <AnswerKeys>
      <Safety {...props} />
      <Section title={say('starting.pain.title')}>
        <Choice
          isRow
          label={say('starting.pain')}
          hint={say('starting.pain.hint')}
          value={pain}
          onChange={(id) => change({ pain: id })}
          error={pain === null ? problems.pain : null}
          options={PAIN.map((id) => ({
            id,
            label: id === 'unknown' ? say('starting.pain.unknown') : id,
            answerKey: id.length === 1 ? id : undefined,
          }))}
        />
      </Section>
      <Section title={say('starting.kit')} hint={say('starting.kit.hint')}>
        <KitPart
          card={card}
          protocol={view.protocol.id}
          kit={draft.kit}
          onUse={(piece) => onChange((now) => ({ ...now, kit: { ...now.kit, [piece.item]: piece } }))}
          problems={problems}
          today={today}
        />
      </Section>
      <Conditions {...props} />
      <Section title={say('starting.visit')} hint={say('starting.visit.hint')}>
        <VisitPart
          visit={draft.visit}
          onChange={(visit) => change({ visit })}
          problems={problems}
          wasAsked={props.wasVisitAsked}
        />
      </Section>
    </AnswerKeys>
  )
}

function Safety({ view, draft, onChange, problems, restrictions }: StartFormProps) {
  if (view.precautions.length === 0 && restrictions.length === 0) return null
  return (
    <Section title={say('starting.safety')} hint={say('starting.safety.hint')}>
      <div className="stack starting-safety">
        {view.precautions.map(({ id, ask, why }) => {
          const value = draft.precautions[id]
          return value ? (
            <ClearancePart
              key={id}
              about="precaution"
              ask={ask}
              why={why}
              value={value}
              onChange={(answer) =>
                onChange((now) => ({ ...now, precautions: { ...now.precautions, [id]: answer } }))
              }
              field={`precautions.${id}`}
              problems={problems}
            />
          ) : null
        })}
        {draft.restrictions.map((value, index) => {
          const restriction = restrictions[index]
          return restriction ? (
            <ClearancePart
              key={`${restriction.side}-${restriction.what}`}
              about="restriction"
              ask={restriction.words}
              why={restriction.detail}
              value={value}
              onChange={(answer) =>
                onChange((now) => ({
                  ...now,
                  restrictions: now.restrictions.map((each, at) => (at === index ? answer : each)),
                }))
              }
              field={`restrictions.${index}`}
              problems={problems}
            />
          ) : null
        })}
      </div>
    </Section>
  )
}

function Conditions({ card, draft, onChange, problems }: StartFormProps) {
  const asked = askedConditions(card, draft)
  if (asked.length === 0) return null
  const stand = conditionsOf(draft)
  return (
    <Section title={say('starting.conditions')} hint={say('starting.conditions.hint')}>
      {asked.map((condition) => (
        <Choice
          key={condition.name}
          isRow
          label={conditionTitle(condition)}
          value={stand[condition.name] ?? null}
          onChange={(id) =>
            onChange((now) => ({ ...now, conditions: { ...now.conditions, [condition.name]: id } }))
          }
          options={condition.options.map(({ id, text }) => ({ id, label: text }))}
          error={stand[condition.name] ? null : problems[`conditions.${condition.name}`]}
        />
      ))}
    </Section>
  )
}
