/**
 * The reference manual: its pages by their path under `docs/manual`. Made of the shapes that the reader uses, the
 * comments of the checks and formulas, and a page of words beside each kind of step and section.
 */
import guide from '../expressions/README.md?raw'
import { COMMON, NODE_SCHEMAS, SECTION_KINDS, STEP_KINDS } from '../schema/kinds.ts'
import { top } from '../schema/top.ts'
import { checksPage } from './checks-page.ts'
import { functionsTable } from './functions.ts'
import { type KeyPath, keyPathsOf } from './key-paths.ts'
import { type Page, printPage, readPage } from './page.ts'
import everyStep from './every-step.md?raw'
import file from './file.md?raw'
import rule from './rule.md?raw'
import words from './words.md?raw'

const kinds = import.meta.glob<string>('../../steps/*/page.md', {
  eager: true,
  query: '?raw',
  import: 'default',
})
const sections = import.meta.glob<string>('../../sections/*/page.md', {
  eager: true,
  query: '?raw',
  import: 'default',
})

/** A part of the manual with the keys it has to explain. */
export interface Part {
  /** Its path under `docs/manual`. */
  readonly path: string
  readonly title: string
  readonly page: Page
  readonly keys: readonly KeyPath[]
}

/** Parts with keys, each with one example: kinds, sections, rule, what every step may have, the top level. */
export function manualParts(): readonly Part[] {
  const ofKind = [...STEP_KINDS.values()].map(({ kind, keys }) =>
    part(`steps/${kind}.md`, kind, kinds[`../../steps/${kind}/page.md`], keyPathsOf(keys)),
  )
  const ofSection = [...SECTION_KINDS.keys()].map((kind) => {
    const paths = keyPathsOf(NODE_SCHEMAS.get(kind) ?? top).filter(({ path }) => path !== kind)
    return part(`sections/${kind}.md`, kind, sections[`../../sections/${kind}/page.md`], paths)
  })
  const ofRule = keyPathsOf(NODE_SCHEMAS.get('rule') ?? top).filter(({ path }) => path !== 'rule')
  return [
    ...ofKind,
    ...ofSection,
    part('rule.md', 'rule', rule, ofRule),
    part('every-step.md', '', everyStep, keyPathsOf(COMMON)),
    ...topParts(),
  ]
}

function part(path: string, name: string, source: string | undefined, keys: readonly KeyPath[]): Part {
  const title = name === '' ? '# Keys of every step' : `# \`${name}\``
  return { path, title, page: readPage(source ?? ''), keys }
}

/** The top level is one page with a chapter for each key. */
function topParts(): readonly Part[] {
  const all = keyPathsOf(top)
  const chapters = new Map(
    file
      .split(/^## /m)
      .slice(1)
      .map((chapter) => [/^`([^`]+)`/.exec(chapter)?.[1] ?? '', chapter.replace(/^.*\n/, '')]),
  )
  return Object.keys(top.shape).map((key) => ({
    path: 'file.md',
    title: `## \`${key}\``,
    page: readPage(chapters.get(key) ?? ''),
    keys: all.filter(({ path }) => path === key || path.startsWith(`${key}.`)),
  }))
}

const MADE = '<!-- Made by `node build/manual.mjs`; change the sources, not this page. -->'

export function manualPages(): ReadonlyMap<string, string> {
  const parts = manualParts()
  const pages = new Map<string, string[]>([
    ['README.md', [contents(parts)]],
    ['file.md', ['# The protocol file', (file.split(/^## /m)[0] ?? '').trim()]],
    ['expressions.md', [guide.trim(), '## Functions', functionsTable()]],
    ['words.md', [words.trim()]],
    ['problems.md', [checksPage()]],
  ])
  for (const { path, title, page, keys } of parts) {
    pages.set(path, [...(pages.get(path) ?? []), printPage(title, page, keys)])
  }
  return new Map([...pages].map(([path, texts]) => [path, `${[MADE, ...texts].join('\n\n').trim()}\n`]))
}

function contents(parts: readonly Part[]): string {
  const link = ({ path, title }: Part): string => `- [${title.replace(/^#+ /, '')}](${path})`
  const under = (folder: string): string =>
    parts
      .filter(({ path }) => path.startsWith(folder))
      .map(link)
      .join('\n')
  return [
    '# Manual of the protocol language',
    'A protocol is a folder: `protocol.yaml`, and beside it, where needed, `norms/*.csv`, `figures/*.svg` and `words/*.yaml`. `evenhand check PATH` names every problem with its place and what to do about it; `evenhand schema protocol` prints the shape of the file for editors.',
    '- [The protocol file: its top-level keys](file.md)\n- [Keys of every step](every-step.md)\n- [Rules](rule.md)\n- [Expressions](expressions.md)\n- [Words in another language](words.md)\n- [Problems that are told](problems.md)',
    '## Kinds of steps',
    under('steps/'),
    '## Sections: steps around steps',
    under('sections/'),
  ].join('\n\n')
}
