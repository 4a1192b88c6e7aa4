import type { Side } from '../../../protocols/client.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { DateField } from '../../parts/date-field.tsx'
import { Field } from '../../parts/field.tsx'
import { NO_DATE } from '../../parts/read-date.ts'
import { say } from '../../words/index.ts'
import type { ArmDraft, Problems, RestrictionDraft } from './draft.ts'

export interface ArmPartProps {
  readonly side: Side
  readonly arm: ArmDraft
  readonly onChange: (arm: ArmDraft) => void
  readonly problems: Problems
}

const STATUSES = ['unknown', 'unaffected', 'affected', 'less_affected', 'absent'] as const

/** All that the program asks about one arm. */
export function ArmPart({ side, arm, onChange, problems }: ArmPartProps) {
  const change = (part: Partial<ArmDraft>) => onChange({ ...arm, ...part })
  const isAffected = arm.status === 'affected' || arm.status === 'less_affected'
  return (
    <div className="profile-arm">
      <Choice
        label={say(`profile.arm.${side}`)}
        value={arm.status}
        onChange={(status) => change({ status })}
        error={arm.status === 'less_affected' ? problems.arms : null}
        options={STATUSES.map((id) => ({ id, label: say(`profile.arm.status.${id}`) }))}
      />
      {isAffected || arm.status === 'absent' ? (
        <>
          <Field
            label={say('profile.arm.condition')}
            hint={say('profile.arm.condition.hint')}
            value={arm.condition}
            onChange={(condition) => change({ condition })}
          />
          <Field
            label={say('profile.arm.since')}
            hint={say('profile.arm.since.hint')}
            value={arm.since}
            maxLength={100}
            onChange={(since) => change({ since })}
          />
        </>
      ) : null}
      {isAffected || arm.status === 'absent' ? (
        <Field
          label={say('profile.arm.absent')}
          hint={say('profile.arm.absent.hint')}
          value={arm.absentPart}
          maxLength={200}
          onChange={(absentPart) => change({ absentPart })}
        />
      ) : null}
      <Restrictions side={side} arm={arm} onChange={onChange} problems={problems} />
    </div>
  )
}

const fresh = () => ({ key: crypto.randomUUID(), what: '', setBy: '', until: NO_DATE })

function Restrictions({ side, arm, onChange, problems }: ArmPartProps) {
  const put = (restrictions: readonly RestrictionDraft[]) => onChange({ ...arm, restrictions })
  return (
    <div className="stack">
      {arm.restrictions.map((each, index) => {
        const changeOne = (part: Partial<RestrictionDraft>) =>
          put(arm.restrictions.map((one) => (one.key === each.key ? { ...one, ...part } : one)))
        return (
          <fieldset key={each.key} className="profile-restriction">
            <legend className="unseen">{say(`profile.restriction.${side}`, { number: index + 1 })}</legend>
            <Field
              label={say('profile.restriction.what')}
              hint={say('profile.restriction.what.hint')}
              value={each.what}
              onChange={(what) => changeOne({ what })}
              error={problems[`arms.${side}.${index}.what`]}
            />
            <Field
              label={say('profile.restriction.by')}
              value={each.setBy}
              maxLength={200}
              onChange={(setBy) => changeOne({ setBy })}
            />
            <DateField
              label={say('profile.restriction.until')}
              hint={say('profile.restriction.until.hint')}
              value={each.until}
              onChange={(until) => changeOne({ until })}
              error={problems[`arms.${side}.${index}.until`]}
            />
            <div>
              <Button
                look="quiet"
                onPress={() => put(arm.restrictions.filter((one) => one.key !== each.key))}
              >
                {say('profile.restriction.remove')}
              </Button>
            </div>
          </fieldset>
        )
      })}
      <div>
        <Button
          label={say(`profile.restriction.add.${side}`)}
          onPress={() => put([...arm.restrictions, fresh()])}
        >
          {say('profile.restriction.add')}
        </Button>
      </div>
    </div>
  )
}
