import type { StepMoment } from '../../runner/moment.ts'
import type { RehearsedEvent } from '../kind.ts'
import { limitOf } from './chart.ts'
import { mostOf, namesReached, toldOf } from './reached.ts'
import { splitsIn } from './splits.ts'

const between = (random: () => number, low: number, high: number): number => low + random() * (high - low)

const data: RehearsedEvent['data'] = (stamp) => ({ stamp })

/** An unhurried examiner and a client who needs a plausible part of the limit, or 14 to 34 s. */
export function rehearse(moment: StepMoment, random: () => number): RehearsedEvent | null {
  switch (moment.state) {
    case 'waiting':
      return { event: 'armed', after: between(random, 2500, 8000), data }
    case 'armed':
      return { event: 'started', after: between(random, 1200, 4000), data }
    case 'running': {
      const next = splitsIn(moment).find(({ seconds }) => seconds === null)
      if (next !== undefined) {
        return {
          event: 'split',
          after: between(random, 1200, 2500),
          data: (stamp) => ({ what: next.name, stamp }),
        }
      }
      const limit = limitOf(moment)
      const longest = limit === null ? 34 : Math.min(34, limit * 0.95)
      return { event: 'stopped', after: 1000 * between(random, longest * 0.4, longest), data }
    }
    case 'asked': {
      const what = namesReached(moment).find((name) => toldOf(moment, name) === null) ?? ''
      const count = Math.floor(random() * (mostOf(moment, what) ?? 1))
      return { event: 'reached', after: between(random, 2500, 6000), data: () => ({ what, count }) }
    }
    case 'stopped':
      return { event: 'kept', after: between(random, 1500, 4000), data }
    default:
      return null
  }
}
