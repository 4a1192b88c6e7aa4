/**
 * Units by UCUM (The Unified Code for Units of Measure, version 2.1): the only module that knows the UCUM
 * library. Annotations in braces (`{count}`, `{score}`) have dimension one to UCUM; here they are kept apart,
 * because a count is not a score.
 */
import { UcumLhcUtils, type UcumUtils } from '@lhncbc/ucum-lhc'

let utils: UcumUtils | null = null
const ucum = (): UcumUtils => (utils ??= UcumLhcUtils.getInstance())

/** What people write for a unit, and the codes that they most likely mean. */
const USUAL: Readonly<Record<string, readonly string[]>> = {
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
}

export interface UnitVerdict {
  readonly valid: boolean
  /** UCUM codes that may be meant, best first; empty when valid or nothing comes close. */
  readonly suggestions: readonly string[]
}

const verdicts = new Map<string, UnitVerdict>()

/** Whether `unit` is a UCUM code (case sensitive), and if not, what may be meant. Never throws. */
export function judgeUnit(unit: string): UnitVerdict {
  const known = verdicts.get(unit)
  if (known) return known
  const verdict = isUcum(unit)
    ? { valid: true, suggestions: [] }
    : { valid: false, suggestions: suggest(unit) }
  if (verdicts.size < 1000) verdicts.set(unit, verdict)
  return verdict
}

/** Factor by which a value in `from` is multiplied to be in `to`; null where the two don't convert. */
export function unitFactor(from: string, to: string): number | null {
  if (from === to) return judgeUnit(from).valid ? 1 : null
  if (!judgeUnit(from).valid || !judgeUnit(to).valid) return null
  if (annotations(from) !== annotations(to)) return null
  const one = ucum().convertUnitTo(from, 1, to)
  const two = ucum().convertUnitTo(from, 2, to)
  if (one.status !== 'succeeded' || two.status !== 'succeeded' || one.toVal === null || two.toVal === null) {
    return null
  }
  // A unit with an offset (degrees Celsius) has no factor.
  return Math.abs(two.toVal - 2 * one.toVal) <= 1e-9 * Math.abs(two.toVal) ? exact(one.toVal) : null
}

/** The library multiplies doubles, so 0.45359236999999997 comes out for 0.45359237: the defined decimal wins. */
function exact(factor: number): number {
  return Number(factor.toPrecision(15))
}

function annotations(unit: string): string {
  return [...unit.matchAll(/\{[^}]*\}/g)].map(([found]) => found).join('')
}

function isUcum(unit: string): boolean {
  if (unit === '' || unit.length > 60 || /\s/.test(unit)) return false
  try {
    const verdict = ucum().validateUnitString(unit)
    return verdict.status === 'valid' && verdict.ucumCode === unit
  } catch {
    return false
  }
}

function suggest(unit: string): readonly string[] {
  const usual = USUAL[unit] ?? USUAL[unit.toLowerCase()]
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
