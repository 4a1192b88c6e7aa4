/** What may be done now, as the chart says. */
import { type Administration, canUndo } from './administration.ts'
import { phaseOf, possible } from './refusals.ts'
import type { AdministrationView } from './view.ts'

/** Each event that the chart has a way for, once; the host's and the clock's own are left out. */
export function offersOf(administration: Administration): AdministrationView['offers'] {
  const { snapshot } = administration
  const offers = new Map<string, AdministrationView['offers'][number]>()
  for (const { event, law } of possible(snapshot)) {
    if (law.automatic) continue
    const open = !(law.waits?.(snapshot.context) ?? false)
    const before = offers.get(event)
    offers.set(event, {
      event,
      open: open || (before?.open ?? false),
      main: (law.main ?? false) || (before?.main ?? false),
    })
  }
  if (phaseOf(snapshot) !== 'unopened') {
    offers.set('undone', { event: 'undone', open: canUndo(administration), main: false })
  }
  return [...offers.values()]
}
