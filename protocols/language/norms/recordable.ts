import type { Draft } from '../convert/draft.ts'
import type { NormColumn } from '../model.ts'
import { STEP_KINDS } from '../schema/kinds.ts'
import { sectionsOf, stepsOf } from '../structure.ts'

/**
 * The words that can be recorded where a norm table chooses a row: none where a number is recorded; null where that is
 * no closed list.
 */
export function recordable(draft: Draft, { column, by }: NormColumn): readonly string[] | null {
  if (by === 'condition') {
    return draft.conditions.find(({ name }) => name === column)?.options.map(({ id }) => id) ?? null
  }
  if (by === 'loop') {
    const list = sectionsOf(draft).find(({ node }) => node.name === column)?.node.fields.in
    if (list === 'hands') return ['right', 'left']
    return typeof list === 'string' ? (draft.lists[list]?.map(({ id }) => id) ?? null) : null
  }
  if (by === 'client') return null
  const step = stepsOf(draft).find(({ node }) => node.name === column)?.node
  const reading = step ? Object.values(STEP_KINDS.get(step.kind)?.columns(step) ?? {})[0] : undefined
  if (reading?.is === 'number') return []
  return reading?.is === 'text' ? (reading.oneOf ?? null) : null
}
