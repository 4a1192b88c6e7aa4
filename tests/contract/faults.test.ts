import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { FAULT_CODES } from '../../main/contract/faults.ts'

test('every code of a failed call is one that something really gives, each once', () => {
  const source = readdirSync('main', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('faults.ts'))
    .map((name) => readFileSync(join('main', name), 'utf8'))
    .join('\n')
  expect(FAULT_CODES.filter((code) => !source.includes(`'${code}'`))).toEqual([])
  expect(new Set(FAULT_CODES).size).toBe(FAULT_CODES.length)
})
