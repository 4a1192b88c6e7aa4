/** How each test of the library is given at the desk: clients and seeds by which its rules come to act. */
import type { Manner } from './examiner.ts'
import type { Does } from './made-up-client.ts'

export interface Plan {
  readonly seed: number
  readonly does: Does
  readonly manner: Manner
  /** Conditions that aren't as they usually are, by option. */
  readonly conditions: Readonly<Record<string, string>>
  /** True where windows and rests take real time: then a copy with short ones is given. */
  readonly isShort: boolean
  /** Rules of the protocol that act on the way, by ending, crediting or noting something. */
  readonly rules: readonly string[]
}

const PLAIN: Plan = { seed: 1, does: () => undefined, manner: {}, conditions: {}, isShort: false, rules: [] }

/** 3 on the hardest item of each part with the right arm; with the left one 0, and 0 against 1, and nothing skipped. */
const arms: Does = ({ name, place }) => {
  if (name === 'did') return 0.1
  if (place['hand'] === 'right') return 0.99
  const grades: Readonly<Record<string, number>> = {
    cube_10: 0,
    cube_2: 0,
    pour: 0.4,
    tube_thick: 0,
    bearing_ring: 0.4,
    behind_head: 0,
    on_head: 0,
  }
  return grades[String(place['task'])] ?? 0.6
}

/** Full reflexes and synergies; one movement is tried again, and one out of synergy is not whole. */
const movements: Does = ({ name, place, turn }) => {
  if (name === 'more') return turn === 0 && place['move'] === 'inward' ? 0 : 0.99
  if (name !== 'graded') return undefined
  if (place['move'] === 'inward') return 0.4
  return place['move'] === 'flexion_180' ? 0.4 : 0.99
}

/** The injured hand doesn't get to the end. */
const pegs: Does = ({ name, place }) => (name === 'run' && place['hand'] === 'left' ? 1 : undefined)

/** The first try of the first hand isn't understood. */
const taps: Does = ({ name, place }) => {
  if (name !== 'understood') return undefined
  return place['hand'] === 'right' && place['warm_up'] === 1 ? 0.99 : 0
}

/** Sound on the right; on the left one site feels only the heaviest, one nothing, and waits are answered too. */
const touches: Does = ({ name, place }) => {
  if (name === 'blank') return place['hand'] === 'left' ? 0.99 : 0
  if (place['hand'] === 'right' || place['site'] === 'thumb') return 0
  return place['filament'] === 'f665' && place['site'] === 'index' ? 0 : 0.99
}

/** On the right two points are told apart from 5 and 8 mm on; elsewhere nothing is felt, or one point is called two. */
const points: Does = ({ place }) => {
  if (place['hand'] === 'left' || place['site'] === 'middle') return 0.99
  if (place['site'] === 'index') return 0.5
  const isTwo = (place['touch'] ?? place['touch_moving']) === 'two'
  const isWide = place['spacing'] === 'g5' || place['stride'] === 'g8'
  return isTwo && isWide ? 0.5 : 0
}

/** Broken skin. */
const closedSites: NonNullable<Manner['closes']> = ({ name, place }) => {
  if (name !== 'at_site') return null
  const given = place['hand'] === 'right' ? ['thumb', 'index', 'middle'] : ['thumb']
  return given.includes(String(place['site'])) ? null : 'site'
}

/** The wrist of both sides, active and passive. */
const wrist: Does = ({ name, place }) => {
  if (name === 'wanted') return place['region'] === 'wrist' ? 0.99 : 0
  return name === 'finger_wanted' ? 0 : undefined
}

const PLANS: Readonly<Record<string, Partial<Plan>>> = {
  action_research_arm: {
    does: arms,
    manner: { voids: [1] },
    rules: ['full_credit', 'no_credit', 'odd_pattern'],
  },
  box_and_block: { isShort: true },
  finger_tapping: { does: taps, isShort: true },
  fugl_meyer_upper: { does: movements, rules: ['gate'] },
  functional_dexterity: { does: pegs, manner: { voids: [1], tallies: [2] }, rules: ['past_55'] },
  grip_strength: { isShort: true },
  pinch_strength: { isShort: true },
  range_of_motion: { does: wrist },
  touch_threshold: { does: touches, rules: ['at_lightest', 'unreliable'] },
  two_point_discrimination: {
    does: points,
    manner: { closes: closedSites },
    rules: ['no_touch', 'unreliable', 'no_touch_moving', 'unreliable_moving'],
  },
  wolf_motor_function: { does: ({ name }) => (name === 'did' ? 0.03 : undefined), isShort: true },
}

export const planOf = (id: string): Plan => ({ ...PLAIN, ...PLANS[id] })
