/** The blank form: who, when and how; a cell for each reading by hand and pass; boxes for what happens. */
import { SIDES } from '../../../protocols/client.ts'
import type { Node } from '../../../protocols/language/model.ts'
import { plain } from '../figures.ts'
import { type Block, heading, note, part } from '../page.ts'
import { say } from '../words.ts'
import { type FormGround, isOverHands } from './ground.ts'
import { quantityWords } from './told.ts'
import { trialBlocks } from './trials.ts'

const WHO = [
  'client',
  'number',
  'born',
  'date',
  'examiner',
  'dominant',
  'affected',
  'first',
  'pain',
  'clinic',
] as const

function conditionBlock({ protocol, option }: FormGround): Block[] {
  const open = protocol.conditions.filter(({ setBy }) => setBy !== 'file')
  const rows = open.map(({ name, options, usual }) => ({
    label: plain(name),
    options: options.map(({ id }) =>
      say('form.option', { option: option(name, id), usual: id === usual ? 'yes' : 'no' }),
    ),
  }))
  const pieces = protocol.kit.filter(({ registered }) => registered).length
  return [
    part(say('conditions')),
    ...(rows.length ? [{ block: 'ticks' as const, rows }] : []),
    {
      block: 'blanks',
      labels: [...(pieces ? [say('form.blank.kit')] : []), say('form.blank.circumstances')],
    },
  ]
}

function precautionBlock({ protocol, words }: FormGround): Block[] {
  if (protocol.precautions.length === 0) return []
  const answers = ['not_present', 'cleared', 'not_given'] as const
  return [
    part(say('precautions')),
    {
      block: 'ticks',
      rows: protocol.precautions.map(({ ask }) => ({
        label: words(ask),
        options: answers.map((answer) => say(`form.precaution.${answer}`)),
      })),
    },
  ]
}

/** The columns of a table that is by hand; one where no step is. */
function hands({ protocol }: FormGround): readonly string[] {
  const isByHand = (node: Node): boolean =>
    node.node === 'section' && (isOverHands(protocol, node) || node.steps.some(isByHand))
  return protocol.steps.some(isByHand) ? SIDES.map((hand) => say('where.hand', { hand })) : ['']
}

/** Strokes for what is tallied, and for the rest of what may happen. */
function tallyBlock(ground: FormGround): Block[] {
  const { protocol, words } = ground
  const tallied = protocol.happenings.filter(({ becomes }) => becomes === 'tally')
  if (tallied.length === 0) return []
  return [
    part(say('form.tallies')),
    {
      block: 'cells',
      caption: say('form.tallies'),
      label: say('form.seen'),
      groups: hands(ground).map((title) => ({
        title,
        columns: [{ text: say('form.strokes'), choices: [] }],
      })),
      signs: [],
      closings: [],
      rows: tallied.map(({ seen, adds }) => ({
        heading: null,
        label: say('form.tally', { seen: words(seen), adds: adds ? quantityWords(adds) : 'none' }),
      })),
    },
  ]
}

function scoreBlock(ground: FormGround): Block[] {
  const { protocol, words } = ground
  const shown = protocol.scores.filter((score) => score.shown)
  if (shown.length === 0) return []
  return [
    part(say('form.scores')),
    {
      block: 'cells',
      caption: say('form.scores'),
      label: say('form.score'),
      groups: hands(ground).map((title) => ({ title, columns: [{ text: say('form.value'), choices: [] }] })),
      signs: [],
      closings: [],
      rows: shown.map(({ title }) => ({ heading: null, label: words(title) })),
    },
  ]
}

/** Whoever grades, by name: it may be another one than the examiner. */
const raterLabels = ({ protocol, item }: FormGround): readonly string[] =>
  protocol.raters === null ? [] : (protocol.lists['raters'] ?? []).map(({ id }) => item('raters', id))

export function blankOf(ground: FormGround): Block[] {
  return [
    { block: 'new-page' },
    heading(say('form.blank')),
    { block: 'blanks', labels: [...WHO.map((one) => say(`form.blank.${one}`)), ...raterLabels(ground)] },
    ...precautionBlock(ground),
    ...conditionBlock(ground),
    heading(say('form.trials')),
    note(say('form.closings')),
    ...trialBlocks(ground),
    ...tallyBlock(ground),
    ...scoreBlock(ground),
    part(say('form.remarks')),
    { block: 'room', lines: 6 },
  ]
}
