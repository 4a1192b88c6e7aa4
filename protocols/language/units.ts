/**
 * Units of measure by their UCUM codes. The one place that knows the UCUM library.
 *
 * Annotations (`{count}`, `{score}`) are 1 to UCUM. Here a count, a score and a ratio are kept apart; with another
 * dimension beside it, a unit that doesn't say what it counts goes with one that does (`{count}/s` with `/s`).
 * Factors are exact: 1 kgf = 9.80665 N, 1 [lbf_av] = 4.4482216152605 N, 1 [lb_av] = 0.45359237 kg.
 */
import { UcumLhcUtils, type UcumUnit, type UcumUtils } from '@lhncbc/ucum-lhc'
import { dividedBy, isOne, type Rational, rational, scaled, toNumber } from '../decimal.ts'

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

/** What people write for a unit, and the codes that they most likely mean. */
const USUAL: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries({
    lb: ['[lbf_av]', '[lb_av]'],
    lbs: ['[lbf_av]', '[lb_av]'],
    lbf: ['[lbf_av]'],
    pound: ['[lbf_av]', '[lb_av]'],
    pounds: ['[lbf_av]', '[lb_av]'],
    oz: ['[oz_av]', '[ozf_av]'],
    kp: ['kgf'],
    kilo: ['kgf', 'kg'],
    kilos: ['kgf', 'kg'],
    newton: ['N'],
    newtons: ['N'],
    nm: ['N.m'],
    sec: ['s'],
    secs: ['s'],
    second: ['s'],
    seconds: ['s'],
    msec: ['ms'],
    mins: ['min'],
    minute: ['min'],
    minutes: ['min'],
    hr: ['h'],
    hrs: ['h'],
    hour: ['h'],
    hours: ['h'],
    day: ['d'],
    days: ['d'],
    inch: ['[in_i]'],
    inches: ['[in_i]'],
    in: ['[in_i]'],
    foot: ['[ft_i]'],
    feet: ['[ft_i]'],
    ft: ['[ft_i]'],
    '°': ['deg'],
    degree: ['deg'],
    degrees: ['deg'],
    percent: ['%'],
    mmhg: ['mm[Hg]'],
    count: ['{count}'],
    counts: ['{count}'],
    score: ['{score}'],
    points: ['{score}'],
    blocks: ['{count}'],
    taps: ['{count}'],
  }),
)

export interface UnitVerdict {
  readonly valid: boolean
  /** UCUM codes that may be meant, best first; empty when valid or nothing comes close. */
  readonly suggestions: readonly string[]
}

let utils: UcumUtils | null = null
const ucum = (): UcumUtils => (utils ??= UcumLhcUtils.getInstance())

/** Dimension of counts, scores and ratios. */
const BARE = '0 0 0 0 0 0 0'

const known = new Map<string, Unit | null>()

/** The unit of a UCUM code, or null when it is none. */
export function unitOf(code: string): Unit | null {
  const before = known.get(code)
  if (before !== undefined) return before
  const unit = read(code)
  known.set(code, unit)
  return unit
}

function read(code: string): Unit | null {
  if (!isUcum(code)) return null
  const { unit } = ucum().getSpecifiedUnit(code, 'validate')
  if (unit === null) return null
  const { magnitude_: magnitude, dim_: dimension, isSpecial_: special, isArbitrary_: arbitrary } = unit
  // A name that every object has, such as `__proto__`, is found by the library's own look-up: it has no magnitude.
  if (typeof magnitude !== 'number') return null
  const exponents = dimension === null ? null : vectorOf(dimension)
  return {
    code,
    dimension: exponents === null ? BARE : exponents.join(' '),
    counts: annotationsOf(code),
    // The library multiplies doubles; fifteen digits are what it can be trusted with, and all its constants have fewer.
    size: rational(Number(magnitude.toPrecision(15))),
    special: special || arbitrary,
  }
}

const vectorOf = ({ dimVec_: vector }: NonNullable<UcumUnit['dim_']>) => vector

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

/** Whether `unit` is a UCUM code (case sensitive), and if not, what may be meant. Never throws. */
export function judgeUnit(unit: string): UnitVerdict {
  return unitOf(unit) === null
    ? { valid: false, suggestions: suggest(unit) }
    : { valid: true, suggestions: [] }
}

function isUcum(code: string): boolean {
  if (code === '' || code.length > 100 || /\s/.test(code)) return false
  try {
    const verdict = ucum().validateUnitString(code)
    return verdict.status === 'valid' && verdict.ucumCode === code
  } catch {
    return false
  }
}

function suggest(unit: string): readonly string[] {
  const usual = USUAL.get(unit) ?? USUAL.get(unit.toLowerCase())
  if (usual) return usual
  const lower = unit.toLowerCase()
  if (lower !== unit && isUcum(lower)) return [lower]
  const product = unit.replace(/[·*×]/g, '.').replace(/\s+/g, '')
  if (product !== unit && isUcum(product)) return [product]
  // The library prints to the console when handed a blank.
  if (unit === '' || /\s/.test(unit)) return []
  try {
    const verdict = ucum().validateUnitString(unit, true)
    if (verdict.ucumCode && verdict.ucumCode !== unit) return [verdict.ucumCode]
    return (verdict.suggestions ?? []).flatMap(({ units }) => units.map(([code]) => code)).slice(0, 3)
  } catch {
    return []
  }
}

/** True for counts, scores, ratios and per cents: they measure nothing that has a unit of its own. */
export const isDimensionless = (code: string): boolean => unitOf(code)?.dimension === BARE

/** Factor by which a value in `from` is multiplied to be in `to`; null where the two don't convert. */
export function unitFactor(from: string, to: string): number | null {
  const factor = factorBetween(from, to)
  return factor === null ? null : toNumber(factor)
}

/** The exact factor that turns a number of `from` into a number of `to`; null when they measure different things. */
export function factorBetween(from: string, to: string): Rational | null {
  const a = unitOf(from)
  const b = unitOf(to)
  if (a === null || b === null) return null
  if (from === to) return { num: 1n, den: 1n }
  if (a.special || b.special || a.dimension !== b.dimension) return null
  if (a.counts !== b.counts && (a.dimension === BARE || (a.counts !== '' && b.counts !== ''))) return null
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
