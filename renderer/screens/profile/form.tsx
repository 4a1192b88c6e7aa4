import { Choice } from '../../parts/choice.tsx'
import { DateField } from '../../parts/date-field.tsx'
import { Field } from '../../parts/field.tsx'
import { Section } from '../../parts/page.tsx'
import { say } from '../../words/index.ts'
import { ArmPart } from './arm.tsx'
import { BirthPart } from './birth.tsx'
import type { Problems, ProfileDraft } from './draft.ts'
import './profile.css'

export interface ProfileFormProps {
  readonly draft: ProfileDraft
  readonly onChange: (draft: ProfileDraft) => void
  readonly problems: Problems
}

interface PartProps extends ProfileFormProps {
  readonly change: (change: Partial<ProfileDraft>) => void
}

const SEXES = ['F', 'M', 'unknown'] as const
const HANDS = ['right', 'left', 'mixed', 'not_settled', 'unknown'] as const
const ANSWERS = ['yes', 'no', 'unknown'] as const
const COMMUNICATION = ['language', 'interpreter', 'sight', 'hearing', 'speech', 'neglect'] as const

/** Everything that a profile can hold. Only a name or a number is needed. */
export function ProfileForm({ draft, onChange, problems }: ProfileFormProps) {
  const change = (part: Partial<ProfileDraft>) => onChange({ ...draft, ...part })
  const props = { draft, onChange, problems, change }
  return (
    <>
      <WhoPart {...props} />
      <HandsPart {...props} />
      <CommunicationPart {...props} />
      <AgreementPart {...props} />
    </>
  )
}

function WhoPart({ draft, change, problems }: PartProps) {
  return (
    <Section title={say('profile.who')}>
      <Field
        label={say('profile.name')}
        value={draft.name}
        maxLength={200}
        onChange={(name) => change({ name })}
        error={problems.name}
        takesFocus={draft.name === '' && draft.number === ''}
      />
      <div className="profile-pair profile-fields">
        <Field
          label={say('profile.number')}
          hint={say('profile.number.hint')}
          value={draft.number}
          maxLength={100}
          onChange={(number) => change({ number })}
        />
        <Field
          label={say('profile.second')}
          hint={say('profile.second.hint')}
          value={draft.secondIdentifier}
          maxLength={200}
          onChange={(secondIdentifier) => change({ secondIdentifier })}
        />
      </div>
      <BirthPart birth={draft.birth} onChange={(birth) => change({ birth })} problems={problems} />
      <Choice
        isRow
        label={say('profile.sex')}
        hint={say('profile.sex.hint')}
        value={draft.sex}
        onChange={(sex) => change({ sex })}
        options={SEXES.map((id) => ({ id, label: say(`profile.sex.${id}`) }))}
      />
    </Section>
  )
}

function HandsPart({ draft, change, problems }: PartProps) {
  return (
    <Section title={say('profile.hands')} hint={say('profile.hands.hint')}>
      <Choice
        isRow
        label={say('profile.dominant')}
        value={draft.dominantBefore}
        onChange={(dominantBefore) => change({ dominantBefore })}
        options={HANDS.map((id) => ({ id, label: say(`profile.hand.${id}`) }))}
      />
      <Choice
        isRow
        label={say('profile.used')}
        value={draft.usedNow}
        onChange={(usedNow) => change({ usedNow })}
        options={HANDS.map((id) => ({ id, label: say(`profile.hand.${id}`) }))}
      />
      <div className="profile-pair">
        {(['right', 'left'] as const).map((side) => (
          <ArmPart
            key={side}
            side={side}
            arm={draft.arms[side]}
            onChange={(arm) => change({ arms: { ...draft.arms, [side]: arm } })}
            problems={problems}
          />
        ))}
      </div>
    </Section>
  )
}

function CommunicationPart({ draft, change, problems }: PartProps) {
  return (
    <Section title={say('profile.communication')} hint={say('profile.communication.hint')}>
      <div className="profile-pair profile-fields">
        {COMMUNICATION.map((field) => (
          <Field
            key={field}
            label={say(`profile.${field}`)}
            value={draft[field]}
            maxLength={field === 'language' ? 100 : 200}
            onChange={(text) => change({ [field]: text })}
          />
        ))}
        <Field
          kind="number"
          width="short"
          label={say('profile.schooling')}
          value={draft.schooling}
          onChange={(schooling) => change({ schooling })}
          error={problems.schooling}
        />
      </div>
    </Section>
  )
}

function AgreementPart({ draft, change, problems }: PartProps) {
  return (
    <Section title={say('profile.agreement')}>
      <Choice
        isRow
        label={say('profile.agreement.given')}
        value={draft.agreementGiven}
        onChange={(agreementGiven) => change({ agreementGiven })}
        options={ANSWERS.map((id) => ({ id, label: say(`profile.agreement.${id}`) }))}
      />
      {draft.agreementGiven === 'unknown' ? null : (
        <>
          <Field
            label={say('profile.agreement.by')}
            value={draft.agreementBy}
            maxLength={200}
            onChange={(agreementBy) => change({ agreementBy })}
          />
          <DateField
            label={say('profile.agreement.on')}
            value={draft.agreementOn}
            onChange={(agreementOn) => change({ agreementOn })}
            error={problems.agreementOn}
          />
        </>
      )}
    </Section>
  )
}
