import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** A built screen of two files, in a folder of its own beside which a secret lies. */
export function makeScreen(): string {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-screen-'))
  writeFileSync(join(folder, 'secret.txt'), 'secret')
  const screen = join(folder, 'screen')
  mkdirSync(join(screen, 'assets'), { recursive: true })
  writeFileSync(
    join(screen, 'index.html'),
    '<meta property="csp-nonce" nonce="__NONCE__"><style nonce="__NONCE__">',
  )
  writeFileSync(join(screen, 'assets', 'main.js'), 'export {}')
  return screen
}
