import type { Check } from '../check.ts'

/**
 * What it does: A condition that the kit sets has a piece of kit that clinics register.
 *
 * Why it matters: Its value is read from the registered piece; without one nobody is asked, and it stays
 * unknown.
 *
 * Example:
 *     kit: { board: { text: Board } } … build: { set-by: kit, options: … }
 *
 * Instead:
 *     kit: { board: { text: Board, registered: true } } … build: { set-by: kit, options: … }
 */
export default {
  code: 'kit_condition_unregistered',
  severity: 'warning',
  needs: ['kit', 'conditions'],
  *run({ draft }) {
    if (draft.kit.some(({ registered }) => registered)) return
    for (const condition of draft.conditions) {
      if (condition.setBy !== 'kit') continue
      yield {
        at: condition.at,
        message: `"${condition.name}" is set by the kit, and no piece of it is registered.`,
        mend: 'Add registered: true to the piece that tells it, or let the clinic set it.',
      }
    }
  },
} satisfies Check
