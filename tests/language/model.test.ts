import { describe, expect, test } from 'vitest'
import type { Node, Protocol, Step } from '../../protocols/language/model.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { casesIn } from './corpus.ts'
import { folderOf } from './folders.ts'

const sound = new Map(casesIn('sound').map(({ name, folder }) => [name, folder]))
const LEAST = sound.get('least.yaml')?.files.get('protocol.yaml') ?? ''

/** The protocol that comes of the least one with its trial and some parts replaced. */
function withTrial(trial: string, ...edits: readonly (readonly [string, string])[]): Protocol {
  const text = edits.reduce(
    (made, [old, now]) => made.replace(old, now),
    LEAST.replace(/\{ timed: carry.*\}\n/, `${trial}\n`),
  )
  const { protocol, diagnostics } = readProtocol(folderOf(text))
  if (!protocol) throw new Error(JSON.stringify(diagnostics))
  return protocol
}

function stepIn(nodes: readonly Node[], name: string): Step | null {
  for (const node of nodes) {
    if (node.node === 'step' && node.name === name) return node
    const inner = node.node === 'section' ? stepIn(node.steps, name) : null
    if (inner) return inner
  }
  return null
}

const TRIAL = '{ timed: carry, start: { said: go }, stop: { seen: home }'

describe('what a step’s keys become', () => {
  test('what an outcome counts as is in the unit that the trial measures', () => {
    const protocol = withTrial(`${TRIAL}, limit: 2 min, counts-as: { limit: over 2 min, unable: 90 } }`)
    expect(stepIn(protocol.steps, 'carry')?.countsAs).toEqual({
      limit: { value: { is: { value: 120, unit: 's' } }, over: true },
      unable: { value: { is: { value: 90, unit: 's' } }, over: false },
    })
  })

  test('a value alone is what the limit counts as', () => {
    const protocol = withTrial(`${TRIAL}, limit: 60 s, counts-as: over 60 s }`)
    expect(stepIn(protocol.steps, 'carry')?.countsAs).toEqual({
      limit: { value: { is: { value: 60, unit: 's' } }, over: true },
    })
  })

  test('cues, limits and what may be said have their texts by key', () => {
    const protocol = withTrial(`${TRIAL}, limit: 60 s, may-say: [Keep going, Well done] }`)
    const step = stepIn(protocol.steps, 'carry')
    expect(step?.fields).toEqual({
      start: { by: 'said', text: { key: 'carry.start' } },
      stop: { by: 'seen', text: { key: 'carry.stop' } },
      limit: { is: { value: 60, unit: 's' } },
    })
    expect(step?.maySay).toEqual([{ key: 'carry.may-say.1' }, { key: 'carry.may-say.2' }])
    expect(protocol.words[0]?.texts['carry.may-say.2']).toBe('Well done')
  })

  test('an expression in place of a time gives seconds, whatever its unit', () => {
    const protocol = withTrial(`${TRIAL}, limit: { from: most } }`, [
      'happenings:',
      'conditions:\n  most: { set-by: clinic, values: [1 min, 2 min], usual: 1 min }\nhappenings:',
    ])
    const limit = stepIn(protocol.steps, 'carry')?.fields['limit']
    expect(limit).toMatchObject({
      from: { source: 'most', type: { is: 'number', unit: 's' }, reads: ['most'] },
    })
  })
})

describe('conditions', () => {
  const protocol = withTrial(`${TRIAL} }`, [
    'happenings:',
    `conditions:
  fill: { set-by: clinic, values: [60 s, 61 s], usual: 60 s }
  runs: { set-by: examiner, values: [1, 2, 3] }
  begins: { is: first_touch }
happenings:`,
  ])
  const options = (name: string) => protocol.conditions.find((each) => each.name === name)?.options

  test('are recorded as written, and mean a quantity, a number or a text', () => {
    expect(options('fill')).toMatchObject([
      { id: '60 s', value: { value: 60, unit: 's' } },
      { id: '61 s', value: { value: 61, unit: 's' } },
    ])
    expect(options('runs')?.map(({ id, value }) => [id, value])).toEqual([
      ['1', { value: 1, unit: '1' }],
      ['2', { value: 2, unit: '1' }],
      ['3', { value: 3, unit: '1' }],
    ])
    expect(options('begins')).toEqual([{ id: 'first_touch', text: null, value: 'first_touch' }])
  })

  test('that the file fixes are set by it', () => {
    expect(protocol.conditions.map(({ name, setBy, usual }) => [name, setBy, usual])).toEqual([
      ['fill', 'clinic', '60 s'],
      ['runs', 'examiner', null],
      ['begins', 'file', 'first_touch'],
    ])
  })
})

describe('norms and change figures', () => {
  const { protocol } = readProtocol(sound.get('pounds') ?? folderOf(''))

  test('a table keeps its own unit and the line of each row', () => {
    expect(protocol?.norms[0]).toMatchObject({
      unit: '[lbf_av]',
      differs: 'withhold',
      file: 'norms/adults.csv',
    })
    expect(protocol?.norms[0]?.rows.map(({ line, hand, mean }) => [line, hand, mean])).toEqual([
      [2, 'right', 16.1],
      [3, 'left', 17.2],
      [4, 'right', 16.5],
      [5, 'left', 17.6],
    ])
  })

  test('a change figure is in the unit of its score', () => {
    expect(protocol?.change[0]?.unit).toBe('kgf')
    expect(protocol?.change[0]?.value).toBeCloseTo(50 / 9.80665, 12)
  })

  test('a percentage of the first value stays one', () => {
    const full = sound.get('full') ?? folderOf('')
    const text = (full.files.get('protocol.yaml') ?? '').replace('mdc95: 3.3 s', 'mdc95: "19.4 %"')
    const read = readProtocol({ label: '', files: new Map([...full.files, ['protocol.yaml', text]]) })
    expect(read.protocol?.change[0]).toMatchObject({ statistic: 'MDC95', value: 19.4, unit: '%' })
  })
})
