import { describe, expect, test } from 'vitest'
import { contactSheet, drawn } from '../../build/figures/index.ts'
import { unsafeParts } from '../../protocols/language/figures/safe-svg.ts'
import { writtenHand } from '../../protocols/language/figures/shown-figure.ts'
import type { Node } from '../../protocols/language/model.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { fileOf, folderOf, TESTS } from './folders.ts'
import { give } from './giving.ts'

const figures = TESTS.flatMap((name) =>
  [...folderOf(name).files].flatMap(([path, svg]) =>
    path.startsWith('figures/') ? [{ name, figure: path.slice('figures/'.length, -'.svg'.length), svg }] : [],
  ),
)
const titled = (svg: string, element: string): string =>
  new RegExp(`<${element}>([^<]*)</${element}>`).exec(svg)?.[1] ?? ''

/** The kinds of steps that show a figure. */
const figuresBy = (nodes: readonly Node[]): Set<string> =>
  new Set(
    nodes.flatMap((node) => {
      if (node.node === 'section') return [...figuresBy(node.steps)]
      return node.node === 'step' && node.figure !== null ? [node.kind] : []
    }),
  )

test('the folders hold what is drawn by build/figures, and nothing else', () => {
  const made = drawn().flatMap(([name, each]) => each.map(([figure, svg]) => ({ name, figure, svg })))
  const byPlace = (all: typeof figures) =>
    Object.fromEntries(all.map(({ name, figure, svg }) => [`${name}/${figure}`, svg]))
  expect(byPlace(figures)).toEqual(byPlace(made))
})

describe.each(figures)('$name $figure', ({ name, figure, svg }) => {
  test('is a plain drawing with ink, paper and two greys', () => {
    expect(unsafeParts(svg)).toEqual([])
    expect(svg.match(/<svg [^>]*viewBox="0 0 480 280"/g)).toHaveLength(1)
    const colours = [...svg.matchAll(/ (?:fill|stroke)="([^"]*)"/g)].map(([, colour]) => colour)
    expect(
      [...new Set(colours)].filter((colour) => !/^(?:none|#fff|#ececec|#c8c8c8|#1a1a1a)$/.test(colour ?? '')),
    ).toEqual([])
    expect(svg).not.toMatch(/NaN|undefined|Infinity/)
  })

  test('says in words what it shows, and shows no words', () => {
    expect(titled(svg, 'title').length).toBeGreaterThan(14)
    expect(titled(svg, 'desc').length).toBeGreaterThan(90)
    const shown = [...svg.matchAll(/<text [^>]*>([^<]*)</g)].map(([, text]) => text ?? '')
    expect(shown.filter((text) => !/^[\d\s.–→°+−]*(?:cm|mm|kg|s)?$/.test(text))).toEqual([])
  })

  test('of one hand, it is drawn for the right one and its words hold for both', () => {
    expect([null, 'right']).toContain(writtenHand(svg))
    const words = `${titled(svg, 'title')} ${titled(svg, 'desc')}`.replaceAll('right angle', '')
    expect(words).not.toMatch(/\b(?:left|right)\b/i)
  })

  test('is shown by a step', () => {
    expect(fileOf(name, 'protocol.yaml')).toMatch(new RegExp(`figure: ${figure}\\n`))
  })
})

test('each test shows position and kit', () => {
  for (const name of TESTS) {
    const shown = figuresBy(readProtocol(folderOf(name)).protocol?.steps ?? [])
    expect([name, shown.has('kit'), shown.has('position')]).toEqual([name, true, true])
  }
})

test('a hand is shown in its own turn, the left one mirrored and in the same words', () => {
  const giving = give('box_and_block')
  const shown = () => {
    const { figure, place } = giving.practised().on().step() ?? {}
    return {
      turn: place?.hand,
      hand: figure?.hand,
      mirrored: figure?.drawing.includes('matrix(-1 0 0 1 160 0)'),
    }
  }
  expect(shown()).toEqual({ turn: 'right', hand: 'right', mirrored: false })
  giving.window(63, 64)
  expect(shown()).toEqual({ turn: 'left', hand: 'left', mirrored: true })
})

test('the contact sheet holds every figure, and those of one hand twice', () => {
  const twice = figures.filter(({ svg }) => writtenHand(svg) !== null).length
  expect(contactSheet().match(/<img /g)).toHaveLength(figures.length + twice)
})
