/** The functions of expressions, each told by the comment of its file. */
import type { Formula } from '../expressions/formula.ts'

const formulas = import.meta.glob<Formula>('../expressions/functions/*.ts', {
  eager: true,
  import: 'default',
})
const sources = import.meta.glob<string>('../expressions/functions/*.ts', {
  eager: true,
  query: '?raw',
  import: 'default',
})

const COMMENT = /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\nconst \w+: Formula/

export function functionsTable(): string {
  const rows = Object.entries(formulas).map(([path, { name, use }]) => {
    const comment = COMMENT.exec(sources[path] ?? '')?.[1] ?? ''
    const sentence = comment
      .replaceAll(/\s*\n \* ?/g, ' ')
      .trim()
      .replaceAll('|', '\\|')
    return `| \`${name}\` | \`${use.replaceAll('|', '\\|')}\` | ${sentence} |`
  })
  return ['| function | such as | what it gives |', '|---|---|---|', ...rows].join('\n')
}
