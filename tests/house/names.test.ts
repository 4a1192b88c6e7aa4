import { describe, expect, test } from 'vitest'
import { files, textOf } from './tree.ts'

interface Named {
  readonly kind?: string
  readonly code?: string
}
const kinds = import.meta.glob<{ default: Named }>('../../protocols/steps/*/index.ts', { eager: true })
const sections = import.meta.glob<{ default: Named }>('../../protocols/sections/*/index.ts', { eager: true })
const checks = import.meta.glob<{ default: Named }>('../../protocols/language/checks/*.ts', { eager: true })

const folderOf = (path: string): string => path.split('/').at(-2) ?? ''
const stemOf = (path: string): string => (path.split('/').at(-1) ?? '').replace(/\.ts$/, '')

describe('a name equals its file name', () => {
  test('a kind of step is named as its folder', () => {
    const wrong = Object.entries(kinds).filter(([path, { default: made }]) => made.kind !== folderOf(path))
    expect(Object.keys(kinds).length).toBeGreaterThanOrEqual(8)
    expect(wrong.map(([path]) => path)).toEqual([])
  })

  test('a kind of section is named as its folder', () => {
    const wrong = Object.entries(sections).filter(([path, { default: made }]) => made.kind !== folderOf(path))
    expect(Object.keys(sections).length).toBeGreaterThanOrEqual(2)
    expect(wrong.map(([path]) => path)).toEqual([])
  })

  test('a check’s code is its file name', () => {
    const wrong = Object.entries(checks).filter(([path, { default: made }]) => made.code !== stemOf(path))
    expect(Object.keys(checks).length).toBeGreaterThanOrEqual(20)
    expect(wrong.map(([path]) => path)).toEqual([])
  })

  test('a library protocol’s id is its folder', () => {
    const protocols = files.filter((file) => /^protocols\/library\/[^/]+\/protocol\.yaml$/.test(file))
    expect(protocols.length).toBeGreaterThanOrEqual(3)
    for (const file of protocols) expect(textOf(file)).toMatch(new RegExp(`^id: ${folderOf(file)}$`, 'm'))
  })

  test('migrations are numbered without a gap', () => {
    const numbers = files
      .flatMap((file) => /^main\/records\/migrations\/(\d{4})-[a-z-]+\.ts$/.exec(file)?.[1] ?? [])
      .map(Number)
      .sort((a, b) => a - b)
    expect(numbers.length).toBeGreaterThan(0)
    expect(numbers).toEqual(numbers.map((_, index) => index + 1))
  })
})

describe('adding one is adding files', () => {
  test('every kind of step has its face on the screen, and no face lacks a kind', () => {
    const faces = files.flatMap((file) => /^renderer\/steps\/([^/]+)\/index\.tsx$/.exec(file)?.[1] ?? [])
    expect(faces.toSorted()).toEqual(Object.keys(kinds).map(folderOf).toSorted())
  })

  test('nobody outside a kind’s own folders asks which kind a step or section is', () => {
    const own = [...Object.keys(kinds), ...Object.keys(sections)].map(folderOf)
    const names = own.join('|')
    const asks = new RegExp(`kind\\)?\\s*[!=]==\\s*'(?:${names})(?:\\.[a-z_]+)?'`)
    const product = files.filter((file) => /^(protocols|main|renderer)\/.*\.tsx?$/.test(file))
    const outside = product.filter((file) => !/^(protocols|renderer)\/(steps|sections)\/[^/]+\//.test(file))
    expect(outside.filter((file) => asks.test(textOf(file)))).toEqual([])
  })
})
