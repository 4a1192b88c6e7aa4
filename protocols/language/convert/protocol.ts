import type { Lists, Protocol } from '../model.ts'
import { childOf } from '../reader/tree.ts'
import type { Draft } from './draft.ts'
import { writtenOf } from './values.ts'

/** Every protocol has the list `hands`; a for-each over it takes the client's hands in the order found for them. */
const HANDS: Lists = {
  hands: [
    { id: 'right', properties: {} },
    { id: 'left', properties: {} },
  ],
}

const FIGURE = /^figures\/([a-z][a-z0-9_]*)\.svg$/

/** The checked protocol; null where the draft lacks a piece that only an error can have taken away. */
export function protocolFrom(draft: Draft): Protocol | null {
  const text = (key: string): string => writtenOf(childOf(draft.tree, key)) ?? ''
  if (!draft.about) return null
  return {
    evenhand: 1,
    id: text('id'),
    version: text('version'),
    language: text('language'),
    title: { key: 'title' },
    about: draft.about,
    precautions: draft.precautions,
    sources: draft.sources,
    kit: draft.kit,
    conditions: draft.conditions,
    lists: { ...HANDS, ...draft.lists },
    draws: draft.draws,
    raters: draft.raters,
    happenings: draft.happenings,
    accommodations: draft.accommodations,
    steps: draft.steps,
    scores: draft.scores,
    norms: draft.norms,
    change: draft.change,
    cautions: draft.cautions,
    words: draft.wordings,
    figures: figuresOf(draft),
  }
}

export function figuresOf(draft: Draft): Readonly<Record<string, string>> {
  const figures: Record<string, string> = {}
  for (const [file, text] of draft.folder.files) {
    const name = FIGURE.exec(file)?.[1]
    if (name !== undefined) figures[name] = text
  }
  return figures
}
