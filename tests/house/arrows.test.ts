import { describe, expect, test } from 'vitest'
import { code, importsOf, packageOf } from './tree.ts'

const wing = (path: string): string => /^(protocols|main|renderer)\//.exec(path)?.[1] ?? ''
const inProject = (target: string): boolean => wing(target) !== ''

/** file -> the imports of it that break a rule */
function breaches(of: (file: string, target: string) => boolean): string[] {
  return code.flatMap((file) =>
    importsOf(file)
      .filter((target) => of(file, target))
      .map((target) => `${file} -> ${target}`),
  )
}

/** What the pure domain may not import. */
const touchesMachine = (target: string): boolean =>
  wing(target) === 'main' ||
  wing(target) === 'renderer' ||
  target.startsWith('node:') ||
  ['electron', 'better-sqlite3', 'react'].includes(packageOf(target))

/** What the screen may not import. */
const goesAround = (target: string): boolean =>
  (wing(target) === 'main' && !target.startsWith('main/contract/')) ||
  target.startsWith('node:') ||
  target === 'electron'

describe('arrows between folders point one way', () => {
  test('the reading of imports sees the tree at all', () => {
    expect(code.length).toBeGreaterThan(60)
    expect(code.flatMap(importsOf).filter(inProject).length).toBeGreaterThan(100)
  })

  test('protocols imports nothing of main or renderer, and nothing that touches a machine', () => {
    expect(breaches((file, target) => wing(file) === 'protocols' && touchesMachine(target))).toEqual([])
  })

  test('renderer reaches main through main/contract only', () => {
    expect(breaches((file, target) => wing(file) === 'renderer' && goesAround(target))).toEqual([])
  })

  test('main never imports renderer, and only the desktop host knows Electron', () => {
    expect(breaches((file, target) => wing(file) === 'main' && wing(target) === 'renderer')).toEqual([])
    expect(
      breaches((file, target) => packageOf(target) === 'electron' && !file.startsWith('main/hosts/desktop/')),
    ).toEqual([])
  })

  test('inside main, hosts know everything, and records, reports and contract know no host', () => {
    const low = /^main\/(records|reports|contract|exchange)\//
    expect(breaches((file, target) => low.test(file) && /^main\/(hosts|calls)\//.test(target))).toEqual([])
  })
})

/** One reader module (or folder) knows each library; the rest of the house speaks our own words. */
const READERS: Readonly<Record<string, RegExp>> = {
  yaml: /^protocols\/language\/reader\//,
  'csv-parse': /^protocols\/language\/norms\/csv\.ts$/,
  '@marcbachmann/cel-js': /^protocols\/language\/expressions\//,
  '@lhncbc/ucum-lhc': /^protocols\/language\/units\.ts$/,
  xstate: /^protocols\/(runner|steps|sections)\//,
  'better-sqlite3': /^main\/records\//,
  '@myriaddreamin/typst-ts-node-compiler': /^main\/reports\//,
  canonicalize: /^main\/records\//,
}

describe('one reader module knows each library', () => {
  for (const [library, place] of Object.entries(READERS)) {
    test(`${library} is imported in its own place and nowhere else`, () => {
      const users = code.filter((file) => importsOf(file).some((target) => packageOf(target) === library))
      expect(users.length).toBeGreaterThan(0)
      expect(users.filter((file) => !place.test(file))).toEqual([])
    })
  }
})
