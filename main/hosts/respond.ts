/**
 * Serves the built screen to whoever asks: the browser host and the desktop shell's own scheme give out the same
 * bytes under the same headers. Answers are plain data: Node's web-standard ones would load a whole client for
 * other hosts before the first page is out.
 */
import { randomBytes } from 'node:crypto'
import { readdirSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { extname, join, relative, sep } from 'node:path'

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.wav': 'audio/wav',
  '.woff2': 'font/woff2',
}
const NONCE_PLACE = /__NONCE__/g

/** No source outside this program, and only styles that carry this page's nonce beside its own files. */
const contentPolicy = (nonce: string): string =>
  [
    "default-src 'none'",
    "script-src 'self'",
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "media-src 'self'",
    "connect-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ')

/** Isolation from every other page, which also gives the clock its finest step. */
export const SAFE_HEADERS: Readonly<Record<string, string>> = {
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-embedder-policy': 'require-corp',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), geolocation=(), microphone=(), midi=(), payment=(), serial=(), usb=()',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'cache-control': 'no-store',
}

export interface Answer {
  readonly status: number
  readonly headers: Readonly<Record<string, string>>
  readonly body: string | Buffer | null
}

/** @param path as in the address, such as `/` */
export type Respond = (method: string, path: string) => Promise<Answer>

const plain = (status: number): Answer => ({ status, headers: SAFE_HEADERS, body: null })

/**
 * @param folder the built screen; listed once, so that a path in a request never reaches the disk by itself
 */
export function createResponder(folder: string): Respond {
  const files = new Map<string, string>()
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue
    const path = join(entry.parentPath, entry.name)
    files.set(`/${relative(folder, path).split(sep).join('/')}`, path)
  }

  return async (method, asked) => {
    if (method !== 'GET' && method !== 'HEAD') return plain(405)
    const path = files.get(asked === '/' ? '/index.html' : asked)
    if (!path) return plain(404)
    const nonce = randomBytes(16).toString('base64')
    const bytes = await readFile(path)
    const body = path.endsWith('.html') ? bytes.toString('utf8').replace(NONCE_PLACE, nonce) : bytes
    return {
      status: 200,
      headers: {
        ...SAFE_HEADERS,
        'content-type': TYPES[extname(path)] ?? 'application/octet-stream',
        'content-security-policy': contentPolicy(nonce),
      },
      body: method === 'HEAD' ? null : body,
    }
  }
}
