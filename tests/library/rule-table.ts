import { parse } from 'yaml'

/** A row of `<test>.rules.md`: a rule in words, the path that meets it, and what must stand there. */
export interface RuleRow {
  readonly line: number
  readonly rule: string
  readonly path: string
  readonly expected: { readonly how: 'present' | 'absent' | 'says' | 'says-not'; readonly words: string }
}

/** The rows of a rule table in Markdown: two columns, headings and separators left out. */
export function ruleRows(markdown: string): readonly RuleRow[] {
  return markdown.split('\n').flatMap((text, index) => {
    const cells = text.startsWith('|') ? text.slice(1, text.lastIndexOf('|')).split('|') : []
    const [rule, met] = cells.map((cell) => cell.trim())
    if (!rule || !met || met === 'met at' || /^-+$/.test(met)) return []
    const [path = '', ...rest] = met.split(' ~ ')
    return [{ line: index + 1, rule, path, expected: expectation(rest.join(' ~ ')) }]
  })
}

function expectation(written: string): RuleRow['expected'] {
  if (written === '') return { how: 'present', words: '' }
  if (written === '(absent)') return { how: 'absent', words: '' }
  if (written.startsWith('(not) ')) return { how: 'says-not', words: written.slice('(not) '.length) }
  return { how: 'says', words: written }
}

/** A protocol's text as plain values, read once for all rows of its table. */
export const treeOf = (yaml: string): unknown => parse(yaml)

/** Why a row doesn't hold in a protocol's tree, or null when it does. */
export function unmet(row: RuleRow, tree: unknown): string | null {
  const found = at(tree, row.path)
  const { how, words } = row.expected
  if (how === 'absent') return found === undefined ? null : `${row.path} is there`
  if (found === undefined) return `${row.path} points nowhere`
  const says = flat(found).includes(words)
  if (how === 'says' && !says) return `${row.path} doesn't say "${words}"`
  if (how === 'says-not' && says) return `${row.path} says "${words}"`
  return null
}

/** Follows a path: map keys, list positions, or the name of a step, score, norm, precaution. */
function at(root: unknown, path: string): unknown {
  let here: unknown = root
  for (const [depth, part] of path.split('.').entries()) {
    here = child(here, part, depth === 1)
    if (here === undefined) return undefined
  }
  return here
}

function child(here: unknown, part: string, deep: boolean): unknown {
  if (Array.isArray(here)) {
    const byName = here.find((item) => nameOf(item) === part)
    if (byName !== undefined) return byName
    if (/^\d+$/.test(part)) return here[Number(part)]
    return deep ? inside(here, part) : undefined
  }
  if (here !== null && typeof here === 'object') return (here as Record<string, unknown>)[part]
  return undefined
}

function inside(nodes: readonly unknown[], name: string): unknown {
  for (const node of nodes) {
    const steps = (node as { steps?: readonly unknown[] }).steps
    if (!steps) continue
    const found = steps.find((step) => nameOf(step) === name) ?? inside(steps, name)
    if (found !== undefined) return found
  }
  return undefined
}

/** The value of the first key: how steps, scores, norms and precautions are named. */
function nameOf(item: unknown): unknown {
  return item !== null && typeof item === 'object' ? Object.values(item)[0] : undefined
}

/** Everything under a value as one line of text: keys, words, numbers. */
function flat(value: unknown): string {
  if (Array.isArray(value)) return value.map(flat).join(' ')
  if (value !== null && typeof value === 'object') {
    return Object.entries(value)
      .map(([key, inner]) => `${key} ${flat(inner)}`)
      .join(' ')
  }
  return String(value)
}
