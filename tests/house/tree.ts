import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'

const root = join(import.meta.dirname, '..', '..')

/** Every file of the project that is kept, or about to be: tracked, and untracked but not ignored. */
export const files: readonly string[] = execFileSync(
  'git',
  ['ls-files', '--cached', '--others', '--exclude-standard'],
  { cwd: root, encoding: 'utf8' },
)
  .split('\n')
  .filter((name) => name !== '')

export const textOf = (file: string): string => readFileSync(join(root, file), 'utf8')

export const code = files.filter((file) => /^(protocols|main|renderer)\/.*\.tsx?$/.test(file))

/** What a file imports: project files by their path from the root, packages by their name. */
export function importsOf(file: string): readonly string[] {
  const text = textOf(file)
  const found = [
    ...text.matchAll(/(?:^|\n)\s*(?:import|export)\b[^'"\n]*(?:\{[^}]*\}[^'"\n]*)?['"]([^'"]+)['"]/g),
  ]
  const lazy = [...text.matchAll(/\bimport\(\s*['"]([^'"]+)['"]/g)]
  return [...found, ...lazy].map(([, target = '']) =>
    target.startsWith('.') ? normalize(join(dirname(file), target.replace(/\?.*$/, ''))) : target,
  )
}

/** A package's name without the path inside it. */
export const packageOf = (target: string): string =>
  target
    .split('/')
    .slice(0, target.startsWith('@') ? 2 : 1)
    .join('/')
