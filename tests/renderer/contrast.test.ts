import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'

const tokens = readFileSync(join(import.meta.dirname, '../../renderer/styles/tokens.css'), 'utf8')

type Look = 'light' | 'dark'

/** The two looks of a colour, as written: `light-dark(#faf7f0, #13181d)`. */
function colour(name: string, look: Look): string {
  const [, light, dark] =
    new RegExp(`--${name}:\\s*light-dark\\((#[0-9a-f]{6}),\\s*(#[0-9a-f]{6})\\)`).exec(tokens) ?? []
  const found = look === 'light' ? light : dark
  if (!found) throw new Error(`tokens.css has no colour --${name}`)
  return found
}

/** Relative luminance as WCAG 2.2 defines it. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4))
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

function contrast(one: string, other: string): number {
  const [high = 0, low = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a)
  return (high + 0.05) / (low + 0.05)
}

const GROUNDS = ['paper', 'raised', 'sunken'] as const
const TEXTS = ['ink', 'soft-ink', 'accent', 'fault', 'caution'] as const

/** Foreground, background, least ratio (WCAG 1.4.3 for text, 1.4.11 for edges of controls). */
const PAIRS: readonly (readonly [string, string, number])[] = [
  ...TEXTS.flatMap((text) => GROUNDS.map((ground) => [text, ground, 4.5] as const)),
  ...GROUNDS.map((ground) => ['edge', ground, 3] as const),
  ...GROUNDS.map((ground) => ['focus', ground, 3] as const),
  ['on-accent', 'accent', 4.5],
  ['on-accent', 'accent-strong', 4.5],
  ['ink', 'accent-wash', 4.5],
  ['accent', 'accent-wash', 4.5],
  ['soft-ink', 'accent-wash', 4.5],
  ['ink', 'caution-wash', 4.5],
  ['caution', 'caution-wash', 4.5],
  ['ink', 'fault-wash', 4.5],
  ['fault', 'fault-wash', 4.5],
]

describe.each(['light', 'dark'] as const)('Colours hold their contrast in the %s look', (look) => {
  it.each(PAIRS)('%s on %s is at least %d to 1', (front, ground, least) => {
    expect(contrast(colour(front, look), colour(ground, look))).toBeGreaterThanOrEqual(least)
  })
})
