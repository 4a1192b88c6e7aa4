/** The page of all problems that the reader can tell, each with its severity. */
import expressions from './expression-problems.md?raw'
import { SEVERITY_PROMISES, type Severity } from '../diagnostics.ts'
import { READER_PROBLEMS } from '../reader/problems.ts'
import { CHECKS } from '../run-checks.ts'
import { SCHEMA_PROBLEMS } from '../schema/problems.ts'

const sources = import.meta.glob<string>('../checks/*.ts', { eager: true, query: '?raw', import: 'default' })
const SEVERITIES = ['error', 'warning', 'advice'] as const

export function checksPage(): string {
  const promises = SEVERITIES.map((severity) => `- **${severity}**: ${SEVERITY_PROMISES[severity]}`)
  return [
    '# Problems that are told',
    'Each problem is told with its place, a sentence and what to do about it. Its severity is a promise:',
    promises.join('\n'),
    '`evenhand check --json` gives them as data; `evenhand schema check` prints the shape of that.',
    '## Reading the file',
    tableOf(READER_PROBLEMS),
    '## Keys and values',
    tableOf(SCHEMA_PROBLEMS),
    '## Expressions',
    expressions.trim(),
    '## Checks',
    ...[...CHECKS.values()]
      .sort((a, b) => (a.code < b.code ? -1 : 1))
      .map(({ code, severity }) => checkOf(code, severity)),
  ].join('\n\n')
}

type Entries = Readonly<
  Record<string, { readonly message: string; readonly mend: string; readonly severity?: Severity }>
>

function tableOf(problems: Entries): string {
  const rows = Object.entries(problems).map(
    ([code, { message, mend, severity }]) =>
      `| \`${code}\` | ${severity ?? 'error'} | ${cell(message)} | ${cell(mend)} |`,
  )
  return ['| code | severity | sentence | mend |', '|---|---|---|---|', ...rows].join('\n')
}

/** A place in a sentence is filled with what stands in the file. */
const cell = (text: string): string => text.replaceAll(/\{\d\}/g, '…').replaceAll('|', '\\|')

const COMMENT = /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\nexport default/

/** The comment of a check's file is its page. */
function checkOf(code: string, severity: Severity): string {
  const comment = COMMENT.exec(sources[`../checks/${code}.ts`] ?? '')?.[1] ?? ''
  const text = comment
    .split('\n')
    .map((line) => line.replace(/^ \* ?/, ''))
    .join('\n')
    .trim()
    .replace(/^What it does: /, '')
    .replaceAll(/^(Example|Instead):\n((?: {4}.*(?:\n|$))+)/gm, (_, title: string, body: string) =>
      [`${title}:`, '', '```', body.trimEnd().replaceAll(/^ {4}/gm, ''), '```', ''].join('\n'),
    )
  return `### \`${code}\` (${severity})\n\n${text.trim()}`
}
