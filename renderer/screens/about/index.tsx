import { useState } from 'react'
import { go } from '../../app/route.ts'
import { useClinic } from '../../app/session.tsx'
import { measureClock } from '../../input/clock.ts'
import { Notice } from '../../parts/notice.tsx'
import { Page, Section } from '../../parts/page.tsx'
import { say } from '../../words/index.ts'
import './about.css'

const SECTIONS = ['use', 'supervision', 'hardware', 'timing', 'limits', 'fault'] as const

/** What the program is for and what it isn't, under whose eyes it is used, what it needs, where it ends. */
export function AboutScreen() {
  const { program, recordsFolder, clinicProtocolsFolder } = useClinic()
  const [clock] = useState(measureClock)
  return (
    <Page
      title={say('about.title', { program: program.name })}
      lead={say('about.version', { version: program.version })}
      back={{ label: say('about.back'), onPress: () => go('') }}
    >
      <Notice tone="caution" title={say('about.not.title')}>
        <p>{say('about.not.text', { program: program.name })}</p>
      </Notice>
      {SECTIONS.map((section) => (
        <Section key={section} title={say(`about.${section}.title`)}>
          <p>{say(`about.${section}.text`, { program: program.name })}</p>
          {section === 'timing' ? (
            <p>
              {say('about.clock', {
                step: clock.resolutionMs.toFixed(3),
                isIsolated: clock.isolated ? 'yes' : 'no',
              })}
            </p>
          ) : null}
        </Section>
      ))}
      <Section title={say('about.folders.title')}>
        <dl className="about-folders">
          <div>
            <dt>{say('about.folders.records')}</dt>
            <dd>{recordsFolder}</dd>
          </div>
          <div>
            <dt>{say('about.folders.protocols')}</dt>
            <dd>{clinicProtocolsFolder}</dd>
          </div>
        </dl>
      </Section>
    </Page>
  )
}
