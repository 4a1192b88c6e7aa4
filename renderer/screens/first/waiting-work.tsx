import type { Output } from '../../../main/contract/procedures.ts'
import type { Push } from '../../../main/contract/pushes.ts'
import { showDate } from '../../app/dates.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useDoing, useHost, useReading } from '../../app/host.tsx'
import { go } from '../../app/route.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/page.tsx'
import { say } from '../../words/index.ts'

type Line = Output<'desk.waiting'>[number]

const touchesWork = (push: Push) => push.push === 'administration'

/** What this examiner left open: tests not finished, notes not taken over into the record. */
export function WaitingWork({ onOpened }: { readonly onOpened: () => void }) {
  const { call } = useHost()
  const { value, fault, again } = useReading('desk.waiting', {}, touchesWork)
  const { run, fault: openFault, isBusy } = useDoing()
  const open = (line: Line) =>
    void run(async () => {
      if (line.client) await call('visits.open', { client: line.client })
      onOpened()
      go(isDone(line) ? `result/records/${line.id}` : `administration/records/${line.id}`)
    })
  return (
    <Section title={say('first.waiting.title')}>
      <FaultNotice fault={fault ?? openFault} onAgain={again} />
      {value?.length === 0 ? <p className="soft">{say('first.waiting.none')}</p> : null}
      <ul className="stack stack-tight">
        {(value ?? []).map((line) => (
          <li key={line.id} className="first-work">
            <div>
              <p className="first-work-title">{line.protocol.title}</p>
              <p className="soft small">
                {say('first.waiting.line', { client: line.clientName, on: showDate(line.on) })}
              </p>
            </div>
            <Button onPress={() => open(line)} isDisabled={isBusy}>
              {say(isDone(line) ? 'first.waiting.note' : 'first.waiting.unfinished')}
            </Button>
          </li>
        ))}
      </ul>
    </Section>
  )
}

const isDone = (line: Line) => line.phase === 'finished'
