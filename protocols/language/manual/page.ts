/** A page's source: what it is about, a sentence for each key, an example. */
import type { KeyPath } from './key-paths.ts'

export interface Page {
  readonly about: string
  /** A sentence for each key by its path. */
  readonly keys: ReadonlyMap<string, string>
  /** YAML, as top-level keys of a protocol file. */
  readonly example: string
}

const KEY = /^- `([^`]+)`: ([\s\S]*?)(?=\n- `|\n\n|$(?![\s\S]))/gm
const FENCE = /```yaml\n([\s\S]*?)```/

/** Reads a page: text, a list of `- \`key\`: sentence`, one fenced example. */
export function readPage(source: string): Page {
  const keys = new Map(
    [...source.matchAll(KEY)].map(([, key = '', sentence = '']) => [key, sentence.replaceAll(/\s+/g, ' ')]),
  )
  const example = FENCE.exec(source)?.[1] ?? ''
  const about = source
    .replace(FENCE, '')
    .replaceAll(KEY, '')
    .replaceAll(/\n{3,}/g, '\n\n')
    .trim()
  return { about, keys, example }
}

/** The page as it is printed; a key without a sentence shows as such, and a test finds it. */
export function printPage(title: string, { about, keys, example }: Page, paths: readonly KeyPath[]): string {
  const rows = paths.map(({ path, isNeeded, form }) => {
    const cells = [`\`${path}\``, isNeeded ? 'yes' : '', form, keys.get(path) ?? '']
    return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`
  })
  const table = ['| key | needed | what stands there | what it means |', '|---|---|---|---|', ...rows]
  return [
    title,
    about,
    ...(rows.length > 0 ? [table.join('\n')] : []),
    ...(example === '' ? [] : [`\`\`\`yaml\n${example}\`\`\``]),
  ].join('\n\n')
}
