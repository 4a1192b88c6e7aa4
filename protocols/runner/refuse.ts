import type { Refusal } from './view.ts'

/** A refusal by its code, with the values that the sentence for it needs. */
export const refuse = (refused: string, detail: Refusal['detail'] = {}): Refusal => ({ refused, detail })
