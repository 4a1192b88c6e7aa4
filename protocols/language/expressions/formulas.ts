import type { Formula } from './formula.ts'

const files = import.meta.glob<{ default: Formula }>('./functions/*.ts', { eager: true })

/** The functions of the language by name: one file each in `functions/`. */
export const FORMULAS: ReadonlyMap<string, Formula> = new Map(
  Object.values(files).map(({ default: formula }) => [formula.name, formula]),
)
