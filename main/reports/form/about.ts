/** What an examiner reads before the first step, and what the result is made of. */
import { listed, plain, unitWords } from '../figures.ts'
import { type Block, heading, lines, narrow, table, wide } from '../page.ts'
import { say } from '../words.ts'
import type { FormGround } from './ground.ts'
import { formulaWords, quantityWords } from './told.ts'

export function purposeOf({ protocol: { about }, words }: FormGround): Block[] {
  const { floor, ceiling } = about
  return [
    heading(say('form.purpose')),
    ...lines([
      words(about.purpose),
      say('form.suits', { words: words(about.suits) }),
      ...(floor ? [say('form.floor', { words: words(floor) })] : []),
      ...(ceiling ? [say('form.ceiling', { words: words(ceiling) })] : []),
    ]),
  ]
}

export function precautionsOfForm({ protocol, words }: FormGround): Block[] {
  const told = protocol.precautions.map(({ ask, why }) =>
    [words(ask), ...(why ? [words(why)] : [])].join(' '),
  )
  return told.length ? [heading(say('form.precautions'), say('form.precautions.hint')), ...lines(told)] : []
}

export function kitOf({ protocol, words }: FormGround): Block[] {
  const rows = protocol.kit.map(({ text, check }) => [words(text), check ? words(check) : ''])
  return rows.length
    ? [
        heading(say('form.kit')),
        table(say('form.kit'), [narrow(say('form.piece')), wide(say('form.check'))], rows),
      ]
    : []
}

export function happeningsOf({ protocol, words }: FormGround): Block[] {
  const rows = protocol.happenings.map(({ seen, do: what, becomes, adds }) => [
    words(seen),
    what ? words(what) : '',
    say('form.becomes', { becomes, adds: adds ? quantityWords(adds) : 'none' }),
  ])
  if (rows.length === 0) return []
  const columns = [wide(say('form.seen')), wide(say('form.do')), narrow(say('form.then'))]
  return [
    heading(say('form.happenings'), say('form.happenings.hint')),
    table(say('form.happenings'), columns, rows),
  ]
}

export function allowedOf({ protocol, words }: FormGround): Block[] {
  const told = protocol.accommodations.map(({ text }) => words(text))
  return told.length ? [heading(say('form.allowed')), ...lines(told)] : []
}

export function scoresOf({ protocol, words }: FormGround): Block[] {
  const rows = protocol.scores
    .filter(({ shown }) => shown)
    .map(({ title, each, value, needs, unit, better }) => [
      words(title),
      [
        formulaWords(value),
        ...(needs ? [say('form.needs', { formula: formulaWords(needs) })] : []),
        ...(each.length ? [say('form.for_each', { loops: listed(each.map(plain)) })] : []),
      ].join('; '),
      say('form.unit', { unit: unitWords(unit) || 'none', better }),
    ])
  const helpers = protocol.scores
    .filter(({ shown }) => !shown)
    .map(({ name, title, value }) =>
      say('form.helper', { name, title: words(title), formula: formulaWords(value) }),
    )
  if (rows.length === 0) return []
  const columns = [wide(say('form.score')), wide(say('form.worked_out')), narrow(say('form.unit_head'))]
  return [heading(say('form.scores')), table(say('form.scores'), columns, rows), ...lines(helpers, true)]
}

export function cautionsOfForm({ protocol, words }: FormGround): Block[] {
  const told = protocol.cautions.map((text) => words(text))
  return told.length ? [heading(say('cautions')), ...lines(told, true)] : []
}

export function sourcesOfForm({ protocol }: FormGround): Block[] {
  const told = protocol.sources.map(({ cite, seen }, index) =>
    say('source', {
      reference: say('reference', { number: String(index + 1) }),
      cite: cite.trim().replace(/\.$/, ''),
      seen,
    }),
  )
  return told.length ? [heading(say('sources')), ...lines(told, true)] : []
}
