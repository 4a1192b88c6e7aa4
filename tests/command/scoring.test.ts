import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { ScoredEvents } from '../../main/hosts/command/scoring.ts'
import { addClient, type Desk, give, GRIP, openDesk, PEGS } from '../calls/desk.ts'
import { evenhand, jsonOf } from './evenhand.ts'

let desk: Desk
let folder = ''
const given = new Map<string, string>()
const seals = new Map<string, string>()
const results = new Map<string, { scores: unknown[]; trials: unknown[] }>()

beforeAll(async () => {
  desk = await openDesk()
  folder = mkdtempSync(join(tmpdir(), 'evenhand-score-'))
  for (const key of [PEGS, GRIP]) {
    const { id } = await give(desk, key, await addClient(desk, `Ada Marsh ${key.key}`))
    given.set(key.key, id)
    const { result, seal } = await desk.client.call('administrations.result', { store: 'records', id })
    seals.set(key.key, seal?.code ?? '')
    results.set(key.key, result)
  }
  desk.clinic.close()
}, 60_000)
afterAll(() => desk.clinic.close())

const write = (name: string, text: string) => {
  const file = join(folder, name)
  writeFileSync(file, text)
  return file
}
const asked = (code: string, ...more: string[]) =>
  evenhand('verify', '--seal', code, '--records', desk.folder, ...more)
const eventsOf = (key: string) => evenhand('events', given.get(key) ?? '', '--records', desk.folder)

describe('evenhand events and score', () => {
  test.each(['nine_hole_peg', 'grip_strength'])(
    'STD-ADM-13 the exported events of %s give the same numbers from the command line as on the screen',
    async (key) => {
      const exported = await eventsOf(key)
      expect(exported.code).toBe(0)
      const scored = await evenhand('score', key, write(`${key}.jsonl`, exported.out), '--json')
      expect(scored.code).toBe(0)
      const value = jsonOf(scored) as ScoredEvents
      expect(value.sameProtocol).toBe(true)
      expect(value.refused).toEqual([])
      expect(value.scores).toEqual(results.get(key)?.scores)
      expect(value.trials).toEqual(results.get(key)?.trials)
    },
  )

  test('each line is one event with id, time, user and body', async () => {
    const lines = (await eventsOf('nine_hole_peg')).out.split('\n').map((line) => JSON.parse(line))
    for (const line of lines) expect(Object.keys(line)).toEqual(['id', 'at', 'user', 'body'])
    expect(lines[0].body.kind).toBe('opened')
    expect(lines.at(-1).body.kind).toBe('finished')
  })

  test('people read every score with its unit, how many trials, and the norm’s row', async () => {
    const file = write('read.jsonl', (await eventsOf('nine_hole_peg')).out)
    const { out } = await evenhand('score', 'nine_hole_peg', file)
    expect(out).toMatch(/\(right hand\): \d+\.\d ± 0\.2 s/)
    expect(out).toContain('± is the error of taking a time by hand')
    expect(out).toMatch(/percentile \d/)
  })

  test('another text of the protocol is said', async () => {
    const changed = (await eventsOf('nine_hole_peg')).out.replace(
      /"hash":"[0-9a-f]{64}"/,
      `"hash":"${'0'.repeat(64)}"`,
    )
    const scored = await evenhand('score', 'nine_hole_peg', write('other.jsonl', changed), '--json')
    expect((jsonOf(scored) as ScoredEvents).sameProtocol).toBe(false)
  })

  test('an event that doesn’t fit where it stands is named and ends with 1', async () => {
    const lines = (await eventsOf('nine_hole_peg')).out.split('\n')
    const again = (lines.at(-1) ?? '').replace(/"id":"[^"]*"/, `"id":"${crypto.randomUUID()}"`)
    const twice = [...lines, again].join('\n')
    const scored = await evenhand('score', 'nine_hole_peg', write('twice.jsonl', twice), '--json')
    expect(scored.code).toBe(1)
    expect((jsonOf(scored) as ScoredEvents).refused).toMatchObject([{ kind: 'finished' }])
  })

  test.each([
    ['a line that is no JSON', (line: string) => line.slice(0, -5), (line: string) => line.length - 4],
    [
      'a wrong kind',
      (line: string) => line.replace('"assigned"', '"asigned"'),
      (line: string) => line.indexOf('"kind"') + 8,
    ],
    [
      'a wrong type deep inside',
      (line: string) => line.replace('"sex":"F"', '"sex":7'),
      (line: string) => line.indexOf('"sex"') + 7,
    ],
    ['a key too many', (line: string) => line.replace('"id":', '"extra":1,"id":'), () => 10],
    [
      'a time that is none',
      (line: string) => line.replace(/"at":"[^"]*"/, '"at":"now"'),
      (line: string) => line.indexOf('"at":') + 6,
    ],
  ])('%s is named with file, line and column and ends with 2', async (_, spoil, column) => {
    const lines = (await eventsOf('nine_hole_peg')).out.split('\n')
    const second = lines[1] ?? ''
    const file = write('bad.jsonl', [lines[0], spoil(second), ...lines.slice(2)].join('\n'))
    const { code, err } = await evenhand('score', 'nine_hole_peg', file)
    expect(code).toBe(2)
    const place = /^(.*):(\d+):(\d+): /.exec(err)
    expect([place?.[1], place?.[2]]).toEqual([file, '2'])
    expect(Number(place?.[3])).toBe(column(second))
  })

  test('a line that stands there twice is named with both', async () => {
    const lines = (await eventsOf('nine_hole_peg')).out.split('\n')
    const file = write('repeated.jsonl', [...lines, lines[1]].join('\n'))
    const { code, err } = await evenhand('score', 'nine_hole_peg', file)
    expect(code).toBe(2)
    expect(err).toContain(`${file}:${lines.length + 1}:7: this event stands in line 2 already.`)
  })

  test('a missing file, an empty one, and events that begin nothing', async () => {
    expect((await evenhand('score', 'nine_hole_peg', join(folder, 'nowhere'))).code).toBe(2)
    expect((await evenhand('score', 'nine_hole_peg', write('empty.jsonl', '\n\n'))).code).toBe(2)
    const [first = ''] = (await eventsOf('nine_hole_peg')).out.split('\n')
    expect((await evenhand('score', 'nine_hole_peg', write('one.jsonl', first))).code).toBe(2)
    const missing = await evenhand('events', crypto.randomUUID(), '--records', desk.folder)
    expect([missing.code, missing.out]).toEqual([2, ''])
    const nowhere = await evenhand('events', 'x', '--records', join(folder, 'none'))
    expect([nowhere.code, nowhere.err.includes('There are no records')]).toEqual([2, true])
  })
})

describe('evenhand verify', () => {
  test('whole records end with 0, in JSON and for people', async () => {
    const verified = await evenhand('verify', '--records', desk.folder, '--json')
    expect(verified.code).toBe(0)
    expect(jsonOf(verified)).toMatchObject([
      { store: 'clinic', devices: 1, erased: 0, problems: [] },
      { store: 'rehearsal', problems: [] },
    ])
    expect((await evenhand('verify', '--records', desk.folder)).out).toMatch(
      /^The clinic’s records in .*: \d+ events of 1 device; chain, order and scores hold\.$/m,
    )
  })

  test('the code on a report finds its seal, however it is typed; one that is nobody’s is told', async () => {
    const seal = seals.get('nine_hole_peg') ?? ''
    const found = await asked(seal.toLowerCase().replaceAll('-', ' '), '--json')
    expect([found.code, jsonOf(found)]).toMatchObject([
      0,
      [{ seal: { code: seal, administration: given.get('nine_hole_peg') } }, { seal: null }],
    ])
    expect((await asked(seal)).out).toContain(`The seal ${seal} is there`)
    const none = await asked('0000-0000-0000-0000')
    expect([none.code, none.out]).toEqual([1, expect.stringContaining('is not in these records')])
    expect((await asked('four')).code).toBe(2)
  })
})

describe('evenhand rehearse', () => {
  test('walks through every library protocol, the same for the same seed', async () => {
    for (const protocol of ['nine_hole_peg', 'box_and_block', 'grip_strength']) {
      const first = await evenhand('rehearse', protocol, '--seed', '7', '--json')
      expect([protocol, first.code, first.err]).toEqual([protocol, 0, ''])
      expect((await evenhand('rehearse', protocol, '--seed', '7', '--json')).out).toBe(first.out)
      expect((await evenhand('rehearse', protocol, '--seed', '8', '--json')).out).not.toBe(first.out)
      const { scored } = jsonOf(first) as { scored: ScoredEvents }
      expect(scored.complete).toBe(true)
      expect(scored.scores.some(({ value }) => value !== null)).toBe(true)
    }
  })

  test('its events are what score reads', async () => {
    const { events, scored } = jsonOf(await evenhand('rehearse', 'grip_strength', '--json')) as {
      events: unknown[]
      scored: ScoredEvents
    }
    const file = write('walk.jsonl', events.map((event) => JSON.stringify(event)).join('\r\n'))
    expect(jsonOf(await evenhand('score', 'grip_strength', file, '--json'))).toEqual(scored)
  })

  test('on all paths it says how far it went and the way to each step, and ends with 0 where all is well', async () => {
    const ran = await evenhand('rehearse', 'nine_hole_peg', '--all-paths', '--json')
    expect([ran.code, ran.err]).toEqual([0, ''])
    const value = jsonOf(ran) as {
      bound: { states: number; met: string | null }
      steps: { step: string; way: { taken: { at: string; outcome: string }[] } | null }[]
    }
    expect(value).toMatchObject({ bound: { met: null }, deadEnds: [], scoresNever: [], rulesNever: [] })
    const placed = value.steps.find(({ step }) => step === 'placed')?.way
    expect(placed?.taken.at(-1)).toMatchObject({ at: 'run', outcome: 'limit' })
    const told = await evenhand('rehearse', 'nine_hole_peg', '--all-paths')
    expect(told.out).toMatch(/placed: reached after \d+ outcomes \(usual; run .*limit\)/)
    expect(told.out).toContain('Every path was walked')
  }, 60_000)

  test('a seed that is none is refused', async () => {
    for (const seed of ['x', '-1', '1.5'])
      expect((await evenhand('rehearse', 'grip_strength', `--seed=${seed}`)).code).toBe(2)
  })
})

describe('evenhand compare', () => {
  const WHO = ['--sex', 'F', '--hand', 'right', '--dominant', 'right']
  const compare = (...words: string[]) => evenhand('compare', 'nine_hole_peg', ...words, ...WHO)

  test('gives the row used, z, and percentile with interval and definition', async () => {
    const ran = await compare('--score', 'time', '--value', '18.2', '--age', '34', '--json')
    expect(ran.code).toBe(0)
    const { norms, unit, protocol } = jsonOf(ran) as {
      norms: Record<string, unknown>[]
      unit: string
      protocol: unknown
    }
    expect([unit, protocol]).toMatchObject(['s', { id: 'nine_hole_peg' }])
    const used = norms.find(({ norm }) => norm === 'adults_1985') as { strata: Record<string, number>[] }
    const [row] = used.strata
    expect(row).toMatchObject({ sex: 'F', hand: 'right' })
    expect(row?.z).toBeCloseTo((18.2 - (row?.mean ?? 0)) / (row?.sd ?? 1), 10)
    expect(row?.performanceZ).toBeCloseTo(-(row?.z ?? 0), 10)
    expect(row).toHaveProperty('percentileInterval')
    expect(row).toHaveProperty('definition')
  })

  test('an age in years and months is taken, and one out of the table is said', async () => {
    const ran = await compare('--score', 'time', '--value', '30', '--age', '7y5m', '--json')
    const { norms } = jsonOf(ran) as { norms: { norm: string; status: string }[] }
    expect(norms.find(({ norm }) => norm === 'adults_1985')?.status).toBe('out_of_range')
  })

  test.each([
    [['--score', 'tme', '--value', '18', '--age', '34'], 'The protocol has: time'],
    [['--score', 'time', '--value', 'fast', '--age', '34'], 'is no number'],
    [['--score', 'time', '--value', '18,2', '--age', '34'], 'is no number'],
    [['--score', 'time', '--value', '18', '--age', 'old'], 'is no age'],
    [['--score', 'time', '--value', '18', '--age', '7y13m'], 'is no age'],
    [['--score', 'time', '--age', '34'], '--value is needed'],
  ])('%j is refused with a mend', async (words, sentence) => {
    const { code, err } = await compare(...words)
    expect([code, err.includes(sentence)]).toEqual([2, true])
  })

  test('a protocol that there is not is refused with the one that was meant', async () => {
    const { code, err } = await evenhand(
      'compare',
      'nine_hole_pegs',
      '--score',
      'time',
      '--value',
      '18',
      '--age',
      '34',
      ...WHO,
    )
    expect([code, err.includes('Did you mean nine_hole_peg?')]).toEqual([2, true])
  })
})
