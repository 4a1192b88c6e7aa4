/** Scores, norms and change figures as the model has them. */
import { type ChangeFigure, CLIENT_COLUMNS, type Gathered, type Norm, type Score } from '../model.ts'
import type { Choosers } from '../norms/columns.ts'
import { childOf, entryOf, type Tree } from '../reader/tree.ts'
import { STATISTICS } from '../schema/top.ts'
import { convert } from '../units.ts'
import type { Draft, Wanted } from './draft.ts'
import { declaredNames } from './names.ts'
import {
  expressionFrom,
  givenWords,
  pairOf,
  quantityFrom,
  soundItems,
  type Standing,
  wordsFrom,
  writtenOf,
} from './values.ts'

export function scoresFrom(draft: Draft): void {
  draft.choosers = choosersOf(draft)
  draft.scores = soundItems(draft, 'scores').map(({ item }) => scoreFrom(draft, item))
  draft.norms = soundItems(draft, 'norms').map(({ item }) => normFrom(draft, item))
  draft.change = soundItems(draft, 'change').map(({ item, position }) => changeFrom(draft, item, position))
}

/** What a column of a norm table can be named as, also where the piece of that name is broken. */
function choosersOf(draft: Draft): Choosers {
  const by = { section: 'loop', perhaps: 'loop', step: 'step', condition: 'condition' } as const
  const declared = declaredNames(draft.tree).flatMap(({ name, of }) =>
    of in by ? [[name, by[of as keyof typeof by]] as const] : [],
  )
  return new Map([...CLIENT_COLUMNS.map((name) => [name, 'client'] as const), ...declared])
}

function scoreFrom(draft: Draft, tree: Tree): Score {
  const name = writtenOf(childOf(tree, 'score')) ?? ''
  const each = eachOf(childOf(tree, 'each'))
  const unit = childOf(tree, 'unit')
  const title = childOf(tree, 'title')
  const needs = childOf(tree, 'needs')
  const decimals = childOf(tree, 'decimals')
  const shown = childOf(tree, 'shown')
  const written = writtenOf(unit)
  const wanted: Wanted = written === null ? { is: 'any' } : { is: 'number', unit: written }
  if (unit && written !== null) draft.units.push({ unit: written, at: unit.at })
  const standing: Standing = { around: [], each, owner: tree }
  const score: Score = {
    name,
    title: title
      ? wordsFrom(draft, title, `scores.${name}`)
      : givenWords(draft, `scores.${name}`, name.replaceAll('_', ' ')),
    each,
    value: expressionFrom(draft, childOf(tree, 'value') ?? tree, 'value', wanted, standing),
    needs: needs ? expressionFrom(draft, needs, 'needs', { is: 'bool' }, standing) : null,
    unit: written ?? '1',
    better: (writtenOf(childOf(tree, 'better')) ?? 'none') as Score['better'],
    decimals: decimals?.is === 'scalar' && typeof decimals.value === 'number' ? decimals.value : 0,
    shown: !(shown?.is === 'scalar' && shown.value === false),
    range: pairOf(childOf(tree, 'range')),
    at: tree.at,
  }
  return draft.place(score, tree)
}

function eachOf(tree: Tree | null): readonly string[] {
  if (tree?.is === 'list') return tree.items.flatMap((item) => writtenOf(item) ?? [])
  const single = writtenOf(tree)
  return single === null ? [] : [single]
}

function unitOfScore(draft: Draft, name: string): string | null {
  return draft.scores.find((score) => score.name === name)?.unit ?? null
}

function normFrom(draft: Draft, tree: Tree): Norm {
  const name = writtenOf(childOf(tree, 'norm')) ?? ''
  const of = writtenOf(childOf(tree, 'of')) ?? ''
  const unit = childOf(tree, 'unit')
  const title = childOf(tree, 'title')
  const population = childOf(tree, 'population')
  const file = writtenOf(childOf(tree, 'table')) ?? ''
  const as = (writtenOf(childOf(tree, 'as')) ?? 'mean-sd') as Norm['as']
  const table = draft.normTable({ file, as })
  if (unit) draft.units.push({ unit: writtenOf(unit) ?? '', at: unit.at })
  const norm: Norm = {
    name,
    title: title
      ? wordsFrom(draft, title, `norms.${name}`)
      : givenWords(draft, `norms.${name}`, name.replaceAll('_', ' ')),
    of,
    as,
    unit: writtenOf(unit) ?? unitOfScore(draft, of) ?? '1',
    rows: table.rows.map(({ row }) => row),
    columns: table.columns.map(({ column, by }) => ({ column, by })),
    bands: bandsFrom(draft, childOf(tree, 'bands'), name),
    file,
    gathered: gatheredFrom(childOf(tree, 'gathered')),
    differs: writtenOf(childOf(tree, 'differs')) === 'caution' ? 'caution' : 'withhold',
    population: population
      ? wordsFrom(draft, population, `norms.${name}.population`)
      : givenWords(draft, `norms.${name}.population`, ''),
    source: writtenOf(childOf(tree, 'source')) ?? '',
    at: tree.at,
  }
  return draft.place(norm, tree)
}

/** Words of a norm's bands by their names: `norms.<norm>.bands.<band>`. */
function bandsFrom(draft: Draft, tree: Tree | null, norm: string): Norm['bands'] {
  if (tree?.is !== 'map') return {}
  return Object.fromEntries(
    tree.entries.map(({ key, value }) => [key, wordsFrom(draft, value, `norms.${norm}.bands.${key}`)]),
  )
}

function gatheredFrom(tree: Tree | null): Gathered {
  if (tree?.is !== 'map') return {}
  return Object.fromEntries(tree.entries.map(({ key, value }) => [key, writtenOf(value) ?? 'unknown']))
}

function changeFrom(draft: Draft, tree: Tree, position: number): ChangeFigure {
  const of = writtenOf(childOf(tree, 'of')) ?? ''
  const key =
    (Object.keys(STATISTICS) as (keyof typeof STATISTICS)[]).find((each) => entryOf(tree, each)) ?? 'sem'
  const population = childOf(tree, 'population')
  const applies = childOf(tree, 'applies')
  const n = childOf(tree, 'n')
  const words = `change.${position + 1}.population`
  const figure = inScoreUnit(draft, childOf(tree, key), unitOfScore(draft, of))
  const each = draft.scores.find(({ name }) => name === of)?.each ?? []
  const standing: Standing = { around: [], each, owner: tree }
  const made: ChangeFigure = {
    of,
    statistic: STATISTICS[key],
    ...figure,
    population: population ? wordsFrom(draft, population, words) : givenWords(draft, words, ''),
    applies: applies ? expressionFrom(draft, applies, 'applies', { is: 'bool' }, standing) : null,
    gathered: gatheredFrom(childOf(tree, 'gathered')),
    examiners: (writtenOf(childOf(tree, 'examiners')) ?? 'unknown') as ChangeFigure['examiners'],
    interval: writtenOf(childOf(tree, 'interval')) ?? '',
    n: n?.is === 'scalar' && typeof n.value === 'number' ? n.value : null,
    source: writtenOf(childOf(tree, 'source')) ?? '',
    at: tree.at,
  }
  return draft.place(made, tree)
}

/** A bare number is in the score's unit; another unit of the same kind is converted; `%` stays. */
function inScoreUnit(draft: Draft, tree: Tree | null, unit: string | null): { value: number; unit: string } {
  if (!tree) return { value: Number.NaN, unit: unit ?? '1' }
  const { value, unit: written } = quantityFrom(draft, tree)
  if (written === '%') return { value, unit: '%' }
  if (written === '1' || unit === null || written === unit) return { value, unit: unit ?? written }
  const converted = convert(value, written, unit)
  return converted === null ? { value, unit: written } : { value: converted, unit }
}
