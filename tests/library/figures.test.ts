import { describe, expect, test } from 'vitest'
import { fileOf, folderOf, TESTS } from './folders.ts'

const ELEMENTS = new Set(['svg', 'title', 'desc', 'g', 'path', 'rect', 'circle', 'line'])
const ATTRIBUTES = new Set(
  (
    'xmlns viewBox role fill stroke stroke-width stroke-linecap stroke-linejoin stroke-dasharray transform d x y ' +
    'width height rx cx cy r x1 y1 x2 y2'
  ).split(' '),
)

const figures = TESTS.flatMap((name) =>
  [...folderOf(name).files].flatMap(([path, svg]) =>
    path.startsWith('figures/') ? [{ name, path, svg }] : [],
  ),
)

describe.each(figures)('$name $path', ({ name, path, svg }) => {
  test('draws with plain strokes: nothing that runs, links, styles or loads', () => {
    const tags = [...svg.matchAll(/<\/?([A-Za-z][\w:-]*)/g)].map(([, tag]) => tag ?? '')
    expect(tags.filter((tag) => !ELEMENTS.has(tag))).toEqual([])
    const attributes = [...svg.matchAll(/\s([A-Za-z][\w:-]*)="/g)].map(([, attribute]) => attribute ?? '')
    expect(attributes.filter((attribute) => !ATTRIBUTES.has(attribute))).toEqual([])
    expect(svg).not.toMatch(/url\(|<!|&/)
  })

  test('says in words what it shows, and shows no words', () => {
    expect(svg).toMatch(/<title>[^<]{15,}<\/title>\s*<desc>[^<]{60,}<\/desc>/)
    expect(svg).not.toContain('<text')
  })

  test('is drawn in one line style that takes the colour of the page', () => {
    expect(svg.match(/viewBox="0 0 480 280"/g)).toHaveLength(1)
    expect([...svg.matchAll(/ stroke="([^"]*)"/g)].map(([, stroke]) => stroke)).toEqual(['currentColor'])
    expect([...svg.matchAll(/ fill="([^"]*)"/g)].map(([, fill]) => fill)).toEqual(['none'])
  })

  test('is shown by a step', () => {
    const figure = path.slice('figures/'.length, -'.svg'.length)
    expect(fileOf(name, 'protocol.yaml')).toMatch(new RegExp(`figure: ${figure}\\n`))
  })
})

test('each test shows position and kit', () => {
  for (const name of TESTS) expect(figures.filter((figure) => figure.name === name).length).toBeGreaterThan(1)
})
