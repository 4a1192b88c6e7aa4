/** Runs one of our tools on Node 24: `node build/run.mjs vitest/vitest.mjs run …`. */
import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { childEnvironment, requireNode24, root } from './node24.mjs'

const [tool, ...rest] = process.argv.slice(2)
const child = spawn(requireNode24(), [join(root, 'node_modules', tool), ...rest], {
  stdio: 'inherit',
  env: childEnvironment(),
})
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal))
child.on('exit', (code, signal) => process.exit(code ?? (signal ? 1 : 0)))
