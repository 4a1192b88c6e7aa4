import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { NOTHING_KNOWN } from '../../protocols/client.ts'
import { manualParts } from '../../protocols/language/manual/index.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { NODE_SCHEMAS } from '../../protocols/language/schema/kinds.ts'
import { simulate } from '../../protocols/rehearsal/simulate.ts'
import { runnerFor } from '../../protocols/runner/index.ts'
import { scoreAll } from '../../protocols/scoring/scores.ts'
import { folderAt } from './folders.ts'

const folder = folderAt(join(import.meta.dirname, 'corpus/sound/everything'))
const text = folder.files.get('protocol.yaml') ?? ''
const written = parse(text)

const uuid = (n: number): string => `01990000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`

/** A whole administration with a made-up client, as anybody would rehearse it. */
function rehearsed(seed: number, protocolText: string) {
  const files = new Map([...folder.files, ['protocol.yaml', protocolText]])
  const { protocol } = readProtocol({ label: '', files })
  if (!protocol) throw new Error('the protocol can’t be read')
  let id = 0
  const log = simulate(protocol, {
    seed,
    facts: { ...NOTHING_KNOWN, dominantBefore: 'right', usedNow: 'right' },
    client: null,
    user: 'student',
    kit: [],
    conditions: { wood: 'oak' },
    nextId: () => uuid((id += 1)),
    at: (ms) => new Date(Date.UTC(2026, 2, 2, 9) + ms).toISOString().replace('Z', '+00:00'),
    opened: {
      kind: 'opened',
      protocol: {
        id: protocol.id,
        version: protocol.version,
        hash: '0'.repeat(64),
        language: 'en',
        wording: null,
        from: 'clinic',
      },
      program: '0.1.0',
      rehearsal: true,
      visit: null,
      on: '2026-03-02',
      examiner: { id: uuid(0xffff), name: 'Student' },
    },
  })
  const runner = runnerFor(protocol)
  const { administration, refused } = runner.replay(log)
  return { refused, view: runner.view(administration, uuid(1)), standing: runner.standing(administration) }
}

describe('a protocol written from the manual alone uses the whole language and runs', () => {
  test('every kind and every key that the manual tells stands in it', () => {
    const keys = keysIn(written)
    const told = manualParts().flatMap(({ keys: paths }) =>
      paths.map(({ path }) => path.split('.').at(-1) ?? ''),
    )
    expect([...NODE_SCHEMAS.keys(), ...told].filter((key) => !keys.has(key))).toEqual([])
  })

  test.each([1, 2, 3, 4, 5, 6])('a whole administration of it is given and scored (seed %i)', (seed) => {
    const { refused, view, standing } = rehearsed(seed, text)
    expect(refused).toEqual([])
    expect(view.phase).toBe('finished')
    const given = new Set(standing.trials.map(({ step }) => step))
    expect(
      ['years', 'carry', 'quality', 'turn', 'felt', 'squeeze', 'taps'].filter((step) => !given.has(step)),
    ).toEqual([])
    expect(scoreAll(standing).length).toBeGreaterThan(10)
  })
})

/** States that the chart has beside those of the file's steps. */
const STATES = ['ordering', 'choosing', 'end', 'waiting', 'closing', 'halted', 'giving']

test.each(STATES)('a step may be called %s, whatever the chart calls its own states', (name) => {
  for (const step of ['years', 'carry', 'squeeze']) {
    const renamed = text.replaceAll(new RegExp(`\\b${step}\\b`, 'g'), name)
    expect(rehearsed(1, renamed).view.phase).toBe('finished')
  }
})

function keysIn(value: unknown): ReadonlySet<string> {
  if (Array.isArray(value)) return new Set(value.flatMap((item) => [...keysIn(item)]))
  if (typeof value !== 'object' || value === null) return new Set()
  return new Set(Object.entries(value).flatMap(([key, inside]) => [key, ...keysIn(inside)]))
}
