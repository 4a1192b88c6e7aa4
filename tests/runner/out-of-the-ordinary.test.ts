import { describe, expect, test } from 'vitest'
import { eventBody } from '../../protocols/runner/events.ts'
import { administrationView } from '../../protocols/runner/view.ts'
import { ADMINISTRATION, Giving, madeProtocol } from './giving.ts'

const PROTOCOL = madeProtocol(
  '  - { timed: run, voids: 2, start: { said: go }, stop: { seen: Done. } }',
  `accommodations: { seat: A wheelchair. }
happenings:
  helped: { seen: The other hand helps., then: void, key: h }`,
)

const ACTS = {
  deviated: { kind: 'deviated', what: 'The table was too high', reason: 'No other room', norms: 'caution' },
  accommodated: {
    kind: 'accommodated',
    accommodation: 'seat',
    what: 'Wheelchair',
    reason: 'Cannot transfer',
  },
  paused: { kind: 'paused', reason: 'A telephone call' },
} as const

/** One departure, one accommodation, one pause and one void trial. */
const given = () => {
  const giving = new Giving(PROTOCOL).begin().do(ACTS.deviated).do(ACTS.accommodated)
  giving.do(ACTS.paused).do({ kind: 'resumed' }).start()
  giving.do(giving.body('happened', { happening: 'helped', stamp: giving.stamp() }))
  return giving.runner.view(giving.administration, ADMINISTRATION)
}

type View = ReturnType<typeof given>

const ENTRIES: readonly [string, (view: View) => unknown, readonly string[]][] = [
  ['a deviation', ({ deviations }) => deviations[0], ['reason', 'at', 'by']],
  ['an accommodation', ({ deviations }) => deviations[1], ['reason', 'at', 'by']],
  ['a pause', ({ pauses }) => pauses[0], ['reason', 'from', 'by']],
  ['a void', ({ trials }) => trials[0]?.void, ['cause', 'happening', 'at', 'by']],
]

describe('STD-ADM-2: what is out of the ordinary has its reason, its time and its person', () => {
  test.each(ENTRIES)('%s', (_, entryOf, keys) => {
    const entry = entryOf(given()) as Record<string, unknown>
    for (const key of keys) expect(entry[key]).toMatch(/./)
    expect(entry['by']).toBe('Ida')
  })

  test.each(ENTRIES.flatMap(([name, entryOf, keys]) => keys.map((key) => [name, key, entryOf] as const)))(
    '%s without its %s is refused by the shape that screen and host share',
    (_, key, entryOf) => {
      const view = structuredClone(given())
      expect(administrationView.safeParse(view).success).toBe(true)
      Reflect.deleteProperty(entryOf(view) as object, key)
      expect(administrationView.safeParse(view).success).toBe(false)
    },
  )

  test.each(Object.values(ACTS))('an act without a reason is none: $kind', (act) => {
    expect(eventBody.safeParse(act).success).toBe(true)
    expect(eventBody.safeParse({ ...act, reason: ' ' }).success).toBe(false)
    const { reason: _, ...without } = act
    expect(eventBody.safeParse(without).success).toBe(false)
  })

  test('a void by its key is asked for its reason until it has one', () => {
    const giving = new Giving(PROTOCOL).begin().start().press('voided', 4000)
    const [trial = ''] = giving.view().unexplained
    expect(giving.view().trials[0]?.void).toMatchObject({ happening: null, by: 'Ida' })
    giving.do({ kind: 'explained', trial, happening: 'helped', remark: '' })
    expect(giving.view().unexplained).toEqual([])
    expect(giving.view().trials[0]?.void).toMatchObject({ happening: 'helped', by: 'Ida' })
  })
})
