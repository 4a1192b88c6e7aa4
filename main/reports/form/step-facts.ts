/** What a step says beside its text, by the keys that its kind declares: nothing here asks which kind it is. */
import type { Expression } from '../../../protocols/language/expressions/types.ts'
import type { From, Quantity, Section, Step, Text } from '../../../protocols/language/model.ts'
import { STEP_KINDS } from '../../../protocols/language/schema/kinds.ts'
import type { Cue, StepKind } from '../../../protocols/steps/kind.ts'
import { listed, plain, unitWords } from '../figures.ts'
import { hasWords, say } from '../words.ts'
import type { FormGround } from './ground.ts'
import { formulaWords, quantityWords, valueWords, variantWords } from './told.ts'
import { variantsOf } from './variants.ts'

/** A choice that can be marked on paper. */
export interface Choice {
  readonly sign: string
  readonly words: string
}

const LETTERS = 'abcdefghijklmnopqrstuvwxyz'

/** Maps of texts in a step's fields, by the key that holds them. */
function textMaps(
  step: Step,
  kind: StepKind,
): readonly (readonly [string, Readonly<Record<string, Text>>])[] {
  return kind.texts.flatMap((path) => {
    const [key = '', each, inner] = path.split('.')
    const held = step.fields[key]
    if (each !== '*' || typeof held !== 'object' || held === null) return []
    const texts = Object.entries(held as Record<string, unknown>).flatMap(([name, one]) => {
      const text = inner === undefined ? one : (one as Record<string, unknown>)[inner]
      return text ? [[name, text as Text] as const] : []
    })
    return [[key, Object.fromEntries(texts)] as const]
  })
}

/** The readings of a step that are taken by hand, and the words that the file has for them. */
export function readingsOf(
  step: Step,
): readonly { readonly column: string; readonly unit: string | null; readonly text: Text | null }[] {
  const kind = STEP_KINDS.get(step.kind)
  if (!kind) return []
  const columns = Object.entries(kind.columns(step))
  const own = new Map(textMaps(step, kind).flatMap(([, texts]) => Object.entries(texts)))
  return columns
    .filter(([name], index) => index === 0 || own.has(name))
    .map(([column, type]) => ({
      column,
      unit: type.is === 'number' ? type.unit : null,
      text: own.get(column) ?? null,
    }))
}

/** What can be marked for the first reading: grades by their number, options by a letter. */
export function choicesOf(ground: FormGround, step: Step, around: readonly Section[]): readonly Choice[] {
  const kind = STEP_KINDS.get(step.kind)
  const columns = Object.keys(kind?.columns(step) ?? {})
  const maps = kind
    ? textMaps(step, kind).filter(([, texts]) => !Object.keys(texts).some((name) => columns.includes(name)))
    : []
  return maps.flatMap(([, texts]) =>
    Object.entries(texts).map(([name, text], index) => ({
      sign: /^\d+$/.test(name) ? name : (LETTERS[index] ?? name),
      words: variantsOf(ground, text, around).map(variantWords).join(' / '),
    })),
  )
}

const cueWords = (ground: FormGround, key: string, cue: Cue, around: readonly Section[]): readonly string[] =>
  variantsOf(ground, cue.text, around).map((variant) =>
    say('form.cue', { key, by: cue.by ?? 'other', words: variantWords(variant) }),
  )

function cuesOf(
  ground: FormGround,
  step: Step,
  kind: StepKind,
  around: readonly Section[],
): readonly string[] {
  return kind.cues.flatMap((key) => {
    const cue = step.fields[key] as Cue | undefined
    return cue ? cueWords(ground, key, cue, around) : []
  })
}

function valuesOf(ground: FormGround, step: Step, kind: StepKind): readonly string[] {
  return Object.entries(kind.values).flatMap(([key, is]) => {
    const from = step.fields[key] as From<Quantity> | From<number> | undefined
    const word = `form.value.${key}`
    if (!from || !hasWords(word)) return []
    return [say(word, { value: valueWords(ground, from, is === 'time' ? 's' : null) })]
  })
}

function formulasOf(step: Step, kind: StepKind): readonly string[] {
  return Object.keys(kind.formulas ?? {}).flatMap((key) => {
    const formula = step.fields[key] as Expression | undefined
    const word = `form.formula_of.${key}`
    return formula && hasWords(word) ? [say(word, { formula: formulaWords(formula) })] : []
  })
}

function countsAsWords(ground: FormGround, step: Step): readonly string[] {
  return Object.entries(step.countsAs).map(([outcome, { value, over }]) => {
    const word = `missing.${outcome}`
    return say('form.counts_as', {
      outcome: hasWords(word) ? say(word) : plain(outcome),
      value: valueWords(ground, value, null),
      over: over ? 'yes' : 'no',
    })
  })
}

/** The pieces of the kit that a step names. */
function piecesOf({ protocol, words }: FormGround, step: Step): readonly string[] {
  const named = step.fields['of']
  if (!Array.isArray(named)) return []
  const pieces = protocol.kit.filter(({ id }) => named.includes(id)).map(({ text }) => words(text))
  return [say('form.pieces', { pieces: listed(pieces) })]
}

function rangeOf(step: Step, kind: StepKind): readonly string[] {
  const range = step.fields['range']
  if (!Array.isArray(range)) return []
  const [column] = Object.values(kind.columns(step))
  const unit = column?.is === 'number' ? (column.unit ?? '1') : '1'
  const [low, high] = range.map((value: number) => quantityWords({ value, unit: '1' }))
  return [say('form.range', { low: low ?? '', high: high ?? '', unit: unitWords(unit) || 'none' })]
}

/** Lines about a step, in the order in which they are needed. */
export function stepFacts(ground: FormGround, step: Step, around: readonly Section[]): readonly string[] {
  const kind = STEP_KINDS.get(step.kind)
  if (!kind) return []
  const choices = choicesOf(ground, step, around).map(({ sign, words }) =>
    say('form.choice', { sign, words }),
  )
  const own = readingsOf(step).flatMap(({ column, text }) =>
    text ? [say('form.reading', { column: plain(column), words: ground.words(text) })] : [],
  )
  const may = step.maySay.flatMap((text) => variantsOf(ground, text, around).map(variantWords))
  return [
    ...piecesOf(ground, step),
    ...cuesOf(ground, step, kind, around),
    ...own,
    ...choices,
    ...valuesOf(ground, step, kind),
    ...rangeOf(step, kind),
    ...(step.voids === null ? [] : [say('form.voids', { voids: step.voids })]),
    ...formulasOf(step, kind),
    ...countsAsWords(ground, step),
    ...(may.length
      ? [say('form.may_say', { words: may.map((one) => say('form.quoted', { words: one })).join(' ') })]
      : []),
  ]
}
