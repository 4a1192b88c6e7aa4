import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { checked, short } from './worked.ts'

const folder = new URL('../../protocols/language/expressions/', import.meta.url)
const page = readFileSync(new URL('README.md', folder), 'utf8')
const examples = [...page.matchAll(/^\| `(.+?)` +\| (\S+)(?: (\S+))? +\|$/gm)].map(
  ([, write, value, unit]) => ({
    write: write ?? '',
    value: value ?? '',
    unit: unit ?? null,
  }),
)

describe('the page for authors tells the truth', () => {
  test.each(examples)('$write gives $value $unit', ({ write, value, unit }) => {
    expect(String(short(write))).toBe(value)
    const { type } = checked(write)
    expect(type.is === 'number' ? type.unit : null).toBe(unit)
  })

  test('every function has an example', () => {
    const functions = readdirSync(new URL('functions/', folder)).map((name) => name.replace('.ts', ''))
    expect(examples.length).toBeGreaterThan(functions.length)
    const told = examples.map(({ write }) => write).join('\n')
    expect(functions.filter((name) => !new RegExp(`\\b${name}\\(`).test(told))).toEqual([])
  })
})
