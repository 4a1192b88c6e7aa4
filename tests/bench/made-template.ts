/** Builds the bare template once and starts it the way `npm start` starts the program. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build } from 'vite'

const root = join(import.meta.dirname, '..', '..')

export interface Template {
  /** The script that starts it: finds its Node, then starts the host, as ours does. */
  readonly start: string
  remove(): void
}

export async function makeTemplate(): Promise<Template> {
  // Inside the project, so that the host finds the native packages the program uses.
  const folder = mkdtempSync(join(root, 'out', 'template-'))
  const data = mkdtempSync(join(tmpdir(), 'evenhand-template-'))
  const source = join(import.meta.dirname, 'template')
  const quiet = { configFile: false, logLevel: 'error', root: source } as const
  await build({ ...quiet, build: { outDir: join(folder, 'pages'), emptyOutDir: true } })
  await build({
    ...quiet,
    ssr: { noExternal: true, external: ['better-sqlite3'] },
    build: { ssr: 'host.ts', outDir: join(folder, 'host'), emptyOutDir: true },
  })
  const start = join(folder, 'start.mjs')
  writeFileSync(
    start,
    `import { spawn } from 'node:child_process'
import { requireNode24 } from ${JSON.stringify(join(root, 'build', 'node24.mjs'))}
const child = spawn(requireNode24(), ${JSON.stringify([join(folder, 'host', 'host.js'), data, join(folder, 'pages')])}, { stdio: 'inherit' })
process.on('SIGTERM', () => child.kill('SIGTERM'))
child.on('exit', (code) => process.exit(code ?? 0))
`,
  )
  const remove = (): void => {
    for (const made of [folder, data]) rmSync(made, { recursive: true, force: true })
  }
  return { start, remove }
}
