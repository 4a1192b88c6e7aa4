import { hasWords, say } from '../words/index.ts'

/** What stands on the key with this `KeyboardEvent.code`. */
export function keyName(code: string): string {
  const named = `keys.${code}`
  if (hasWords(named)) return say(named)
  const sign = /^(?:Key|Digit)(.)$/.exec(code)?.[1]
  if (sign) return sign
  const pad = /^Numpad(.)$/.exec(code)?.[1]
  return pad ? say('keys.pad', { sign: pad }) : code
}
