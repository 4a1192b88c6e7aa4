/** Paths into a step's keys, such as `times.least`, or `options.*` for every entry of a map. */
import { childOf, entryOf, type Tree } from '../reader/tree.ts'

interface Found {
  readonly tree: Tree
  /** The keys that lead there, `*` filled in. */
  readonly keys: readonly string[]
}

/** What stands at a path; nothing where a map is wanted on the way and an expression stands there. */
export function found(tree: Tree, path: string): readonly Found[] {
  let here: readonly Found[] = [{ tree, keys: [] }]
  for (const key of path.split('.')) here = here.flatMap((each) => below(each, key))
  return here
}

function below({ tree, keys }: Found, key: string): readonly Found[] {
  if (tree.is !== 'map' || (key !== 'from' && keys.length > 0 && entryOf(tree, 'from'))) return []
  if (key === '*') return tree.entries.map((entry) => ({ tree: entry.value, keys: [...keys, entry.key] }))
  const child = childOf(tree, key)
  return child ? [{ tree: child, keys: [...keys, key] }] : []
}

/** Puts a value where the keys lead; what lies beside it stays. */
export function put(fields: Record<string, unknown>, keys: readonly string[], value: unknown): void {
  const [key = '', ...rest] = keys
  if (rest.length === 0) {
    fields[key] = value
    return
  }
  const inner: Record<string, unknown> = { ...(fields[key] as object | undefined) }
  put(inner, rest, value)
  fields[key] = inner
}
