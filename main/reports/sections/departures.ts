import type { Correction, Deviation } from '../../../protocols/runner/view.ts'
import type { Result } from '../../../protocols/scoring/result.ts'
import { clockTime, plain, trialNumbers, whenWho } from '../figures.ts'
import type { ReportInput } from '../input.ts'
import { type Block, heading, lines, narrow, note, table, wide } from '../page.ts'
import { say } from '../words.ts'

/** A deviation in words: what the examiner wrote as it is, names of the protocol without underscores. */
export function deviationWords({ code, what }: Deviation): string {
  const written = code === 'told' || code === 'accommodation' || code === 'modification'
  return say(`deviation.${code}`, { what: written ? what : plain(what) })
}

function deviationsOf({ deviations }: Result): Block[] {
  if (deviations.length === 0) return [heading(say('deviations')), note(say('deviations.none'))]
  const columns = [
    wide(say('column.what')),
    wide(say('column.why')),
    narrow(say('column.norms')),
    narrow(say('column.by')),
  ]
  const rows = deviations.map((one) => [
    deviationWords(one),
    one.reason,
    say(`norms_then.${one.norms}`),
    whenWho(one),
  ])
  return [heading(say('deviations')), table(say('deviations'), columns, rows)]
}

/** What stood, or stands: another client is not named. */
const standing = ({ code }: Correction, words: string): string =>
  code === 'client' && words === '' ? say('correction.another_client') : words

function correctionsOf(result: Result): Block[] {
  if (result.corrections.length === 0) return []
  const numbers = trialNumbers(result)
  const columns = [
    narrow(say('column.what')),
    narrow(say('column.first')),
    narrow(say('column.now')),
    wide(say('column.why')),
    narrow(say('column.by')),
  ]
  const rows = result.corrections.map((one) => [
    say(`correction.${one.code}`, {
      trial: String(one.trial === null ? '' : (numbers.get(one.trial) ?? '')),
    }),
    standing(one, one.first),
    standing(one, one.now),
    one.reason,
    whenWho(one),
  ])
  return [heading(say('corrections'), say('corrections.hint')), table(say('corrections'), columns, rows)]
}

function stopsOf({ view }: ReportInput): Block[] {
  if (view.stops.length === 0) return []
  const told = view.stops.map((stop) =>
    say('stop', {
      when: whenWho(stop),
      ends: stop.ends,
      reason: stop.reason,
      pain: stop.pain ?? 'none',
      done: stop.done || 'none',
    }),
  )
  return [heading(say('stops')), ...lines(told)]
}

function pausesOf({ view: { pauses } }: ReportInput): Block[] {
  if (pauses.length === 0) return []
  const told = pauses.map(({ reason, from, to, by }) =>
    say('pause', { when: whenWho({ at: from, by }), to: to === null ? 'none' : clockTime(to), reason }),
  )
  return [heading(say('pauses')), ...lines(told)]
}

/** What rules did in the protocol's own words, and which rules and sections did nothing for lack of an answer. */
function rulesOf({ view: { rules } }: ReportInput): Block[] {
  const told = rules.map(({ rule, place, did, text }) => {
    if (did !== 'nothing') return did === 'asked' ? '' : text
    const { hand } = place
    return say('rule.nothing', {
      what: plain(rule),
      hand: hand === 'right' || hand === 'left' ? hand : 'none',
    })
  })
  const words = [...new Set(told.filter((each) => each !== ''))]
  return words.length === 0 ? [] : [heading(say('rules')), ...lines(words)]
}

/** What went otherwise than the protocol says, what was put right, and what was remarked. */
export function departuresOf(input: ReportInput): Block[] {
  const remarks = input.view.remarks.map((one) => say('remark', { text: one.text, when: whenWho(one) }))
  return [
    ...deviationsOf(input.result),
    ...rulesOf(input),
    ...stopsOf(input),
    ...pausesOf(input),
    ...correctionsOf(input.result),
    ...(remarks.length ? [heading(say('remarks')), ...lines(remarks)] : []),
  ]
}
