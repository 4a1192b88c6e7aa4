/** Values, formulas and variants of a protocol in words. */
import type { Expression } from '../../../protocols/language/expressions/types.ts'
import type { From, Quantity } from '../../../protocols/language/model.ts'
import { amount, plain } from '../figures.ts'
import { say } from '../words.ts'
import type { FormGround } from './ground.ts'
import type { Variant } from './variants.ts'

/** At most this many digits after the point: as the file has it, without the noise of doubles. */
const DIGITS = 4

const decimalsOf = (value: number): number =>
  Number(value.toFixed(DIGITS)).toString().split('.')[1]?.length ?? 0

export const quantityWords = ({ value, unit }: Quantity): string => amount(value, decimalsOf(value), unit)

/** A formula as the file has it. */
export const formulaWords = (expression: Expression): string =>
  say('form.formula', { formula: expression.source.replace(/\s+/g, ' ').trim() })

/** `unit`: what a bare number is in, such as seconds. */
export function valueWords(
  ground: FormGround,
  from: From<Quantity> | From<number>,
  unit: string | null,
): string {
  const found = ground.value(from)
  if (found) {
    const told = quantityWords(found.unit === '1' && unit !== null ? { ...found, unit } : found)
    return 'from' in from
      ? say('form.usually', { value: told, by: from.from.reads.map(plain).join(', ') })
      : told
  }
  return 'from' in from ? formulaWords(from.from) : ''
}

/** Words with whom they are for before them. */
export const variantWords = ({ label, words }: Variant): string =>
  label === null ? words : say('form.labelled', { label, words })
