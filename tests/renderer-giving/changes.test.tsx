import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { Changes } from '../../renderer/screens/result/changes.tsx'
import { tellChange } from '../../renderer/screens/result/tell-change.ts'
import { tellReason } from '../../renderer/screens/result/tell.ts'
import { reportOf } from '../reports/reports.ts'

const words = (markup: string): string =>
  markup
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&#x27;', "'")
    .replace(/\s+/g, ' ')

describe.each([
  ['nine_hole_peg', 'time'],
  ['box_and_block', 'blocks'],
  ['grip_strength', 'mean_of_3'],
])('What changed since the last time, in %s', (id, name) => {
  const { result } = reportOf(id)
  const scores = result.scores.filter(({ score }) => score === name)
  const markup = renderToStaticMarkup(<Changes scores={scores} result={result} />)
  const told = words(markup)
  const changes = scores.flatMap((score) => score.change.map((change) => ({ score, change })))

  it('is told by a sentence for each hand before any figure', () => {
    expect(changes).toHaveLength(2)
    const table = told.indexOf('Published figure')
    for (const { score, change } of changes) {
      const at = told.indexOf(tellChange(change, score))
      expect(at).toBeGreaterThanOrEqual(0)
      expect(at).toBeLessThan(table)
    }
  })

  it('shows every figure that applies, and by which of the sources', () => {
    for (const figure of changes.flatMap(({ change }) => change.figures)) {
      expect(told).toContain(figure.population)
      expect(told).toContain(`[${result.sources.findIndex(({ cite }) => cite === figure.source) + 1}]`)
      expect(told).not.toContain(figure.source)
    }
  })

  it('says what all of them share once', () => {
    const all = changes.flatMap(({ change }) => change.cautions)
    for (const caution of all) expect(told.split(tellReason('caution', caution))).toHaveLength(2)
    const lines = [...markup.matchAll(/result-caution">([^<]*)</g)].map(([, line]) => line)
    expect(new Set(lines).size).toBe(lines.length)
  })
})
