import type { Output } from '../../../main/contract/procedures.ts'
import { showDate } from '../../app/dates.ts'
import { go } from '../../app/route.ts'
import { Button } from '../../parts/button.tsx'
import { hasWords, say } from '../../words/index.ts'

type Line = Output<'clients.read'>['administrations'][number]

export interface AdministrationListProps {
  readonly lines: readonly Line[]
  /** Said when there are none. */
  readonly none: string
  readonly client: string
  /** True in an open visit: then it can be said at once that it was given to somebody else. */
  readonly isNow: boolean
}

/** Tests that were given, without a single value: results open on request, since the client reads along. */
export function AdministrationList({ lines, none, client, isNow }: AdministrationListProps) {
  if (lines.length === 0) return <p className="soft">{none}</p>
  return (
    <ul className="client-list">
      {lines.map((line) => (
        <li key={line.id} className={isNow ? 'client-line' : 'client-line client-line-short'}>
          <div>
            <p className="client-line-title">{line.protocol.title}</p>
            <p className="soft small">
              {[say('client.line', { on: showDate(line.on), examiner: line.examiner }), stateWords(line)]
                .filter(Boolean)
                .join(' · ')}
            </p>
          </div>
          <LineActions line={line} client={client} isNow={isNow} />
        </li>
      ))}
    </ul>
  )
}

interface LineActionsProps {
  readonly line: Line
  readonly client: string
  readonly isNow: boolean
}

function LineActions({ line, client, isNow }: LineActionsProps) {
  if (line.enteredInError || line.phase === 'withdrawn') return null
  if (line.phase !== 'finished' && line.phase !== 'to_rate')
    return (
      <Button
        label={say('client.go_on.label', { test: line.protocol.title })}
        onPress={() => go(`administration/records/${line.id}`)}
      >
        {say('client.go_on')}
      </Button>
    )
  return (
    <div className="row">
      {line.phase === 'to_rate' ? (
        <Button
          label={say('client.rate.label', { test: line.protocol.title, on: showDate(line.on) })}
          onPress={() => go(`administration/records/${line.id}`)}
        >
          {say('client.rate')}
        </Button>
      ) : null}
      <Button
        label={say('client.result.label', { test: line.protocol.title, on: showDate(line.on) })}
        onPress={() => go(`result/records/${line.id}`)}
      >
        {say('client.result')}
      </Button>
      <Button
        look="quiet"
        label={say('client.history.label', { test: line.protocol.title })}
        onPress={() => go(`history/${client}/${line.protocol.id}`)}
      >
        {say('client.history')}
      </Button>
      {isNow ? (
        <Button
          look="quiet"
          label={say('client.move.label', { test: line.protocol.title })}
          onPress={() => go(`move/${client}/${line.id}`)}
        >
          {say('client.move')}
        </Button>
      ) : null}
    </div>
  )
}

function stateWords(line: Line): string {
  if (line.enteredInError) return say('client.state.in_error')
  if (line.phase === 'finished') return line.noteTaken ? '' : say('client.state.note')
  const key = `client.state.${line.phase}`
  return hasWords(key) ? say(key) : say('client.state.unfinished')
}
