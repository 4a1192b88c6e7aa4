import { readFileSync } from 'node:fs'
import { z } from 'zod'
import { gradesAgreement, numbersAgreement } from '../../../../protocols/scoring/agreement.ts'
import { INTRACLASS_FORMS } from '../../../../protocols/scoring/statistics/intraclass.ts'
import { isUndefined, WHYS } from '../../../../protocols/scoring/statistics/undefined.ts'
import { HostProblem } from '../../problem.ts'
import { say } from '../../words.ts'
import { command } from '../command.ts'
import { userPath } from '../find-protocol.ts'
import { type RaterTable, readRaterTable, type TableFault } from '../rater-table.ts'
import { gradesLines, numbersLines } from '../tell-agreement.ts'

const end = z.number().nullable()
const interval = z.tuple([end, end])
const pair = z.tuple([z.string(), z.string()])
/** Why there is no value, where there is none. */
const why = z.enum(WHYS).nullable()

const limit = z.strictObject({ value: z.number(), interval, approximate: interval })
const numbers = z.strictObject({
  /** Shrout & Fleiss's forms; null throughout where the whole table has none. */
  intraclass: z.array(z.strictObject({ form: z.enum(INTRACLASS_FORMS), value: end, why, interval, p: end })),
  errors: z.array(
    z.strictObject({
      kind: z.enum(['agreement', 'consistency']),
      sem: z.number(),
      mdc90: z.number(),
      mdc95: z.number(),
    }),
  ),
  limits: z.array(
    z.strictObject({
      raters: pair,
      bias: z.number(),
      biasInterval: interval,
      sd: z.number(),
      lower: limit,
      upper: limit,
      /** Slope of difference on mean; null where it has none. */
      proportional: z.strictObject({ slope: z.number(), interval, p: end }).nullable(),
    }),
  ),
})
const grades = z.strictObject({
  categories: z.array(z.string()),
  pairs: z.array(
    z.strictObject({
      raters: pair,
      same: z.number(),
      kappas: z.array(
        z.strictObject({
          weights: z.enum(['plain', 'linear', 'quadratic']),
          value: end,
          why,
          standardError: end,
          interval,
          p: end,
        }),
      ),
    }),
  ),
  /** Fleiss's kappa of all raters; null for two. */
  together: z.strictObject({ value: end, why, p: end }).nullable(),
})
const shape = z.strictObject({
  file: z.string(),
  raters: z.array(z.string()),
  n: z.int(),
  /** Subjects without a value from every rater: left out. */
  dropped: z.array(z.string()),
  /** Null where the table holds words, or was not whole enough; `why` says which. */
  numbers: numbers.nullable(),
  /** Null unless categories were named. */
  grades: grades.nullable(),
  why,
  /** What is wrong with the file, by line; nothing is worked out then. */
  faults: z.array(z.strictObject({ line: z.int(), column: z.int(), code: z.string(), message: z.string() })),
})
export type Agreed = z.infer<typeof shape>

export default command({
  name: 'agree',
  summary: 'agree.summary',
  names: { usage: 'TABLE.csv', least: 1, most: 1 },
  options: { categories: { type: 'string', value: 'A,B,…' } },
  shape,
  run({ names: [file = ''], text }) {
    const categories = categoriesOf(text('categories'))
    const read = readRaterTable(file, contents(file), categories)
    if ('faults' in read) {
      const value = { file, raters: [], n: 0, dropped: [], numbers: null, grades: null, why: null }
      const faults = read.faults.map(told)
      const lines = faults.map(({ line, column, message }) => `${file}:${line}:${column}: ${message}`)
      return { value: { ...value, faults }, lines, exit: 1 }
    }
    const value = agreed(file, read.table, categories)
    return { value, lines: linesOf(value), exit: value.why === null ? 0 : 1 }
  },
})

const told = ({ line, column, code, detail }: TableFault) => ({
  line,
  column,
  code,
  message: say(code, detail),
})

function agreed(
  file: string,
  { raters, rows, dropped }: RaterTable,
  categories: readonly string[] | null,
): Agreed {
  const values = rows.map((row) => row.map(Number))
  const isNumeric = values.flat().every(Number.isFinite)
  const numeric = isNumeric ? numbersAgreement({ raters, rows: values }) : null
  const graded = categories === null ? null : gradesAgreement({ raters, rows }, categories)
  const undefinedWhy = [numeric, graded].flatMap((each) =>
    each !== null && isUndefined(each) ? [each.undefined] : [],
  )
  return {
    file,
    raters: [...raters],
    n: rows.length,
    dropped: [...dropped],
    numbers: numeric === null || isUndefined(numeric) ? null : numbersOf(numeric),
    grades: graded === null || isUndefined(graded) ? null : gradesOf(graded),
    why: undefinedWhy[0] ?? null,
    faults: [],
  }
}

const both = ([low, high]: readonly [number | null, number | null]): [number | null, number | null] => [
  low,
  high,
]

function numbersOf(found: Exclude<ReturnType<typeof numbersAgreement>, { undefined: unknown }>) {
  return {
    intraclass: INTRACLASS_FORMS.map((form) => {
      const { value, why: reason, interval: ends, p } = found.intraclass.forms[form]
      return { form, value, why: reason, interval: both(ends), p }
    }),
    errors: [...found.errors],
    limits: found.limits.map(({ raters: [first, second], found: { bias, biasInterval, sd, ...rest } }) => ({
      raters: [first, second] as [string, string],
      bias,
      biasInterval: both(biasInterval),
      sd,
      lower: limitOf(rest.lower),
      upper: limitOf(rest.upper),
      proportional:
        rest.proportional === null
          ? null
          : {
              slope: rest.proportional.slope,
              interval: both(rest.proportional.interval),
              p: rest.proportional.p,
            },
    })),
  }
}

const limitOf = ({
  value,
  interval: ends,
  approximate,
}: {
  readonly value: number
  readonly interval: readonly [number | null, number | null]
  readonly approximate: readonly [number | null, number | null]
}) => ({ value, interval: both(ends), approximate: both(approximate) })

function gradesOf(found: Exclude<ReturnType<typeof gradesAgreement>, { undefined: unknown }>) {
  const { categories, pairs, together } = found
  return {
    categories: [...categories],
    pairs: pairs.map(({ raters: [first, second], same, kappas }) => ({
      raters: [first, second] as [string, string],
      same,
      kappas: kappas.map(({ weights, found: kappa }) =>
        isUndefined(kappa)
          ? {
              weights,
              value: null,
              why: kappa.undefined,
              standardError: null,
              interval: both([null, null]),
              p: null,
            }
          : {
              weights,
              value: kappa.value,
              why: null,
              standardError: kappa.standardError,
              interval: both(kappa.interval),
              p: kappa.p,
            },
      ),
    })),
    together:
      together === null
        ? null
        : isUndefined(together)
          ? { value: null, why: together.undefined, p: null }
          : { value: together.value, why: null, p: together.p },
  }
}

function linesOf(value: Agreed): readonly string[] {
  const { file, raters, n, dropped, numbers: found, grades: graded } = value
  return [
    say('agree.head', { file, n, raters: raters.length }),
    ...(dropped.length
      ? [say('agree.dropped', { count: dropped.length, subjects: dropped.join(', ') })]
      : []),
    ...(value.why === null ? [] : [say('agree.none', { why: say(`undefined.${value.why}`) })]),
    ...(found === null ? [] : numbersLines(found)),
    ...(graded === null ? [] : gradesLines(graded)),
  ]
}

function categoriesOf(given: string | null): readonly string[] | null {
  if (given === null) return null
  const categories = given.split(',').map((each) => each.trim())
  if (categories.length < 2 || categories.some((each, at) => each === '' || categories.indexOf(each) !== at))
    throw new HostProblem('agree.bad_categories', { given })
  return categories
}

function contents(file: string): string {
  try {
    return readFileSync(userPath(file), 'utf8')
  } catch {
    throw new HostProblem('agree.no_file', { file })
  }
}
