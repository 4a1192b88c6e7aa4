import { z } from 'zod'
import type { Side } from '../../../../protocols/client.ts'
import type { Protocol } from '../../../../protocols/language/model.ts'
import {
  type CompareProblem,
  compareValue,
  isOfOneHand,
  readAge,
} from '../../../../protocols/scoring/compare.ts'
import { change, normComparison } from '../../../../protocols/scoring/result.ts'
import { HostProblem } from '../../problem.ts'
import { say } from '../../words.ts'
import { type Given, command } from '../command.ts'
import { findProtocol } from '../find-protocol.ts'
import { definitionLines, figureLines, normLines, tellAmount } from '../tell.ts'

const SIDES = ['right', 'left'] as const
const SEXES = ['F', 'M', 'unknown'] as const

const shape = z.strictObject({
  protocol: z.strictObject({ id: z.string(), version: z.string(), hash: z.string() }),
  score: z.string(),
  title: z.string(),
  value: z.number(),
  unit: z.string(),
  decimals: z.int(),
  better: z.enum(['higher', 'lower', 'none']),
  /** Each with the rows used, z, percentile with interval, and which definition of percentile it is. */
  norms: z.array(normComparison),
  figures: z.array(change.shape.figures.element.omit({ exceeded: true })),
})

export default command({
  name: 'compare',
  summary: 'compare.summary',
  names: { usage: 'PROTOCOL', least: 1, most: 1 },
  options: {
    score: { type: 'string', value: 'ID', required: true },
    value: { type: 'string', value: 'V', required: true },
    age: { type: 'string', value: 'A', required: true },
    sex: { type: 'string', oneOf: SEXES, required: true },
    hand: { type: 'string', oneOf: SIDES },
    dominant: { type: 'string', oneOf: SIDES },
    affected: { type: 'string', oneOf: SIDES },
    with: { type: 'string', value: 'COLUMN=WORD,…' },
  },
  shape,
  run(given) {
    const { protocol, disk } = findProtocol(given.names[0] ?? '')
    const written = given.text('age') ?? ''
    const age = readAge(written)
    if (age === null) throw new HostProblem('compare.bad_age', { given: written })
    const compared = compareValue({
      protocol,
      score: given.text('score') ?? '',
      value: numberOf(given.text('value') ?? ''),
      age,
      sex: SEXES.find((sex) => sex === given.text('sex')) ?? 'unknown',
      hand: sideOf(given, 'hand'),
      dominant: sideOf(given, 'dominant'),
      affected: sideOf(given, 'affected'),
      told: toldOf(given.text('with'), protocol),
    })
    if ('problem' in compared) throw problemOf(compared)
    const { figures, title, value, unit, decimals } = compared
    const norms = [...compared.norms]
    return {
      value: {
        protocol: { id: protocol.id, version: protocol.version, hash: disk.hash },
        ...compared,
        norms,
        figures: [...figures],
      },
      lines: [
        say('compare.head', {
          title,
          hand: isOfOneHand(protocol, compared.score) ? (given.text('hand') ?? 'none') : 'none',
          value: tellAmount(value, decimals, unit),
        }),
        ...normLines(norms, compared),
        ...definitionLines([{ ...compared, norms }]),
        ...(figures.length ? ['', say('compare.figures'), ...figures.flatMap(figureLines)] : []),
      ],
      exit: 0,
    }
  },
})

/** `schooling=12,phase=early`: what the tables' own columns hold, and how conditions stood. */
function toldOf(given: string | null, { norms, conditions }: Protocol): Readonly<Record<string, string>> {
  const asked = conditions.filter(({ setBy }) => setBy !== 'file').map(({ name }) => name)
  const known = [...norms.flatMap(({ columns }) => columns.map(({ column }) => column)), ...asked]
  const pairs = (given === null ? [] : given.split(',')).map((pair) => {
    const [, column = '', word = ''] = /^\s*([a-z][a-z0-9_]*)\s*=\s*(\S.*?)\s*$/.exec(pair) ?? []
    if (!known.includes(column)) {
      const columns = [...new Set(known)].join(', ') || 'none'
      throw new HostProblem('compare.bad_column', { given: pair.trim(), columns })
    }
    return [column, word] as const
  })
  return Object.fromEntries(pairs)
}

const sideOf = ({ text }: Given, option: string): Side | null =>
  SIDES.find((side) => side === text(option)) ?? null

/** A decimal number; text where a number belongs is told, never read as far as it goes. */
function numberOf(given: string): number {
  const value = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(given) ? Number(given) : Number.NaN
  if (!Number.isFinite(value)) throw new HostProblem('compare.bad_value', { given })
  return value
}

const problemOf = ({ problem, detail }: CompareProblem) => new HostProblem(`compare.${problem}`, detail)
