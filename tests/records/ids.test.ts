import { randomBytes } from 'node:crypto'
import * as fc from 'fast-check'
import { validate, version } from 'uuid'
import { expect, test } from 'vitest'
import { idMaker } from '../../main/records/ids.ts'

test('STD-FMT-1 ten thousand ids at a frozen clock are UUIDv7, differ, and sort as they were made', () => {
  const make = idMaker(() => Date.UTC(2026, 0, 1), randomBytes)
  const ids = Array.from({ length: 10_000 }, make)
  expect(ids.every((id) => validate(id) && version(id) === 7)).toBe(true)
  expect(new Set(ids).size).toBe(ids.length)
  expect(ids.toSorted()).toEqual(ids)
})

test('ids begin with the milliseconds of the clock', () => {
  const at = Date.UTC(2026, 2, 2, 9, 30)
  expect(
    idMaker(() => at, randomBytes)()
      .replaceAll('-', '')
      .slice(0, 12),
  ).toBe(at.toString(16).padStart(12, '0'))
})

const full = () => new Uint8Array(16).fill(0xff)

test('ids go on sorting when the clock is set back and when a millisecond is used up', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 2, maxLength: 200 }), (moves) => {
      let at = Date.UTC(2026, 0, 1)
      const make = idMaker(() => at, full)
      const ids = moves.map((move) => {
        at += move
        return make()
      })
      expect(ids.toSorted()).toEqual(ids)
      expect(new Set(ids).size).toBe(ids.length)
    }),
  )
})
