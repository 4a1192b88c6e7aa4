import { useState } from 'react'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useDoing, useHost } from '../../app/host.tsx'
import { go } from '../../app/route.ts'
import { type Settings, useClinic, useSettingsHeld } from '../../app/session.tsx'
import { Field } from '../../parts/field.tsx'
import { Button } from '../../parts/button.tsx'
import { Page, Section } from '../../parts/page.tsx'
import { readNumber } from '../../parts/read-number.ts'
import { Toggle } from '../../parts/toggle.tsx'
import { say } from '../../words/index.ts'
import { TeachKey } from './teach-key.tsx'

const BOUNCE = { least: 0, most: 500, isWhole: true }

/** How this examiner likes to give tests; changed at once and kept for this name only. */
export function SettingsScreen() {
  const { user } = useClinic()
  const { settings, reread } = useSettingsHeld()
  const { call } = useHost()
  const { run, fault } = useDoing()
  const change = (part: Partial<Settings>) =>
    void run(async () => {
      await call('settings.change', { ...settings, ...part })
      reread()
    })
  return (
    <Page
      title={say('settings.title')}
      lead={say('settings.lead', { name: user?.name ?? '' })}
      back={{ label: say('settings.back'), onPress: () => go('') }}
    >
      <FaultNotice fault={fault} />
      <Section title={say('settings.keys')} hint={say('settings.keys.hint')}>
        <TeachKey
          label={say('settings.main')}
          code={settings.mainKey}
          taken={settings.pedalKey}
          onTaught={(mainKey) => change({ mainKey })}
        />
        <TeachKey
          label={say('settings.pedal')}
          hint={say('settings.pedal.hint')}
          code={settings.pedalKey}
          taken={settings.mainKey}
          onTaught={(pedalKey) => change({ pedalKey })}
          onForgotten={() => change({ pedalKey: null })}
        />
        <BounceField bounceMs={settings.bounceMs} onChange={(bounceMs) => change({ bounceMs })} />
      </Section>
      <Section title={say('settings.during')}>
        <Toggle
          label={say('settings.clock')}
          hint={say('settings.clock.hint')}
          isOn={settings.showClock}
          onChange={(showClock) => change({ showClock })}
        />
        <Toggle
          label={say('settings.sound')}
          hint={say('settings.sound.hint')}
          isOn={settings.sound}
          onChange={(sound) => change({ sound })}
        />
      </Section>
    </Page>
  )
}

interface BounceFieldProps {
  readonly bounceMs: number
  readonly onChange: (bounceMs: number) => void
}

function BounceField({ bounceMs, onChange }: BounceFieldProps) {
  const [typed, setTyped] = useState(String(bounceMs))
  const read = readNumber(typed, BOUNCE)
  const problem = 'problem' in read ? say(`parts.number.${read.problem}`, BOUNCE) : null
  const isNew = 'number' in read && read.number !== null && read.number !== bounceMs
  return (
    <div className="stack">
      <Field
        kind="number"
        width="short"
        label={say('settings.bounce')}
        hint={say('settings.bounce.hint')}
        after={say('settings.bounce.unit')}
        value={typed}
        onChange={setTyped}
        error={problem}
      />
      <div>
        <Button
          isDisabled={!isNew}
          onPress={() => {
            if ('number' in read && read.number !== null) onChange(read.number)
          }}
        >
          {say('settings.bounce.save')}
        </Button>
      </div>
    </div>
  )
}
