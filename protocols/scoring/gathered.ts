/** How conditions stood where figures were gathered, against how they stand here. */
import type { Condition, Gathered, Protocol, Quantity } from '../language/model.ts'
import { convert } from '../language/units.ts'

export interface ConditionsCompared {
  readonly differing: readonly { readonly condition: string; readonly here: string; readonly there: string }[]
  /** Names of conditions of which either side isn't known. */
  readonly unknown: readonly string[]
}

/** What a condition is here: fixed by the file, or as recorded; null where nobody recorded it. */
export function conditionHere(
  condition: Condition,
  recorded: Readonly<Record<string, string>>,
): string | null {
  if (condition.setBy === 'file') return condition.options[0]?.id ?? null
  return (Object.hasOwn(recorded, condition.name) ? recorded[condition.name] : undefined) ?? null
}

/** `60 s` and `1 min` are the same; two options are the same when their ids are. */
function isSame(condition: Condition, here: string, there: string): boolean {
  if (here === there) return true
  const [a, b] = [here, there].map((written) => quantityOf(condition, written))
  if (a === undefined || b === undefined || a === null || b === null) return false
  return convert(a.value, a.unit, b.unit) === b.value
}

function quantityOf(condition: Condition, written: string): Quantity | null {
  const option = condition.options.find(({ id }) => id === written)
  if (option !== undefined) return typeof option.value === 'string' ? null : option.value
  const [, value, unit] = /^(-?\d+(?:\.\d+)?)(?:\s+(\S+))?$/.exec(written) ?? []
  return value === undefined ? null : { value: Number(value), unit: unit ?? '1' }
}

/** `named`: only conditions that `gathered` names; else all of the protocol, those it doesn't name being unknown. */
export function compareConditions(
  protocol: Protocol,
  gathered: Gathered,
  recorded: Readonly<Record<string, string>>,
  named = false,
): ConditionsCompared {
  const differing: { condition: string; here: string; there: string }[] = []
  const unknown: string[] = []
  for (const condition of protocol.conditions) {
    if (named && !Object.hasOwn(gathered, condition.name)) continue
    const there =
      (Object.hasOwn(gathered, condition.name) ? gathered[condition.name] : undefined) ?? 'unknown'
    const here = conditionHere(condition, recorded)
    if (there === 'unknown' || here === null) unknown.push(condition.name)
    else if (!isSame(condition, here, there)) differing.push({ condition: condition.name, here, there })
  }
  return { differing, unknown }
}
