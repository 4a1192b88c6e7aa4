import { useState } from 'react'
import type { EventBody } from '../../../protocols/runner/events.ts'
import type { AdministrationView } from '../../../protocols/runner/view.ts'
import { Button } from '../../parts/button.tsx'
import { Dialog } from '../../parts/dialog.tsx'
import { tellSide } from '../../steps/tell.ts'
import { say } from '../../words/index.ts'
import { digitKey, useDigits } from './use-digits.ts'

type Choosing = NonNullable<AdministrationView['choosing']>

/** An item in words: a hand, the protocol's own name for it, else its id. */
function tellItem({ list, texts }: Choosing, item: string): string {
  if (list === 'hands') return tellSide({ [list]: item }) || item
  return texts[item] ?? item.replaceAll('_', ' ')
}

/** The items that are still to be picked. */
export const leftToPick = ({ items }: Choosing, picked: readonly string[]): readonly string[] =>
  items.filter((item) => !picked.includes(item))

/** What the last pick comes to: the one that is left comes last. Null while more than one is left. */
export function orderBody(choosing: Choosing, picked: readonly string[]): EventBody | null {
  const left = leftToPick(choosing, picked)
  if (left.length > 1) return null
  const { section, place } = choosing
  return { kind: 'ordered', section, place, items: [...picked, ...left], rule: 'chosen' }
}

interface PicksProps {
  readonly choosing: Choosing
  readonly picked: readonly string[]
  readonly onPick: (item: string) => void
}

/** What may come next, each with a key of its own, and what was picked so far. */
export function Picks({ choosing, picked, onPick }: PicksProps) {
  return (
    <>
      {picked.length === 0 ? null : (
        <ol className="giving-trials">
          {picked.map((item) => (
            <li key={item}>{tellItem(choosing, item)}</li>
          ))}
        </ol>
      )}
      <ul className="giving-reasons">
        {leftToPick(choosing, picked).map((item, index) => (
          <li key={item}>
            <Button isLarge onPress={() => onPick(item)} {...digitKey(index)}>
              {tellItem(choosing, item)}
            </Button>
          </li>
        ))}
      </ul>
    </>
  )
}

interface Props {
  readonly choosing: Choosing
  readonly onAct: (body: EventBody) => Promise<string | null>
}

/** An order that the protocol leaves to the examiner: what comes first, then what comes next. */
export function ChooseOrder({ choosing, onAct }: Props) {
  const [picked, setPicked] = useState<readonly string[]>([])
  const [problem, setProblem] = useState<string | null>(null)
  const pick = async (item: string): Promise<void> => {
    const now = [...picked, item]
    const body = orderBody(choosing, now)
    if (body === null) return setPicked(now)
    setProblem(await onAct(body))
    setPicked([])
  }
  useDigits((index) => {
    const item = leftToPick(choosing, picked)[index]
    if (item !== undefined) void pick(item)
  })
  return (
    <Dialog
      title={say(picked.length === 0 ? 'administration.order.first' : 'administration.order.next')}
      isOpen
      mustAnswer
      onClose={() => {}}
      actions={
        <Button onPress={() => setPicked([])} isDisabled={picked.length === 0}>
          {say('administration.order.again')}
        </Button>
      }
    >
      <p>{say('administration.order.then')}</p>
      <Picks choosing={choosing} picked={picked} onPick={(item) => void pick(item)} />
      <p role="alert" className="giving-problem">
        {problem}
      </p>
    </Dialog>
  )
}
