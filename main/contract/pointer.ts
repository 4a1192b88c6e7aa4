import type { z } from 'zod'

/** Where the first problem of a refused value lies, as a JSON pointer (RFC 6901), and what it is. */
export function pointerTo(error: z.ZodError): { readonly at: string; readonly problem: string } {
  const [first] = error.issues
  if (!first) return { at: '', problem: '' }
  const keys = first.code === 'unrecognized_keys' ? [...first.path, ...first.keys.slice(0, 1)] : first.path
  const at = keys.map((key) => `/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')
  return { at, problem: first.message }
}
