export interface NumberRange {
  readonly least: number
  readonly most: number
  readonly isWhole?: boolean
}

export type NumberRead =
  | { readonly number: number | null }
  | { readonly problem: 'text' | 'whole' | 'range'; readonly least: number; readonly most: number }

/** What a person typed, as a number: a comma counts as the decimal point, nothing typed is null. */
export function readNumber(typed: string, { least, most, isWhole = false }: NumberRange): NumberRead {
  const text = typed.trim().replace(',', '.')
  if (text === '') return { number: null }
  if (!/^[+-]?(\d+(\.\d*)?|\.\d+)$/.test(text)) return { problem: 'text', least, most }
  const number = Number(text)
  if (isWhole && !Number.isInteger(number)) return { problem: 'whole', least, most }
  return number < least || number > most ? { problem: 'range', least, most } : { number }
}
