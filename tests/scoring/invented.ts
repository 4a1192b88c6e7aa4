/** An invented test read by the real reader, with trials made by hand: what scoring meets, without a runner. */
import type { ClientFacts } from '../../protocols/client.ts'
import { NOTHING_KNOWN } from '../../protocols/client.ts'
import type { Outcome, Protocol } from '../../protocols/language/model.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import type { Place } from '../../protocols/runner/events.ts'
import type { Trial } from '../../protocols/runner/view.ts'
import { type Given } from '../../protocols/scoring/build-result.ts'
import type { Standing } from '../../protocols/scoring/scope.ts'
import { type Scored, scoreAll } from '../../protocols/scoring/scores.ts'

const HEAD = `
evenhand: 1
id: ring_board
version: 1.2.0
language: en
title: Ring board
about: { purpose: Rings onto pegs., measures: [d440], minutes: [2, 5], suits: Anybody., needs: [sits] }
sources: { made_up: { cite: Invented for a test, seen: memory } }
kit: { board: { text: A board. } }
`

const STEPS = `
conditions:
  board: { set-by: kit, options: { oak: Oak, cork: Cork } }
  fill: { set-by: clinic, values: [60 s, 1 min, 90 s], usual: 60 s }
  start_event: { is: spoken_go }
lists:
  tasks:
    - { id: near, title: Near peg, weight: 2 }
    - { id: far, title: Far peg, weight: 3 }
steps:
  - for-each: hand
    in: hands
    order: [dominant-first, right-first]
    steps:
      - { position: seated, text: Sit. }
      - { instruct: explain, text: Do it. }
      - { timed: try_out, practice: true, start: { said: go }, stop: { seen: home } }
      - for-each: task
        in: tasks
        steps:
          - repeat: round
            times: 3
            steps:
              - { timed: carry, start: { said: go }, stop: { seen: home }, limit: 90 s,
                  counts-as: { limit: over 90 s, unable: { from: fill } } }
`

const SCORES = `
scores:
  - { score: fastest, title: Fastest, each: [hand, task], value: min(carry.time), unit: s, better: lower, decimals: 1 }
  - { score: total, title: Total, each: hand, value: sum(fastest), unit: s, better: lower, decimals: 1 }
  - { score: average, title: Mean, each: hand, value: mean(carry.time), unit: s, better: lower, decimals: 2 }
  - { score: enough, each: hand, value: count(given(carry.time)) >= 4, shown: false }
  - { score: typical, title: Median, each: hand, value: median(given(carry.time)), needs: enough, unit: s, better: lower, decimals: 1 }
  - { score: weighted, title: Weighted, each: [hand, task], value: fastest * task.weight, unit: s, better: none, decimals: 1 }
  - { score: far_only, title: Far, each: hand, value: "sum(carry.rows.filter(r, r.task == 'far').map(r, r.time))", unit: s, better: lower, decimals: 1 }
  - { score: turns, title: Turn, each: hand, value: hand.turn * count(carry.time), unit: "{count}", better: none, decimals: 0, shown: false }
  - { score: side_ratio, title: Ratio, value: "total[nondominant] / total[dominant]", unit: "1", better: none, decimals: 2 }
  - { score: worse, title: Worse side, value: "total[affected] - total[unaffected]", unit: s, better: none, decimals: 1 }
  - { score: speed, title: Speed, each: hand, value: 16 / total, unit: /s, better: higher, decimals: 2, range: [0, 5] }
`

export interface Written {
  readonly steps?: string
  readonly scores?: string
  readonly more?: string
  readonly files?: Readonly<Record<string, string>>
}

export function protocolOf({
  steps = STEPS,
  scores = SCORES,
  more = '',
  files = {},
}: Written = {}): Protocol {
  const texts = new Map(Object.entries({ 'protocol.yaml': HEAD + steps + scores + more, ...files }))
  const { protocol, diagnostics } = readProtocol({ label: 'invented', files: texts })
  const errors = diagnostics.filter(({ severity }) => severity === 'error')
  if (protocol === null) throw new Error(errors.map(({ line, message }) => `${line}: ${message}`).join('\n'))
  return protocol
}

let made = 0
const nextId = (): string => `00000000-0000-7000-8000-${(made++).toString(16).padStart(12, '0')}`

export interface TrialPart {
  readonly step: string
  readonly place: Place
  readonly readings?: Readonly<Record<string, number | null>>
  readonly unit?: string
  readonly outcome?: Outcome
  readonly over?: boolean
  readonly practice?: boolean
  readonly status?: Trial['status']
}

export function trialOf({
  step,
  place,
  readings = {},
  unit = 's',
  outcome = 'done',
  over = false,
  practice = false,
  status = 'standing',
}: TrialPart): Trial {
  const read = Object.entries(readings).map(([column, value]) => [
    column,
    { value, unit, over, typed: false, confirmed: false, corrected: null },
  ])
  return {
    id: nextId(),
    step,
    place,
    attempt: 1,
    practice,
    status,
    outcome: status === 'running' ? null : outcome,
    readings: Object.fromEntries(read),
    input: 'key',
    stamps: [],
    lateMs: 0,
    happenings: [],
    void: null,
    remark: '',
    at: '2026-06-15T10:00:00+02:00',
  }
}

const ARM = NOTHING_KNOWN.arms.right

export const factsOf = (facts: Partial<ClientFacts> = {}): ClientFacts => ({
  birth: { known: 'date', date: '1990-06-15' },
  sex: 'F',
  dominantBefore: 'right',
  usedNow: 'right',
  arms: { right: { ...ARM, status: 'unaffected' }, left: { ...ARM, status: 'unaffected' } },
  schoolingYears: null,
  ...facts,
})

/** Six carries a hand: near 10, 9, 11 and far 20, 19, 21 on the right; a second more each on the left. */
export function carries(
  change: (hand: string, task: string, round: number, time: number) => Partial<TrialPart> = () => ({}),
): Trial[] {
  return ['right', 'left'].flatMap((hand) =>
    ['near', 'far'].flatMap((task) =>
      [1, 2, 3].map((round) => {
        const time = (task === 'near' ? 10 : 20) + [0, -1, 1][round - 1]! + (hand === 'left' ? 1 : 0)
        return trialOf({
          step: 'carry',
          place: { hand, task, round },
          readings: { time },
          ...change(hand, task, round, time),
        })
      }),
    ),
  )
}

export const standingOf = (parts: Partial<Standing> = {}): Standing => ({
  protocol: parts.protocol ?? protocolOf(),
  trials: carries(),
  facts: factsOf(),
  conditions: { board: 'oak', fill: '60 s' },
  orders: [{ section: 'hand', place: {}, items: ['left', 'right'], rule: 'chosen' }],
  ...parts,
})

/** Scores in short: `total@left` to its value, `{ over }`, or the code of what is missing. */
export function scoresOf(standing: Standing): Readonly<Record<string, unknown>> {
  return Object.fromEntries(scoreAll(standing).map((scored) => [nameOf(scored), shortOf(scored)]))
}

export const nameOf = ({ score, place }: Scored): string =>
  [score.name, ...score.each.map((loop) => place[loop])].join('@')

export const shortOf = ({ value, over, missing }: Scored): unknown =>
  missing !== null ? missing.code : over ? { over: value } : value

export const givenOn = (on: string, parts: Partial<Given> = {}): Given => ({
  id: nextId(),
  protocol: {
    id: 'ring_board',
    version: '1.2.0',
    hash: 'ab'.repeat(32),
    language: 'en',
    wording: null,
    from: 'clinic',
  },
  on,
  startedAt: `${on}T10:00:00+02:00`,
  finishedAt: `${on}T10:05:00+02:00`,
  examiner: 'A. Examiner',
  rehearsal: false,
  deviations: [],
  corrections: [],
  clock: { resolutionMs: 0.005, isolated: true },
  ...parts,
})
