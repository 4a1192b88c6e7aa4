/** A small place to evaluate in: a timed step of three trials, a map by hand, conditions, a list item. */
import {
  checkExpression,
  datum,
  type Datum,
  type Environment,
  evaluate,
  type Evaluated,
  type ExpressionProblem,
  type Limits,
  parseExpression,
  type ValueType,
} from '../../protocols/language/expressions/index.ts'

const num = (unit: string | null): ValueType => ({ is: 'number', unit })
const listOf = (of: ValueType): ValueType => ({ is: 'list', of })
const OUTCOME: ValueType = { is: 'text', oneOf: ['done', 'limit', 'refused'] }

export const ENVIRONMENT: Environment = {
  run: {
    is: 'record',
    fields: {
      time: listOf(num('s')),
      added: listOf(num('s')),
      outcome: listOf(OUTCOME),
      rows: listOf({ is: 'record', fields: { time: num('s'), added: num('s'), outcome: OUTCOME } }),
    },
  },
  grade: { is: 'record', fields: { grade: listOf(num('{score}')) } },
  rate: { is: 'map', by: 'hand', of: num('{count}'), keys: ['right', 'left'] },
  dominant: { is: 'text', oneOf: ['right', 'left'] },
  nondominant: { is: 'text', oneOf: ['right', 'left'] },
  force: num('kgf'),
  pull: num('[lbf_av]'),
  mass: num('kg'),
  runs: num(null),
  fill: num('min'),
  blocks: num('{count}'),
  points: num('{score}'),
  task: { is: 'record', fields: { id: { is: 'text' }, role: { is: 'text' }, mass: num('g') } },
  steady: { is: 'bool' },
}

export type Cell = number | null | { readonly over: number }

const cell = (value: Cell, id: string): Datum =>
  value === null
    ? datum.none('refused', { step: 'run' }, [id])
    : typeof value === 'number'
      ? datum.number(value, false, [id])
      : datum.number(value.over, true, [id])

/** The place with these times for the step `run`, in the order they were given: trials `t1`, `t2` … */
export function placeWith(times: readonly Cell[]): Readonly<Record<string, Datum>> {
  const time = times.map((value, i) => cell(value, `t${i + 1}`))
  const outcome = times.map((value) => datum.text(value === null ? 'refused' : 'done'))
  const added = times.map((value, i) => cell(value === null ? null : 0, `t${i + 1}`))
  return {
    run: {
      is: 'record',
      fields: {
        time: datum.list(time),
        added: datum.list(added),
        outcome: datum.list(outcome),
        rows: datum.list(
          time.map((one, i) => ({
            is: 'record',
            fields: {
              time: one,
              added: added[i] ?? datum.none('no_rows'),
              outcome: outcome[i] ?? datum.none('no_rows'),
            },
          })),
        ),
      },
    },
    grade: { is: 'record', fields: { grade: datum.list([2, 3, 3].map((n) => datum.number(n))) } },
    rate: {
      is: 'map',
      entries: new Map([
        ['right', datum.number(10)],
        ['left', datum.number(8)],
      ]),
    },
    dominant: datum.text('right'),
    nondominant: datum.text('left'),
    force: datum.number(10),
    pull: datum.number(22),
    mass: datum.number(2),
    runs: datum.number(4),
    fill: datum.number(1),
    blocks: datum.number(3),
    points: datum.number(2),
    task: { is: 'record', fields: { id: datum.text('near_thick'), role: datum.text('hardest') } },
    steady: datum.bool(true),
  }
}

const TIMES: readonly Cell[] = [20.5, 19.1, 21]

export function problemsOf(source: string, expected: ValueType | null = null): readonly ExpressionProblem[] {
  const parsed = parseExpression(source)
  if (parsed.tree === null) return parsed.problems
  return checkExpression(source, parsed.tree, ENVIRONMENT, expected).problems
}

/** The one problem of an expression as `code` and the characters it points at. */
export function pointed(
  source: string,
  expected: ValueType | null = null,
): readonly (readonly [string, string])[] {
  return problemsOf(source, expected).map(({ code, start, end }) => [code, source.slice(start, end)] as const)
}

export function checked(source: string, expected: ValueType | null = null) {
  const parsed = parseExpression(source)
  if (parsed.tree === null) throw new Error(parsed.problems[0].message)
  const { expression, problems } = checkExpression(source, parsed.tree, ENVIRONMENT, expected)
  if (expression === null) throw new Error(problems.map(({ message }) => message).join(' '))
  return expression
}

export function evaluated(
  source: string,
  place: Readonly<Record<string, Datum>> = placeWith(TIMES),
  { expected = null, limits }: { expected?: ValueType | null; limits?: Limits } = {},
): Evaluated {
  return evaluate(checked(source, expected), { read: (name) => place[name] ?? null }, limits)
}

/** The value in short: a number, `{ over }` for a bound, text, truth, or the code of what is missing. */
export function short(source: string, times: readonly Cell[] = TIMES): unknown {
  const { value, missing } = evaluated(source, placeWith(times))
  if (missing !== null) return missing.code
  return shortValue(value)
}

function shortValue(value: Evaluated['value']): unknown {
  if (value === null || typeof value !== 'object') return value
  if ('n' in value) return value.over ? { over: value.n } : value.n
  return Array.isArray(value) ? value.map(shortValue) : value
}
