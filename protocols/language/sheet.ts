/** Sections that are given on one page. */
import type { Node, Section, Step } from './model.ts'

/** True for a section whose steps are given on one page, in any order unless the file names one. */
export const isSheet = (section: Section): boolean => section.fields.sheet === true

/** All steps on a page, in the order of the file. */
export const stepsOnSheet = (section: Section): readonly Step[] => section.steps.flatMap(stepsUnder)

function stepsUnder(node: Node): readonly Step[] {
  if (node.node === 'step') return [node]
  return node.node === 'section' ? node.steps.flatMap(stepsUnder) : []
}

/** The sections on a page: the page itself, and those within it. */
export const sectionsOnSheet = (section: Section): readonly Section[] => [
  section,
  ...section.steps.flatMap((node) => (node.node === 'section' ? sectionsOnSheet(node) : [])),
]
