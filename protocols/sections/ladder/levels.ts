import type { Expression } from '../../language/expressions/types.ts'
import type { LadderFields } from './keys.ts'

/**
 * The levels that a ladder has in its place, in the order of the list: those for which `where` holds. One that was
 * given stays a level, whatever the condition says by now.
 * @param path the levels given so far
 */
export function levelsOf(
  { where }: Pick<LadderFields, 'where'>,
  levels: readonly string[],
  path: readonly string[],
  holds: (condition: Expression, level: string) => boolean | null,
): readonly string[] {
  if (where === undefined) return levels
  return levels.filter((level) => path.includes(level) || holds(where, level) === true)
}
