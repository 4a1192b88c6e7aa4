import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { hasWords, say } from '../words/index.ts'
import type { Fault } from './host.tsx'

export interface FaultNoticeProps {
  readonly fault: Fault | null
  /** Offered where trying once more can help. */
  readonly onAgain?: () => void
}

/** A fault in words: what is wrong, and what to do about it. */
export function FaultNotice({ fault, onAgain }: FaultNoticeProps) {
  if (!fault) return null
  const known = hasWords(`faults.${fault.code}`)
  return (
    <Notice
      tone="fault"
      isLive
      title={known ? say(`faults.${fault.code}`, fault.detail) : say('faults.other', { code: fault.code })}
    >
      <p>
        {known && hasWords(`faults.${fault.code}.mend`)
          ? say(`faults.${fault.code}.mend`, fault.detail)
          : say('faults.other.mend')}
      </p>
      {onAgain ? (
        <div>
          <Button onPress={onAgain}>{say('app.again')}</Button>
        </div>
      ) : null}
    </Notice>
  )
}
