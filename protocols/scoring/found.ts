/** The rows that sections have themselves, such as the level that a ladder found: worked out from the trials inside. */
import { bool, list, none, number, text } from '../language/expressions/datum.ts'
import { evaluateDatum } from '../language/expressions/evaluate.ts'
import type { Datum, Expression } from '../language/expressions/types.ts'
import type { From, Section } from '../language/model.ts'
import { passAt, passesOf, turnKey } from '../language/passes.ts'
import { SECTION_KINDS } from '../language/schema/kinds.ts'
import type { Place } from '../runner/events.ts'
import type { Trial } from '../runner/view.ts'
import type { Found, FoundRow, GivenPass, Passes } from '../sections/kind.ts'
import { belongs, isRow } from './rows.ts'
import type { Working } from './standing.ts'

/** Gives the properties of an item as data, by the name of its list. */
export type Properties = (list: string, item: string) => Readonly<Record<string, Datum>>

/** The table of a section as an expression at `place` sees it; null where it has none. */
export function foundTable(
  working: Working,
  section: Section,
  place: Place,
  properties: Properties,
): Datum | null {
  const { protocol } = working.standing
  const found = SECTION_KINDS.get(section.kind)?.found
  const passes = passesOf(section, protocol.draws)
  if (!found || passes === null) return null
  const names = ['outcome', ...Object.keys(found.columns(section, protocol.lists))]
  const rows = instancesOf(working, section, passes, place).map((instance) =>
    rowOf({ working, section, found, passes, properties, names }, instance),
  )
  const fields: Record<string, Datum> = {}
  for (const name of names) fields[name] = list(rows.map((row) => row[name] ?? none('no_property', { name })))
  fields.rows = list(rows.map((row): Datum => ({ is: 'record', fields: row })))
  return { is: 'record', fields }
}

interface Instance {
  readonly around: Place
  readonly trials: readonly Trial[]
}

/** The trials inside a section, apart for each place in which it was gone through. */
function instancesOf(
  { standing, outline }: Working,
  section: Section,
  passes: Passes,
  place: Place,
): Instance[] {
  const { steps, keys } = outline.inside.get(section.name) ?? { steps: new Set(), keys: [] }
  const found = new Map<string, { around: Place; trials: Trial[] }>()
  for (const trial of standing.trials) {
    const isInside = steps.has(trial.step) && trial.place[turnKey(passes.loop)] !== undefined
    if (!isInside || !isRow(trial) || !belongs(trial.place, place)) continue
    const around = Object.fromEntries(
      keys.flatMap((key) => (key in trial.place ? [[key, trial.place[key]]] : [])),
    )
    const instance = found.get(JSON.stringify(around)) ?? { around: around as Place, trials: [] }
    instance.trials.push(trial)
    found.set(JSON.stringify(around), instance)
  }
  return [...found.values()]
}

interface Ground {
  readonly working: Working
  readonly section: Section
  readonly found: Found
  readonly passes: Passes
  readonly properties: Properties
  readonly names: readonly string[]
}

function rowOf(ground: Ground, instance: Instance): Record<string, Datum> {
  const { working, section, found, passes, properties, names } = ground
  const items = working.standing.protocol.lists[passes.list ?? ''] ?? []
  const row = found.row(section, items, givenIn(ground, instance), {
    count: (from) => countAt(working, from, instance.around),
    holds: (condition, item) => holdsAt(working, condition, { ...instance.around, [passes.loop]: item }),
  })
  const ids = instance.trials.map(({ id }) => id)
  const own: Readonly<Record<string, Datum>> =
    row.item === null ? {} : { ...properties(passes.list ?? '', row.item), id: text(row.item) }
  const columns: Record<string, Datum> = {}
  for (const name of names) {
    const lost = none(row.outcome, { ...instance.around, step: section.name, column: name }, ids)
    columns[name] = known(own[name], row, ids) ?? lost
  }
  const loops = Object.entries(instance.around).map(
    ([loop, pass]) => [loop, typeof pass === 'number' ? number(pass) : text(pass, ids)] as const,
  )
  return { ...Object.fromEntries(loops), ...columns, outcome: text(row.outcome, ids) }
}

/** A column of the item found; beyond the last item only numbers say something, as a bound. */
function known(datum: Datum | undefined, { over }: FoundRow, ids: readonly string[]): Datum | null {
  if (datum?.is === 'number') return number(datum.n, over || datum.over, ids)
  if (datum === undefined || over) return null
  if (datum.is === 'text') return text(datum.text, ids)
  return datum.is === 'bool' ? bool(datum.bool) : datum
}

/** The passes in the order they were given, each as the section's condition judges it now. */
function givenIn({ working, section, found, passes }: Ground, { around, trials }: Instance): GivenPass[] {
  const byTurn = new Map<number, readonly Trial[]>()
  for (const trial of trials) {
    const turn = Number(trial.place[turnKey(passes.loop)])
    byTurn.set(turn, [...(byTurn.get(turn) ?? []), trial])
  }
  const condition = section.fields[found.judgedBy] as Expression
  return [...byTurn]
    .sort(([one], [other]) => one - other)
    .map(([turn, there]): GivenPass => {
      const item = String(there[0]?.place[passes.loop])
      const outcome = there.find((trial) => trial.outcome !== 'done')?.outcome ?? 'done'
      return {
        item,
        verdict: holdsAt(working, condition, { ...around, ...passAt(passes, item, turn) }),
        outcome,
      }
    })
}

function holdsAt(working: Working, condition: Expression, place: Place): boolean | null {
  const datum = evaluateDatum(condition, working.scope(place))
  return datum.is === 'bool' ? datum.bool : null
}

function countAt(working: Working, from: From<number>, place: Place): number | null {
  if ('is' in from) return from.is
  const datum = evaluateDatum(from.from, working.scope(place))
  return datum.is === 'number' ? Math.max(0, Math.floor(datum.n)) : null
}
