/** The household tasks against what is published outside of them: a classification, and the reach of small adults. */
import { expect, test } from 'vitest'
import { readProtocol } from '../../protocols/language/read.ts'
import { folderOf } from '../library/folders.ts'

const { protocol } = readProtocol(folderOf('household_tasks'))
if (!protocol) throw new Error('can’t be read')
const { lists, about, kit, words } = protocol

// Memory: International Classification of Functioning 2001, chapter d4, the items below d440 and d445 in its order.
const D440 = ['d4400', 'd4401', 'd4402', 'd4403', 'd4408', 'd4409']
const D445 = ['d4450', 'd4451', 'd4452', 'd4453', 'd4454', 'd4455', 'd4458', 'd4459']

const codes = (action: string): readonly string[] =>
  (lists.tasks ?? [])
    .filter(({ properties }) => properties.action === action)
    .map(({ properties }) => String(properties.icf))

test('fine hand use: one task for each action that the classification names, in its order', () => {
  expect(codes('fine')).toEqual(D440.slice(0, 4))
})

test('hand and arm use: pulling, pushing, reaching and turning in its order, and one that joins two of them', () => {
  expect(codes('arm').filter((code) => code !== 'd4458')).toEqual(D445.slice(0, 4))
  expect(codes('arm').every((code) => D445.includes(code))).toBe(true)
})

test('what the test says it measures are the actions of its tasks', () => {
  expect([...about.measures].sort()).toEqual([...codes('fine'), ...codes('arm')].sort())
})

/** A length in the words of a piece of kit, in cm. */
function length(piece: string, before: string): number {
  const check = kit.find(({ id }) => id === piece)?.check
  const text = check && 'key' in check ? words[0]?.texts[check.key] : undefined
  const [, found] = new RegExp(`${before}\\D*?(\\d+) cm`).exec(text ?? '') ?? []
  if (found === undefined) throw new Error(`no length after ${before}`)
  return Number(found)
}

// Memory: anthropometric survey of United States Army women 1988, 5th percentile: height of the shoulder above the seat
// 50.9 cm, reach to the tip of the thumb 67.7 cm from the back that leans.
const SHOULDER = 50.9
const REACH = 67.7
/** About 20 cm of trunk and a hand's breadth to the edge, less the 10 cm between the back and the shoulder joint. */
const FROM_JOINT_TO_EDGE = 20 + 8 - 10

test.each([
  ['shelf', 'a shelf of 60 by 25 cm'],
  ['line and rail', 'a rail of 80 cm'],
  ['hooks', '15 cm apart'],
])('a small woman who sits reaches the %s without leaving the back of the chair', (_, before) => {
  const high = length('stand', before)
  const away = length('stand', 'Stands firm')
  const [table, seat] = [76, 42]
  const up = table + high - (seat + SHOULDER)
  expect(high).toBeGreaterThan(30)
  expect(Math.hypot(away + FROM_JOINT_TO_EDGE, up)).toBeLessThan(REACH)
})
