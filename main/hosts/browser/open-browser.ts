import { spawn } from 'node:child_process'
import { platform } from 'node:os'

/** The system's own way to open an address, or null where nobody sits at a desktop to see it. */
export function opener(
  system: NodeJS.Platform,
  environment: Readonly<Record<string, string | undefined>>,
): readonly [string, ...string[]] | null {
  if (system === 'darwin') return ['open']
  if (system === 'win32') return ['rundll32', 'url.dll,FileProtocolHandler']
  return environment.DISPLAY || environment.WAYLAND_DISPLAY ? ['xdg-open'] : null
}

/** Opens the address in the user's browser. The address is printed too, so a failure here costs nothing. */
export function openBrowser(address: string): void {
  const found = opener(platform(), process.env)
  if (!found) return
  const [program, ...before] = found
  const child = spawn(program, [...before, address], { stdio: 'ignore', detached: true })
  child.on('error', () => {})
  child.unref()
}
