import { useState } from 'react'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useDoing, useHost } from '../../app/host.tsx'
import { go, usePlace } from '../../app/route.ts'
import { useSession } from '../../app/session.tsx'
import { Button } from '../../parts/button.tsx'
import { Field } from '../../parts/field.tsx'
import { Notice } from '../../parts/notice.tsx'
import { Page, Section } from '../../parts/page.tsx'
import { say } from '../../words/index.ts'
import './examiner.css'

/** Who gives the tests: chosen by name, or added. */
export function ExaminerScreen() {
  const { clinic, reread } = useSession()
  const { call } = useHost()
  const { run, fault, isBusy } = useDoing()
  const place = usePlace()
  const isFirst = clinic.users.length === 0

  // Whoever was sent here from another screen, such as after a restart, goes on there.
  const choose = async (id: string) => {
    await call('users.choose', { id })
    if (place === 'examiner') go('')
    reread()
  }
  const add = (name: string) =>
    void run(async () => {
      const user = await call('users.add', { name })
      await choose(user.id)
    })

  return (
    <Page title={say('examiner.title')} lead={say(isFirst ? 'examiner.lead.first' : 'examiner.lead')}>
      {isFirst ? <Notice tone="caution" title={say('first.unsafe.title')} /> : null}
      <FaultNotice fault={fault} />
      {isFirst ? null : (
        <ul className="examiner-names">
          {clinic.users.map((user) => (
            <li key={user.id}>
              <Button isLarge onPress={() => void run(() => choose(user.id))} isDisabled={isBusy}>
                {user.name}
              </Button>
            </li>
          ))}
        </ul>
      )}
      <Section title={say(isFirst ? 'examiner.add.first' : 'examiner.add.title')}>
        <NewName isFirst={isFirst} isBusy={isBusy} onAdd={add} />
      </Section>
    </Page>
  )
}

interface NewNameProps {
  readonly isFirst: boolean
  readonly isBusy: boolean
  readonly onAdd: (name: string) => void
}

function NewName({ isFirst, isBusy, onAdd }: NewNameProps) {
  const [name, setName] = useState('')
  const [isTried, setTried] = useState(false)
  const isMissing = name.trim() === ''
  const add = () => {
    setTried(true)
    if (!isMissing) onAdd(name.trim())
  }
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault()
        add()
      }}
    >
      <Field
        label={say('examiner.name')}
        hint={say('examiner.name.hint')}
        value={name}
        onChange={setName}
        maxLength={200}
        error={isTried && isMissing ? say('examiner.name.missing') : null}
        takesFocus={isFirst}
      />
      <div>
        <Button look={isFirst ? 'strong' : 'plain'} onPress={add} isDisabled={isBusy}>
          {say('examiner.add')}
        </Button>
      </div>
    </form>
  )
}
