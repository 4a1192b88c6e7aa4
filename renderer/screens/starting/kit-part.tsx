import { useRef, useState } from 'react'
import type { KitPiece } from '../../../protocols/runner/events.ts'
import { showDate } from '../../app/dates.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useReading } from '../../app/host.tsx'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Notice } from '../../parts/notice.tsx'
import { Waiting } from '../../parts/waiting.tsx'
import { say } from '../../words/index.ts'
import { type Card, type Problems, settledBy, type StartDraft } from './draft.ts'
import { RegisterPiece } from './register-piece.tsx'

export interface KitPartProps {
  readonly card: Card
  readonly protocol: string
  readonly kit: StartDraft['kit']
  readonly onUse: (piece: KitPiece) => void
  readonly problems: Problems
  readonly today: string
}

type Item = Card['kit'][number]

/** Which piece is used of each thing that the clinic registers; last time's is proposed. */
export function KitPart(props: KitPartProps) {
  const { card, protocol, kit, onUse: use, problems, today } = props
  const { value, fault, again } = useReading('kit.list', { protocol })
  return (
    <div className="stack">
      <FaultNotice fault={fault} onAgain={again} />
      {value
        ? card.kit
            .filter((item) => item.registered)
            .map((item) => (
              <ItemPart
                key={item.id}
                item={item}
                card={card}
                protocol={protocol}
                settled={settledBy(without(kit, item.id))}
                pieces={merged(
                  value.filter((piece) => piece.item === item.id),
                  kit[item.id],
                )}
                chosen={kit[item.id] ?? null}
                onUse={use}
                problem={problems[`kit.${item.id}`]}
                today={today}
              />
            ))
        : null}
      {value || fault ? null : <Waiting />}
      <OtherItems items={card.kit.filter((item) => !item.registered)} />
    </div>
  )
}

/** The pieces to choose from, with one just registered that the list doesn't have yet. */
function merged(pieces: readonly KitPiece[], chosen: KitPiece | undefined): readonly KitPiece[] {
  return chosen && !pieces.some((piece) => piece.id === chosen.id) ? [...pieces, chosen] : pieces
}

const without = (kit: StartDraft['kit'], item: string) =>
  Object.fromEntries(Object.entries(kit).filter(([id]) => id !== item))

function OtherItems({ items }: { readonly items: readonly Item[] }) {
  if (items.length === 0) return null
  return (
    <div>
      <p>{say('starting.kit.others')}</p>
      <ul className="starting-list">
        {items.map((item) => (
          <li key={item.id}>{item.text}</li>
        ))}
      </ul>
    </div>
  )
}

interface ItemPartProps {
  readonly item: Item
  readonly card: Card
  readonly settled: ReadonlySet<string>
  readonly protocol: string
  readonly pieces: readonly KitPiece[]
  readonly chosen: KitPiece | null
  readonly onUse: (piece: KitPiece) => void
  readonly problem: string | undefined
  readonly today: string
}

function ItemPart(props: ItemPartProps) {
  const { item, card, settled, protocol, pieces, chosen, onUse, problem, today } = props
  const [isAdding, setAdding] = useState(false)
  const part = useRef<HTMLDivElement>(null)
  // The form that had the focus goes away: it moves to the piece that came of it.
  const focusChosen = () =>
    requestAnimationFrame(() => part.current?.querySelector<HTMLElement>('input:checked')?.focus())
  const isNone = pieces.length === 0
  return (
    <div className="stack" ref={part}>
      {isNone ? null : (
        <Choice
          label={item.text}
          value={chosen?.id ?? null}
          onChange={(id) => {
            const piece = pieces.find((each) => each.id === id)
            if (piece) onUse(piece)
          }}
          error={chosen ? null : problem}
          options={pieces.map((piece) => ({
            id: piece.id,
            label: piece.ownName,
            detail: detailOf(piece, card),
          }))}
        />
      )}
      {chosen?.nextCheck && chosen.nextCheck < today ? (
        <Notice
          tone="caution"
          title={say('starting.kit.due', { name: chosen.ownName, on: showDate(chosen.nextCheck) })}
        />
      ) : null}
      {isNone || isAdding ? (
        <RegisterPiece
          item={item}
          card={card}
          settled={settled}
          protocol={protocol}
          today={today}
          problem={isNone ? problem : undefined}
          onRegistered={(piece) => {
            setAdding(false)
            onUse(piece)
            focusChosen()
          }}
        />
      ) : (
        <div>
          <Button
            look="quiet"
            label={say('starting.kit.another.label', { item: item.text })}
            onPress={() => setAdding(true)}
          >
            {say('starting.kit.another')}
          </Button>
        </div>
      )}
    </div>
  )
}

function detailOf(piece: KitPiece, card: Card): string {
  const builds = card.conditions
    .filter(({ name }) => piece.conditions[name])
    .map(({ name, options }) => options.find((option) => option.id === piece.conditions[name])?.text ?? '')
  const checked = piece.lastCheck ? say('starting.kit.checked', { on: showDate(piece.lastCheck) }) : ''
  return [...builds, piece.unit, checked].filter(Boolean).join(' · ')
}
