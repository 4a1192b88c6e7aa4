/** Which screen a place has. A screen is found by listing `screens/<name>/route.tsx`; adding one edits nothing else. */
import type { Params, Route } from './route.ts'

const listed = import.meta.glob<Route>('../screens/*/route.tsx', { eager: true, import: 'default' })
const routes = Object.values(listed)

function match(path: string, wanted: readonly string[]): Params | null {
  const parts = path.split('/').filter(Boolean)
  if (parts.length !== wanted.length) return null
  const params: Record<string, string> = {}
  for (const [index, part] of parts.entries()) {
    const given = wanted[index] ?? ''
    if (part.startsWith(':')) params[part.slice(1)] = decodeURIComponent(given)
    else if (part !== given) return null
  }
  return params
}

export interface Here {
  readonly place: string
  readonly route: Route
  readonly params: Params
}

/** The screen for a place such as `client/0198…`; the first screen for a place that there isn't. */
export function routeFor(place: string): Here | null {
  const wanted = place.split('/').filter(Boolean)
  for (const route of routes) {
    const params = match(route.path, wanted)
    if (params) return { place, route, params }
  }
  return place === '' ? null : routeFor('')
}
