/** Readings that were written on a sheet: a row for each line of it, a column for each hand. */
import { SIDES } from '../../../protocols/client.ts'
import type { Node } from '../../../protocols/language/model.ts'
import { isSheet, stepsOnSheet } from '../../../protocols/language/sheet.ts'
import type { Trial } from '../../../protocols/runner/view.ts'
import { clockTime, placeOf, plain } from '../figures.ts'
import type { ReportInput } from '../input.ts'
import { type Block, note, part, table, wide } from '../page.ts'
import { say } from '../words.ts'

interface Sheet {
  readonly name: string
  readonly steps: ReadonlySet<string>
}

const sheetsIn = (nodes: readonly Node[]): readonly Sheet[] =>
  nodes.flatMap((node) => {
    if (node.node !== 'section') return []
    if (!isSheet(node)) return sheetsIn(node.steps)
    return [{ name: node.name, steps: new Set(stepsOnSheet(node).map(({ name }) => name)) }]
  })

/** Nothing has to be said of it but its value: it stands at the first try, nothing befell it, nobody put it right. */
const isPlain = ({ status, practice, attempt, happenings, remark, readings }: Trial): boolean =>
  status === 'standing' &&
  !practice &&
  attempt === 1 &&
  happenings.length === 0 &&
  remark === '' &&
  Object.values(readings).every(({ corrected, confirmed }) => corrected === null && !confirmed)

/** The trials that stand in a sheet's table and not on a line of their own. */
export function onSheets({ result, protocol }: Pick<ReportInput, 'result' | 'protocol'>): ReadonlySet<Trial> {
  const steps = new Set(sheetsIn(protocol.steps).flatMap((sheet) => [...sheet.steps]))
  return new Set(result.trials.filter((trial) => steps.has(trial.step) && isPlain(trial)))
}

const sideOf = ({ place }: Trial): string => SIDES.find((side) => Object.values(place).includes(side)) ?? ''

function lineOf(trial: Trial, all: readonly Trial[]): string {
  const place = Object.fromEntries(
    Object.entries(trial.place).filter(([, pass]) => !SIDES.some((side) => side === pass)),
  )
  return placeOf({ ...trial, place }, all) || plain(trial.step)
}

/** @param told a trial's values in words, or why it has none */
export function sheetTables(input: ReportInput, told: (trial: Trial) => string): Block[] {
  const { result, protocol } = input
  const shown = onSheets(input)
  return sheetsIn(protocol.steps).flatMap((sheet): Block[] => {
    const trials = [...shown].filter(({ step }) => sheet.steps.has(step))
    const [first, last] = [trials[0], trials.at(-1)]
    if (!first || !last) return []
    const sides = ['', ...SIDES].filter((side) => trials.some((trial) => sideOf(trial) === side))
    const rows = [...Map.groupBy(trials, (trial) => lineOf(trial, result.trials))].map(([line, these]) => [
      line,
      ...sides.map((side) =>
        these
          .filter((trial) => sideOf(trial) === side)
          .map((trial) =>
            say('sheet.reading', { value: told(trial), number: result.trials.indexOf(trial) + 1 }),
          )
          .join('; '),
      ),
    ])
    const title = say('sheet', { name: plain(sheet.name) })
    return [
      part(title),
      note(say('sheet.hint', { from: clockTime(first.at), to: clockTime(last.at) })),
      table(
        title,
        [
          wide(say('column.where')),
          ...sides.map((hand) => wide(hand ? say('where.hand', { hand }) : say('column.measured'))),
        ],
        rows,
      ),
    ]
  })
}
