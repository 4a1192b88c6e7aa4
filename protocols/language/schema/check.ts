/** A whole protocol file against the shapes: the top level first, then each step by its kind. */
import { z } from 'zod'
import type { Problem } from '../diagnostics.ts'
import { childOf, entryOf, type MapNode, plain, type Tree } from '../reader/tree.ts'
import { shapeProblems } from './issues.ts'
import { innerSteps } from './inner-steps.ts'
import { NODE_KEYS, NODE_SCHEMAS, SECTION_KINDS } from './kinds.ts'
import { schemaProblem } from './problems.ts'
import { offer } from './suggest.ts'
import { top } from './top.ts'

/** Problems of shape, with the maps, lists or values at which each was found. */
export function protocolShape(tree: MapNode): readonly Problem[] {
  const version = entryOf(tree, 'evenhand')
  if (
    version?.value.is === 'scalar' &&
    typeof version.value.value === 'number' &&
    version.value.value !== 1
  ) {
    return [schemaProblem('language_version', version.value.at, version.value.written)]
  }
  const problems = [...shapeProblems(top, tree, plain(tree))]
  const steps = childOf(tree, 'steps')
  if (steps?.is === 'list') problems.push(...stepProblems(steps.items))
  return problems
}

function* stepProblems(items: readonly Tree[]): Iterable<Problem> {
  for (const item of items) yield* nodeProblems(item)
}

const step = z.looseObject({}, { error: 'a step, such as { instruct: explain, text: … }' })

function* nodeProblems(node: Tree): Iterable<Problem> {
  const first = node.is === 'map' ? node.entries[0] : undefined
  if (node.is === 'broken') return
  if (node.is !== 'map' || !first) {
    yield* shapeProblems(step, node, node.is === 'map' ? undefined : plain(node))
    return
  }
  const schema = NODE_SCHEMAS.get(first.key)
  if (schema) {
    yield* shapeProblems(schema, node, plain(node))
    if (SECTION_KINDS.has(first.key)) {
      for (const { list } of innerSteps(node)) yield* stepProblems(list.items)
    }
    return
  }
  const later = node.entries.find(({ key }) => NODE_SCHEMAS.has(key))
  const kinds = [...NODE_SCHEMAS.keys()]
  if (later && NODE_KEYS.has(first.key))
    yield schemaProblem('kind_not_first', first.keyAt, first.key, later.key)
  else yield schemaProblem('unknown_kind', first.keyAt, first.key, offer(first.key, kinds, 'kinds'))
}
