/**
 * Units of measure by their UCUM codes. The one place that knows the UCUM library.
 *
 * Annotations (`{count}`, `{score}`) are 1 to UCUM. Here two units that both say what they count are kept apart
 * when they say different things; a unit that says nothing goes with either (`{count}/s` with `/s`).
 * Factors are exact: 1 kgf = 9.80665 N, 1 [lbf_av] = 4.4482216152605 N, 1 [lb_av] = 0.45359237 kg.
 */
import ucum from '@lhncbc/ucum-lhc'
import { dividedBy, isOne, type Rational, rational, scaled } from '../decimal.ts'

export interface Unit {
  readonly code: string
  /** Exponents of UCUM's seven base units, as text. */
  readonly dimension: string
  /** What it counts: annotations with their exponents, as text; empty when it says nothing. */
  readonly counts: string
  /** How many base units it is. */
  readonly size: Rational
  /** True for units with a zero of their own (degrees Celsius): they convert to nothing but themselves. */
  readonly special: boolean
}

export interface UnitProblem {
  readonly unit: string
  /** A code that may have been meant. */
  readonly suggestion: string | null
}

/** Slips for which the library has no suggestion, or a poor one. */
const SLIPS: Readonly<Record<string, string>> = {
  sec: 's',
  secs: 's',
  second: 's',
  seconds: 's',
  msec: 'ms',
  mins: 'min',
  minute: 'min',
  minutes: 'min',
  hr: 'h',
  hrs: 'h',
  hour: 'h',
  hours: 'h',
  lb: '[lb_av]',
  lbs: '[lb_av]',
  lbf: '[lbf_av]',
  lbsf: '[lbf_av]',
  kgF: 'kgf',
  'kg-f': 'kgf',
  kp: 'kgf',
  Nm: 'N.m',
  newton: 'N',
  newtons: 'N',
  in: '[in_i]',
  inch: '[in_i]',
  inches: '[in_i]',
  degree: 'deg',
  degrees: 'deg',
  '°': 'deg',
  percent: '%',
  count: '{count}',
  counts: '{count}',
  score: '{score}',
  points: '{score}',
}

const known = new Map<string, Unit | null>()
const library = ucum.UcumLhcUtils.getInstance()

/** The unit of a UCUM code, or null when it is none. */
export function unitOf(code: string): Unit | null {
  const before = known.get(code)
  if (before !== undefined) return before
  const unit = read(code)
  known.set(code, unit)
  return unit
}

function read(code: string): Unit | null {
  if (!/^\S{1,100}$/.test(code)) return null
  const { status, unit } = library.getSpecifiedUnit(code, 'validate')
  if (status !== 'valid' || unit === null || library.validateUnitString(code).ucumCode !== code) return null
  return {
    code,
    dimension: (unit.dim_?.dimVec_ ?? [0, 0, 0, 0, 0, 0, 0]).join(' '),
    counts: annotationsOf(code),
    // The library multiplies doubles; fifteen digits are what it can be trusted with, and all its constants have fewer.
    size: rational(Number(unit.magnitude_.toPrecision(15))),
    special: unit.isSpecial_ || unit.isArbitrary_,
  }
}

/** Annotations of a UCUM code with their exponents: `{count}/s` has `{count}` once, `s/{count}` minus once. */
function annotationsOf(code: string): string {
  const exponents = new Map<string, number>()
  const signs = [1]
  let divided = false
  for (const [token] of code.matchAll(/\{[^}]*\}|[./()]|[^{}./()]+/g)) {
    const sign = (signs.at(-1) ?? 1) * (divided ? -1 : 1)
    if (token === '(') signs.push(sign)
    else if (token === ')') signs.pop()
    else if (token.startsWith('{')) exponents.set(token, (exponents.get(token) ?? 0) + sign)
    if (token === '/') divided = true
    else if (token === '.' || token === '(') divided = false
  }
  return [...exponents]
    .filter(([, exponent]) => exponent !== 0)
    .map(([name, exponent]) => `${name}${exponent}`)
    .sort()
    .join(' ')
}

/** What is wrong with a code, or null when it is a UCUM unit. */
export function unitProblem(code: string): UnitProblem | null {
  if (unitOf(code) !== null) return null
  const slip = SLIPS[code] ?? SLIPS[code.toLowerCase()]
  if (slip !== undefined) return { unit: code, suggestion: slip }
  if (/\s/.test(code)) {
    const joined = code.trim().replaceAll(/\s+/g, '.')
    return { unit: code, suggestion: unitOf(joined) === null ? null : joined }
  }
  const suggested = library.validateUnitString(code, true).suggestions?.[0]?.units[0]?.[0]
  return { unit: code, suggestion: suggested ?? null }
}

/** The exact factor that turns a number of `from` into a number of `to`; null when they measure different things. */
export function factorBetween(from: string, to: string): Rational | null {
  if (from === to) return { num: 1n, den: 1n }
  const a = unitOf(from)
  const b = unitOf(to)
  if (a === null || b === null || a.special || b.special || a.dimension !== b.dimension) return null
  if (a.counts !== b.counts && a.counts !== '' && b.counts !== '') return null
  return dividedBy(a.size, b.size)
}

/** `value` in another unit, exact but for one last rounding; null when the units measure different things. */
export function convert(value: number, from: string, to: string): number | null {
  const factor = factorBetween(from, to)
  if (factor === null) return null
  return isOne(factor) ? value : scaled(value, factor)
}

const grouped = (code: string): string => (/[./]/.test(code) ? `(${code})` : code)

/** The code of a product; null is a bare number. */
export function productUnit(a: string | null, b: string | null): string | null {
  if (a === null || a === '1') return b ?? a
  if (b === null || b === '1') return a
  return `${a}.${grouped(b)}`
}

/** The code of a quotient; null is a bare number. Units that cancel leave `1`. */
export function quotientUnit(a: string | null, b: string | null): string | null {
  if (b === null || b === '1') return a ?? b
  if (a === b) return '1'
  return a === null || a === '1' ? `/${grouped(b)}` : `${a}/${grouped(b)}`
}
