import { Button } from '../../parts/button.tsx'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { Notice } from '../../parts/notice.tsx'
import { say } from '../../words/index.ts'
import type { Store, View } from '../giving/index.tsx'
import { useAct } from '../starting/use-act.ts'

interface Props {
  readonly view: View
  readonly store: Store
  /** Called once rating has begun. */
  readonly onBegun: () => void
}

/** Whose grades are still to come, with the way to give them; nothing where none are. */
export function StillToRate({ view, store, onBegun }: Props) {
  const { act, refused, fault, isBusy } = useAct(view, store)
  const left = view.raters.filter(({ toCome }) => toCome > 0)
  if (left.length === 0) return null
  const begin = async (rater: string): Promise<void> => {
    if (await act({ kind: 'rating_begun', rater })) onBegun()
  }
  return (
    <Notice tone="plain" title={say('done.to_rate', { raters: left.map(({ text }) => text).join(', ') })}>
      <p>{say('done.to_rate.text')}</p>
      {left.map(({ id, text, toCome }) => (
        <p key={id}>
          <Button isLarge isDisabled={isBusy} onPress={() => void begin(id)}>
            {say('done.to_rate.now', { rater: text, count: toCome })}
          </Button>
        </p>
      ))}
      <p role="alert">{refused}</p>
      <FaultNotice fault={fault} onAgain={onBegun} />
    </Notice>
  )
}
