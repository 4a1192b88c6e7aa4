import { describe, expect, test } from 'vitest'
import type { Node, Protocol, Step } from '../../protocols/language/model.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { judgeUnit } from '../../protocols/language/units.ts'
import { folderOf, TESTS } from './folders.ts'

function read(name: string): Protocol {
  const { protocol } = readProtocol(folderOf(name))
  if (!protocol) throw new Error(`${name} can't be read`)
  return protocol
}

function stepsOf(nodes: readonly Node[]): readonly Step[] {
  return nodes.flatMap((node) =>
    node.node === 'step' ? [node] : node.node === 'section' ? stepsOf(node.steps) : [],
  )
}

const TRIALS = ['timed', 'counted', 'measured', 'tapped', 'rated', 'ask']

/** Tests whose sheets know no practice: it is shown, and the first try counts. */
const UNPRACTISED = [
  'action_research_arm',
  'fugl_meyer_upper',
  'jebsen_taylor',
  'moberg_pickup',
  'range_of_motion',
  'touch_threshold',
  'two_point_discrimination',
  'wolf_motor_function',
]

describe.each(TESTS)('%s', (name) => {
  const { diagnostics } = readProtocol(folderOf(name))

  test('is read without an error or a warning', () => {
    expect(diagnostics.filter(({ severity }) => severity !== 'advice')).toEqual([])
  })

  const protocol = read(name)
  const remembered = protocol.norms.filter(({ rows }) =>
    rows.some(({ provenance }) => provenance === 'memory'),
  )

  test('the only advice left is to compare the tables from memory with print', () => {
    const advice = remembered.length > 0 ? ['norm_from_memory'] : []
    expect(new Set(diagnostics.map(({ code }) => code))).toEqual(new Set(advice))
  })

  test('is named as its folder', () => expect(protocol.id).toBe(name))

  test('STD-UNIT-1: every unit is a UCUM code', () => {
    const units = [
      ...protocol.scores.map(({ unit }) => unit),
      ...protocol.norms.map(({ unit }) => unit),
      ...stepsOf(protocol.steps).flatMap(({ fields }) =>
        typeof fields.unit === 'string' ? [fields.unit] : [],
      ),
    ]
    expect(units.length).toBeGreaterThan(3)
    expect(units.filter((unit) => !judgeUnit(unit).valid)).toEqual([])
  })

  test('kit, position, words and a demonstration come before the first trial', () => {
    const kinds = stepsOf(protocol.steps).map(({ kind }) => kind)
    const trial = kinds.findIndex((kind) => TRIALS.includes(kind))
    expect(new Set(kinds.slice(0, trial))).toEqual(new Set(['kit', 'position', 'instruct', 'demonstrate']))
  })

  test('the first trial is practice, and no other, unless the test has none', () => {
    const trials = stepsOf(protocol.steps).filter(({ kind }) => TRIALS.includes(kind))
    const first = UNPRACTISED.includes(name) ? -1 : 0
    expect(trials.map(({ practice }) => practice)).toEqual(trials.map((_, index) => index === first))
  })

  test('everything that asks why has an answer: precautions say why, happenings say what to do', () => {
    expect(protocol.precautions.filter(({ why }) => why === null)).toEqual([])
    const own = protocol.happenings.filter(({ builtIn }) => !builtIn)
    expect(own.filter((happening) => happening.do === null)).toEqual([])
    expect(protocol.kit.filter(({ check }) => check === null)).toEqual([])
  })

  test('the four reasons for a void that every test has are there, and own ones', () => {
    const voids = protocol.happenings.filter(({ becomes }) => becomes === 'void')
    expect(
      voids
        .filter(({ builtIn }) => builtIn)
        .map(({ name: reason }) => reason)
        .sort(),
    ).toEqual(['interruption', 'kit_fault', 'not_ready', 'timing_mistake'])
    expect(voids.length).toBeGreaterThan(6)
  })

  test('every norm says how each condition stood, or that it is unknown', () => {
    const names = protocol.conditions.map((condition) => condition.name).sort()
    for (const norm of protocol.norms) expect(Object.keys(norm.gathered).sort()).toEqual(names)
  })

  test('every norm and change figure names a source of the file, with what was seen', () => {
    const sources = new Set(protocol.sources.map(({ id }) => id))
    const cited = [...protocol.norms, ...protocol.change].map(({ source }) => source)
    expect(cited.filter((source) => !sources.has(source))).toEqual([])
    expect(protocol.sources.filter(({ note }) => note === '')).toEqual([])
  })

  test('a table with a row from memory says so in its source', () => {
    const notes = new Map(protocol.sources.map(({ id, note }) => [id, note]))
    expect(remembered.filter(({ source }) => !/memory/.test(notes.get(source) ?? ''))).toEqual([])
  })
})

test('box and block: the counted minute is the file’s own, no clinic can shorten it', () => {
  const window = read('box_and_block').conditions.find(({ name }) => name === 'window')
  expect(window).toMatchObject({ setBy: 'file', options: [{ id: '60 s', value: { value: 60, unit: 's' } }] })
})

test('grip strength: each table is held against the score of its own trial rule', () => {
  const protocol = read('grip_strength')
  expect(Object.fromEntries(protocol.norms.map(({ name, of }) => [name, of]))).toEqual({
    adults_1985: 'mean_of_3',
    children_1986: 'mean_of_3',
    adults_2011: 'mean_of_3',
    survey_2013_mean: 'mean_of_3',
    survey_2013_highest: 'highest_of_3',
    survey_2013_both: 'highest_of_both',
    survey_2013_mean_percentiles: 'mean_of_3',
    survey_2013_mean_dominance: 'mean_of_3',
    survey_2013_mean_dominance_percentiles: 'mean_of_3',
    survey_2013_highest_percentiles: 'highest_of_3',
    survey_2013_highest_dominance: 'highest_of_3',
    survey_2013_highest_dominance_percentiles: 'highest_of_3',
    survey_2013_both_percentiles: 'highest_of_both',
    life_course_2014: 'highest_of_both',
    panel_2016: 'highest_of_both',
  })
})

test('nine-hole peg: no table is held against the fastest run', () => {
  expect(read('nine_hole_peg').norms.filter(({ of }) => of !== 'time')).toEqual([])
})
