/** Who may come in: a token known to whoever started this launch, then a cookie that only this browser has. */
import { randomBytes, timingSafeEqual } from 'node:crypto'
import type { Session } from '../../contract/dispatch.ts'

/** More screens than anybody has open; the oldest goes first. */
const MOST = 32

export interface Sessions {
  readonly token: string
  /** A new session's `Set-Cookie` for the right token, else null. */
  enter(token: string): string | null
  find(cookieHeader: string | undefined): Session | null
}

/** @param port names the cookie, since browsers don't keep cookies apart by port */
export function createSessions(port: number): Sessions {
  const token = randomBytes(32).toString('base64url')
  const cookieName = `evenhand_${port}`
  const open = new Map<string, Session>()

  return {
    token,
    enter(shown) {
      if (!same(shown, token)) return null
      const secret = randomBytes(32).toString('base64url')
      open.set(secret, { id: crypto.randomUUID(), user: null })
      const [oldest] = open.keys()
      if (open.size > MOST && oldest !== undefined) open.delete(oldest)
      return `${cookieName}=${secret}; Path=/; HttpOnly; SameSite=Strict`
    },
    find(header) {
      const given = header
        ?.split(';')
        .map((part) => part.trim())
        .find((part) => part.startsWith(`${cookieName}=`))
      return (given && open.get(given.slice(cookieName.length + 1))) || null
    },
  }
}

function same(shown: string, wanted: string): boolean {
  const [a, b] = [Buffer.from(shown), Buffer.from(wanted)]
  return a.length === b.length && timingSafeEqual(a, b)
}
