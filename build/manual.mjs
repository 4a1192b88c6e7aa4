/** `npm run -s manual`: writes the reference manual of the protocol language anew, from its sources. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { runnerImport } from 'vite'
import { root } from './node24.mjs'

const folder = join(root, 'docs', 'manual')
const { module } = await runnerImport(join(root, 'protocols/language/manual/index.ts'), {
  root,
  configFile: false,
  logLevel: 'warn',
})
rmSync(folder, { recursive: true, force: true })
for (const [path, text] of module.manualPages()) {
  const file = join(folder, path)
  mkdirSync(dirname(file), { recursive: true })
  writeFileSync(file, text)
}
