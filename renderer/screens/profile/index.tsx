import { useState } from 'react'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useDoing, useHost, useReading } from '../../app/host.tsx'
import type { Person } from '../../app/person.ts'
import { go } from '../../app/route.ts'
import { useSession } from '../../app/session.tsx'
import { Field } from '../../parts/field.tsx'
import { focusFirstProblem } from '../../parts/focus-first-problem.ts'
import { FormFoot } from '../../parts/form-foot.tsx'
import { Page, Section } from '../../parts/page.tsx'
import { Waiting } from '../../parts/waiting.tsx'
import { say } from '../../words/index.ts'
import { Alike, findAlike, type Found } from './alike.tsx'
import { draftFrom, type Problems, readProfile } from './draft.ts'
import { ProfileForm } from './form.tsx'

/** A client who isn't here yet. */
export function NewClientScreen() {
  const { clinic, reread } = useSession()
  const { call } = useHost()
  const { run, fault, isBusy } = useDoing()
  const [draft, setDraft] = useState(() => draftFrom(null, clinic.today))
  const [isTried, setTried] = useState(false)
  const [alike, setAlike] = useState<readonly Found[]>([])
  const read = readProfile(draft, clinic.today)
  const problems: Problems = isTried && 'problems' in read ? read.problems : {}
  const open = async (client: string) => {
    await call('visits.open', { client })
    reread()
    go(`client/${client}`)
  }
  const save = (isSomebodyElse: boolean) => {
    setTried(true)
    if ('problems' in read) return focusFirstProblem()
    void run(async () => {
      const found = isSomebodyElse ? [] : await findAlike(call, read.profile)
      setAlike(found)
      if (found.length === 0) await open((await call('clients.add', { profile: read.profile })).id)
    })
  }
  return (
    <Page
      title={say('profile.new')}
      lead={say('profile.new.lead')}
      back={{ label: say('profile.back.first'), onPress: () => go('') }}
    >
      <ProfileForm draft={draft} onChange={setDraft} problems={problems} />
      <FormFoot
        label={say('profile.save.new')}
        onDone={() => save(false)}
        isBusy={isBusy}
        problems={Object.keys(problems).length}
      >
        <FaultNotice fault={fault} />
        {alike.length > 0 ? (
          <Alike found={alike} onOpen={(id) => void run(() => open(id))} onAdd={() => save(true)} />
        ) : null}
      </FormFoot>
    </Page>
  )
}

/** A client's profile, to be put right or added to; what stood there before stays in the record. */
export function ProfileScreen({ client }: { readonly client: string }) {
  const { value, fault, again } = useReading('clients.read', { id: client })
  if (value) return <EditProfile person={value.client} />
  return (
    <Page title={say('profile.title')}>
      {fault ? <FaultNotice fault={fault} onAgain={again} /> : <Waiting />}
    </Page>
  )
}

function EditProfile({ person }: { readonly person: Person }) {
  const { clinic } = useSession()
  const { call } = useHost()
  const { run, fault, isBusy } = useDoing()
  const [draft, setDraft] = useState(() => draftFrom(person.profile, clinic.today))
  const [reason, setReason] = useState('')
  const [isTried, setTried] = useState(false)
  const back = () => go(`client/${person.id}`)
  const read = readProfile(draft, clinic.today)
  const problems: Problems = isTried && 'problems' in read ? read.problems : {}
  const save = () => {
    setTried(true)
    if ('problems' in read) return focusFirstProblem()
    void run(async () => {
      await call('clients.change', { id: person.id, profile: read.profile, reason })
      back()
    })
  }
  return (
    <Page
      title={say('profile.title')}
      lead={say('profile.lead')}
      back={{ label: say('profile.back.client'), onPress: back }}
    >
      <ProfileForm draft={draft} onChange={setDraft} problems={problems} />
      <Section title={say('profile.reason.title')}>
        <Field
          label={say('profile.reason')}
          hint={say('profile.reason.hint')}
          value={reason}
          onChange={setReason}
        />
      </Section>
      <FormFoot
        label={say('profile.save')}
        onDone={save}
        isBusy={isBusy}
        problems={Object.keys(problems).length}
      >
        <FaultNotice fault={fault} />
      </FormFoot>
    </Page>
  )
}
