import { type ReactNode, useState } from 'react'
import { Button } from '../../parts/button.tsx'
import { Field } from '../../parts/field.tsx'
import { Notice } from '../../parts/notice.tsx'
import { Section } from '../../parts/page.tsx'
import { useMainKey } from '../../parts/use-main-key.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useDoing, useHost } from '../../app/host.tsx'
import { say } from '../../words/index.ts'
import type { Input } from '../../../main/contract/procedures.ts'
import type { Told } from './index.tsx'

/** The key that copies; a letter, so that it is free while text is typed. */
const COPY_KEY = 'KeyC'
const MOST_LINES = 6

interface Props {
  readonly store: Input<'administrations.note'>['store']
  readonly id: string
  readonly told: Told
  /** What else is made for the record, beside the button that copies. */
  readonly children: ReactNode
}

export const lineCount = (text: string): number => text.trimEnd().split('\n').length

/** The short text for the clinic's record: proposed, changed by the examiner, copied by one key. */
export function RecordText({ store, id, told, children }: Props) {
  const { call } = useHost()
  const noting = useDoing()
  const [typed, setTyped] = useState<string | null>(null)
  const [copied, setCopied] = useState<'not_yet' | 'copied' | 'failed'>('not_yet')
  const text = typed ?? told.shortText
  const tooLong = lineCount(text) > MOST_LINES
  const copy = async (): Promise<void> => {
    const reached = await navigator.clipboard.writeText(text).then(
      () => true,
      () => false,
    )
    setCopied(reached ? 'copied' : 'failed')
    if (reached) await noting.run(async () => void (await call('administrations.note', { store, id, text })))
  }
  useMainKey(COPY_KEY, () => void copy(), !tooLong)
  return (
    <Section title={say('result.record_text')} hint={say('result.record_text_hint')}>
      <div className="result-record">
        <Field
          label={say('result.record_text_label')}
          value={text}
          onChange={(value) => {
            setTyped(value)
            setCopied('not_yet')
          }}
          isMultiline
          width="wide"
          maxLength={2000}
          error={tooLong ? say('result.too_many_lines', { most: MOST_LINES, lines: lineCount(text) }) : null}
        />
      </div>
      <div className="row">
        <Button look="strong" keyCode={COPY_KEY} isDisabled={tooLong} onPress={() => void copy()}>
          {say('result.copy')}
        </Button>
        {children}
        {typed === null || typed === told.shortText ? null : (
          <Button look="quiet" onPress={() => setTyped(null)}>
            {say('result.proposed_again')}
          </Button>
        )}
        {told.noteTaken && copied === 'not_yet' ? (
          <p className="soft">{say('result.already_taken')}</p>
        ) : null}
      </div>
      {copied === 'not_yet' ? null : (
        <Notice tone={copied === 'copied' ? 'plain' : 'fault'} title={say(`result.${copied}`)} isLive />
      )}
      <FaultNotice fault={noting.fault} />
    </Section>
  )
}
