import { describe, expect, test } from 'vitest'
import { unsafeParts } from '../../protocols/language/figures/safe-svg.ts'
import { shownFigure } from '../../protocols/language/figures/shown-figure.ts'

const svg = (root: string, inside: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${root}><title>Grip &amp; pinch</title><desc>The thumb\n  is up.</desc>${inside}</svg>`
const RIGHT = 'viewBox="0 0 480 280" data-hand="right"'

describe('a figure as it is shown', () => {
  test('tells its title and description as words', () => {
    expect(shownFigure(svg(RIGHT, '<path d="M1 1"/>'), null).words).toBe('Grip & pinch. The thumb is up.')
    expect(shownFigure('<svg viewBox="0 0 1 1"/>', null).words).toBe('')
  })

  test('stays as drawn for its own hand, for no hand, and where both hands look the same', () => {
    const right = svg(RIGHT, '<path d="M1 1"/>')
    expect(shownFigure(right, 'right')).toMatchObject({ drawing: right, hand: 'right' })
    expect(shownFigure(right, null)).toMatchObject({ drawing: right, hand: 'right' })
    const both = svg('viewBox="0 0 480 280"', '<path d="M1 1"/>')
    expect(shownFigure(both, 'left')).toMatchObject({ drawing: both, hand: null })
  })

  test('is mirrored about the middle of its view box for the other hand, and stays a plain drawing', () => {
    const { drawing, hand } = shownFigure(
      svg('viewBox="-20 0 100 50" data-hand="left"', '<path d="M1 1"/>'),
      'right',
    )
    expect(hand).toBe('right')
    expect(drawing).toContain('matrix(-1 0 0 1 60 0)')
    expect(unsafeParts(drawing)).toEqual([])
  })

  test('keeps its letters readable: each is turned about its own anchor, and begins where it ended', () => {
    const { drawing } = shownFigure(
      svg(
        RIGHT,
        '<text x="40" y="9" transform="rotate(30 40 9)">10 cm</text><text x="7" text-anchor="middle">2</text>',
      ),
      'left',
    )
    expect(drawing).toContain(
      '<text text-anchor="end" transform="rotate(30 40 9) matrix(-1 0 0 1 80 0)" x="40" y="9">',
    )
    expect(drawing).toContain('<text text-anchor="middle" transform="matrix(-1 0 0 1 14 0)" x="7">')
  })

  test('drawings side by side stay in their order, each mirrored in its own place', () => {
    const inside =
      '<svg x="0" width="240"><path d="M1 1"/></svg><svg x="240" width="240"><text x="5">a</text></svg><text x="9">1</text>'
    const { drawing } = shownFigure(svg(RIGHT, inside), 'left')
    expect(drawing.match(/matrix\(-1 0 0 1 240 0\)/g)).toHaveLength(2)
    expect(drawing).toContain('<svg x="0" width="240"><g ')
    expect(drawing).toContain('</svg><text x="9">1</text></svg>')
    expect(unsafeParts(drawing)).toEqual([])
  })

  test('without a view box it is shown as drawn, and says of which hand that is', () => {
    const bare = svg('data-hand="right"', '<path d="M1 1"/>')
    expect(shownFigure(bare, 'left')).toMatchObject({ drawing: bare, hand: 'right' })
  })
})
