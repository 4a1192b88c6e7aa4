import { useState } from 'react'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { type Fault, useReading } from '../../app/host.tsx'
import { go } from '../../app/route.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Waiting } from '../../parts/waiting.tsx'
import { say } from '../../words/index.ts'
import { Problems } from './faulty-test.tsx'
import type { Line } from './index.tsx'

export interface TestCardProps {
  readonly line: Line
  readonly isRehearsal: boolean
  readonly isBusy: boolean
  readonly onChosen: (wording: string | null) => void
  readonly fault: Fault | null
}

/** One test: what a person needs to know to choose it; more on request. */
export function TestCard({ line, isRehearsal, isBusy, onChosen, fault }: TestCardProps) {
  const [isOpen, setOpen] = useState(false)
  const [wording, setWording] = useState<string | null>(null)
  return (
    <article className="choosing-card">
      <div className="choosing-head">
        <h2 className="choosing-title">{line.title}</h2>
        {line.from === 'clinic' ? <span className="choosing-mark">{say('choosing.clinics')}</span> : null}
      </div>
      <p>{line.purpose}</p>
      <dl className="choosing-facts">
        <Fact title={say('choosing.suits')} text={line.suits} />
        {line.minutes ? (
          <Fact
            title={say('choosing.minutes')}
            text={say('choosing.minutes.value', { from: line.minutes[0], to: line.minutes[1] })}
          />
        ) : null}
        <Fact title={say('choosing.kit')} text={line.kit.map(brief).join('; ')} />
      </dl>
      {isOpen ? <More line={line} wording={wording} onWording={setWording} /> : null}
      <FaultNotice fault={fault} />
      <div className="row choosing-actions">
        <Button
          look="strong"
          label={say(isRehearsal ? 'choosing.rehearse.label' : 'choosing.give.label', { test: line.title })}
          onPress={() => onChosen(wording)}
          isDisabled={isBusy}
        >
          {say(isRehearsal ? 'choosing.rehearse' : 'choosing.give')}
        </Button>
        <Button
          look="quiet"
          label={say(isOpen ? 'choosing.less.label' : 'choosing.more.label', { test: line.title })}
          onPress={() => setOpen(!isOpen)}
        >
          {say(isOpen ? 'choosing.less' : 'choosing.more')}
        </Button>
      </div>
    </article>
  )
}

const asSentence = (text: string) => text.replace(/[.]?$/, '.')

/** The first sentence, without its full stop: enough to fetch the thing by. */
const brief = (text: string) => (text.split(/(?<=[.!?])\s/)[0] ?? text).replace(/\.$/, '')

function Fact({ title, text }: { readonly title: string; readonly text: string }) {
  if (text === '') return null
  return (
    <div>
      <dt>{title}</dt>
      <dd>{text}</dd>
    </div>
  )
}

interface MoreProps {
  readonly line: Line
  readonly wording: string | null
  readonly onWording: (wording: string | null) => void
}

const OWN_WORDS = 'own'

function More({ line, wording, onWording }: MoreProps) {
  const { value, fault, again } = useReading('protocols.read', { from: line.from, key: line.key })
  if (!value) return fault ? <FaultNotice fault={fault} onAgain={again} /> : <Waiting />
  return (
    <div className="stack choosing-more">
      <dl className="choosing-facts">
        <Fact title={say('choosing.floor')} text={value.floor ?? ''} />
        <Fact title={say('choosing.ceiling')} text={value.ceiling ?? ''} />
        <Fact title={say('choosing.kit.all')} text={line.kit.map(asSentence).join(' ')} />
        <Fact title={say('choosing.version')} text={line.version ?? ''} />
      </dl>
      {value.wordings.length > 0 ? (
        <Choice
          isRow
          label={say('choosing.wording')}
          value={wording ?? OWN_WORDS}
          onChange={(id) => onWording(id === OWN_WORDS ? null : id)}
          options={[
            { id: OWN_WORDS, label: say('choosing.wording.own') },
            ...value.wordings.map((id) => ({ id, label: id })),
          ]}
        />
      ) : null}
      <div>
        <h3 className="choosing-sources">{say('choosing.sources')}</h3>
        <ul className="stack stack-tight small soft">
          {value.sources.map((source) => (
            <li key={source.id}>{[source.cite, source.note].filter(Boolean).map(asSentence).join(' ')}</li>
          ))}
        </ul>
      </div>
      {line.from === 'clinic' && line.problems.length > 0 ? (
        <Problems caption={say('choosing.remarks')} isCaptionSeen problems={line.problems} />
      ) : null}
      <div>
        <Button
          label={say('choosing.norms.label', { test: line.title })}
          onPress={() => go(`norms/${line.from}/${line.key}`)}
        >
          {say('choosing.norms')}
        </Button>
      </div>
    </div>
  )
}
