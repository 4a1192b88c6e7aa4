import { describe, expect, test } from 'vitest'
import { files, textOf } from './tree.ts'

const tests = files.filter((file) => /^tests\/.*\.test\.tsx?$/.test(file))
const written = files.filter((file) => /\.(ts|tsx|mjs|css)$/.test(file))
const own = 'tests/house/habits.test.ts'

describe('habits that hold because this test holds them', () => {
  test('no test is parked', () => {
    const parked =
      /\b(?:test|it|describe|suite)\.(?:skip|only|todo|fails|skipIf|runIf)\b|\bx(?:it|test|describe)\(/
    expect(tests.filter((file) => file !== own && parked.test(textOf(file)))).toEqual([])
  })

  test('no check is written so that it can’t fail', () => {
    const hollow = /expect\((?:true|1)\)\.toBe\((?:true|1)\)|expect\.anything\(\)\)\.toBe/
    expect(tests.filter((file) => file !== own && hollow.test(textOf(file)))).toEqual([])
  })

  test('no file is longer than 400 lines', () => {
    const long = written.filter((file) => textOf(file).split('\n').length > 401)
    expect(long).toEqual([])
  })

  test('no rule is switched off in place and nothing is left for later', () => {
    const off =
      /@ts-ignore|@ts-expect-error|oxlint-disable|eslint-disable|biome-ignore|\bas any\b|\bTODO\b|\bFIXME\b/
    const product = written.filter((file) => /^(protocols|main|renderer|build)\//.test(file))
    expect(product.filter((file) => off.test(textOf(file)))).toEqual([])
  })

  test('no file names a place on somebody’s machine or a registry', () => {
    const place = /(?:^|[\s'"`(])\/(?:work|root|farm)\/[a-z]|registry\.npmjs|\bnpmjs\.(?:org|com)\b/
    const text = files.filter((file) => !/\.(png|pdf|ico|db|woff2?)$/.test(file) && file !== own)
    expect(text.filter((file) => place.test(textOf(file)))).toEqual([])
  })
})
