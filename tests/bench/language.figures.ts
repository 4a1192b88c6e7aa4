/** Checking a long protocol whole, beside reading the same text with the YAML library alone. */
import { LineCounter, parseDocument } from 'yaml'
import { test } from 'vitest'
import { readProtocol } from '../../protocols/language/read.ts'
import { folderOf } from '../language/folders.ts'
import { figure, turnAbout } from './measure.ts'

const range = (count: number): readonly number[] => Array.from({ length: count }, (_, n) => n + 1)

/** Two thousand lines as an author writes them: a bank of items, many steps, a score for each. */
function longProtocol(): string {
  const items = range(300).map(
    (n) => `    - { id: item_${n}, part: ${n % 2 ? 'near' : 'far'}, say: "Ring ${n} to the peg." }`,
  )
  const steps = range(190).flatMap((n) => [
    `      - instruct: say_${n}`,
    `        text: Squeeze as hard as you can, ${n}.`,
    `      - measured: force_${n}`,
    '        unit: kgf',
    '        range: [0, 100]',
    `        text: Read the dial to the nearest mark, ${n}.`,
  ])
  const scores = range(125).flatMap((n) => [
    `  - score: best_${n}`,
    `    title: Best of ${n}`,
    '    each: hand',
    `    value: max(force_${n}.value)`,
    '    unit: kgf',
    '    better: higher',
    '    decimals: 1',
    '    shown: true',
  ])
  return `${[
    'evenhand: 1',
    'id: long',
    'version: 1.0.0',
    'language: en',
    'title: A long one',
    'about:',
    '  purpose: To be long.',
    '  measures: [b730]',
    '  minutes: [1, 2]',
    '  suits: Nobody.',
    '  longest-gap: 15 min',
    'kit:',
    '  dynamometer: { text: Dynamometer }',
    'lists:',
    '  tasks:',
    ...items,
    'steps:',
    '  - for-each: task',
    '    in: tasks',
    '    steps:',
    '      - { instruct: say_task, text: { from: task.say } }',
    '      - { measured: placed, unit: "{score}", range: [0, 3] }',
    '  - for-each: hand',
    '    in: hands',
    '    order: right-first',
    '    steps:',
    ...steps,
    'scores:',
    '  - { score: all_placed, value: sum(placed.value), unit: "{score}", better: higher, decimals: 0 }',
    ...scores,
  ].join('\n')}\n`
}

const timed = (work: () => unknown) => () => {
  const begun = performance.now()
  work()
  return performance.now() - begun
}

test('checking two thousand lines', async () => {
  const text = longProtocol()
  const lines = text.split('\n').length
  const { diagnostics } = readProtocol(folderOf(text))
  const errors = diagnostics.filter(({ severity }) => severity === 'error')
  if (errors.length > 0 || lines < 2000) throw new Error(`${lines} lines, ${JSON.stringify(errors[0])}`)
  const { ours, baseline } = await turnAbout(
    15,
    timed(() => readProtocol(folderOf(text))),
    timed(() => parseDocument(text, { version: '1.2', lineCounter: new LineCounter() }).toJS()),
  )
  figure(`check of a protocol of ${lines} lines / the YAML library alone`, ours / baseline, { most: 3 })
})
