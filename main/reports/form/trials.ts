/** The cells of a paper form: a row for each pass, a column for each reading of each hand. */
import { SIDES } from '../../../protocols/client.ts'
import type { Node, Protocol, Section, Step } from '../../../protocols/language/model.ts'
import { isTrial } from '../../../protocols/runner/due.ts'
import type { Expression } from '../../../protocols/language/expressions/types.ts'
import { passesOf } from '../../../protocols/language/passes.ts'
import { SECTION_KINDS } from '../../../protocols/language/schema/kinds.ts'
import { listed, plain, unitWords } from '../figures.ts'
import { type Block, part } from '../page.ts'
import { say } from '../words.ts'
import { type FormGround, isOverHands } from './ground.ts'
import { type PassOnPaper, passesOnPaper } from './passes-on-paper.ts'
import { choicesOf, readingsOf } from './step-facts.ts'

/** Steps that are given under the same loops and conditions: one table. */
interface Together {
  readonly loops: readonly Section[]
  readonly gates: readonly Gate[]
  readonly steps: readonly Step[]
}

/** What has to hold, or not to hold, for a case of a choice to be given. */
interface Gate {
  readonly when: Expression
  readonly is: boolean
}

interface Column {
  readonly text: string
  /** Signs to circle; none: a value is written. */
  readonly choices: readonly string[]
}

/** More columns of readings than these make cells too narrow to write in. */
const MOST_COLUMNS = 6
/** More signs than these don't stand side by side in a cell. */
const MOST_SIGNS = 5

/** The gates of each case: its own condition holds, and none of those before it does. */
function gatesOf({ fields }: Section, which: string): readonly Gate[] {
  const { cases = [] } = fields as {
    readonly cases?: readonly { readonly when: Expression; readonly name: string }[]
  }
  const at = cases.findIndex(({ name }) => name === which)
  const before = cases.slice(0, at < 0 ? cases.length : at).map(({ when }) => ({ when, is: false }))
  const own = cases[at]
  return own ? [...before, { when: own.when, is: true }] : before
}

type Found = Pick<Together, 'loops' | 'gates'> & { readonly step: Step }

function trialsIn(protocol: Protocol): readonly Found[] {
  const found: Found[] = []
  const walk = (nodes: readonly Node[], around: Pick<Together, 'loops' | 'gates'>): void => {
    for (const node of nodes) {
      if (node.node === 'step' && isTrial(node)) found.push({ step: node, ...around })
      if (node.node !== 'section') continue
      const loops = passesOf(node, protocol.draws) ? [...around.loops, node] : around.loops
      for (const inner of node.steps)
        walk([inner], { loops, gates: [...around.gates, ...gatesOf(node, inner.name)] })
    }
  }
  walk(protocol.steps, { loops: [], gates: [] })
  return found
}

function togetherOf({ protocol }: FormGround): readonly Together[] {
  const alike = Map.groupBy(trialsIn(protocol), ({ loops, gates }) =>
    JSON.stringify([
      loopsKept(loops).map(({ name }) => name),
      gates.map(({ when, is }) => [when.source, is]),
    ]),
  )
  return [...alike.values()].map((these) => ({
    loops: loopsKept(these[0]?.loops ?? []),
    gates: these[0]?.gates ?? [],
    steps: these.map(({ step }) => step),
  }))
}

/** The passes for which all that is known beforehand lets these steps be given. */
const passesFor = (ground: FormGround, { gates }: Together, loops: readonly Section[]) =>
  passesOnPaper(ground, loops).filter(({ place }) =>
    gates.every(({ when, is }) => ground.holds(when, place) !== !is),
  )

const isLadder = (section: Section): boolean => Boolean(SECTION_KINDS.get(section.kind)?.found)

/** What comes within a level is written into the level's cell, so loops end there. */
function loopsKept(loops: readonly Section[]): readonly Section[] {
  const ladder = loops.findIndex(isLadder)
  return ladder < 0 ? loops : loops.slice(0, ladder + 1)
}

function columnsOf(ground: FormGround, { steps, loops }: Together): readonly Column[] {
  return steps.flatMap((step) => {
    const signs = choicesOf(ground, step, loops).map(({ sign }) => sign)
    return readingsOf(step).map(({ column, unit }, index) => ({
      text: say('form.column', {
        name: plain(index === 0 ? step.name : column),
        unit: unitWords(unit) || 'none',
        choices: index === 0 && signs.length > 0 ? 'yes' : 'no',
      }),
      choices: index === 0 && signs.length <= MOST_SIGNS ? signs : [],
    }))
  })
}

/** What the signs mean, a line for each step that has some. */
const signsOf = (ground: FormGround, { steps, loops }: Together): readonly string[] =>
  steps.flatMap((step) => {
    const choices = choicesOf(ground, step, loops)
    if (choices.length === 0) return []
    const told = choices.map(({ sign, words }) => say('form.choice', { sign, words }))
    return [say('form.signs', { name: plain(step.name), choices: told.join('; ') })]
  })

/** Rows with what changes seldom as a heading above what changes with each row. */
function rowsOf(passes: readonly PassOnPaper[], fallback: string) {
  let last: string | null = null
  return passes.map(({ labels }) => {
    const above = labels.slice(0, -1).join(', ')
    const isNew = above !== '' && above !== last
    last = above
    return { heading: isNew ? above : null, label: labels.at(-1) ?? fallback }
  })
}

const closingsWords = (): readonly string[] => say('form.closing_signs').split(' ')

function plainCells(ground: FormGround, these: Together, byHand: boolean): Block[] {
  const columns = columnsOf(ground, these)
  const rows = rowsOf(passesFor(ground, these, these.loops), say('form.trial'))
  const hands = byHand ? SIDES.map((hand) => say('where.hand', { hand })) : ['']
  const cells = (titles: readonly string[], some: readonly Column[]): Block => ({
    block: 'cells',
    caption: titleOf(these),
    label: '',
    groups: titles.map((title) => ({ title, columns: some })),
    signs: signsOf(ground, these),
    closings: closingsWords(),
    rows,
  })
  if (columns.length * hands.length <= MOST_COLUMNS) return [cells(hands, columns)]
  const parts = Array.from({ length: Math.ceil(columns.length / MOST_COLUMNS) }, (_, index) =>
    columns.slice(index * MOST_COLUMNS, (index + 1) * MOST_COLUMNS),
  )
  return hands.flatMap((hand) => parts.map((some) => cells([hand], some)))
}

/** A level's name as short as its list has it: its first property, such as a marking or a size. */
function levelWords({ protocol, item }: FormGround, list: string, id: string): string {
  const [first] = Object.values(protocol.lists[list]?.find((one) => one.id === id)?.properties ?? {})
  if (typeof first === 'number' || typeof first === 'string') return String(first)
  return typeof first === 'object' ? String(first.value) : item(list, id)
}

function ladderCells(ground: FormGround, these: Together, ladder: Section, byHand: boolean): Block[] {
  const passes = passesFor(ground, these, these.loops.slice(0, -1))
  const hands = byHand ? SIDES.map((hand) => say('where.hand', { hand })) : ['']
  const list = passesOf(ladder, ground.protocol.draws)?.list ?? ''
  const levels = (ground.protocol.lists[list] ?? []).map(({ id }) => ({
    text: levelWords(ground, list, id),
    choices: [],
  }))
  return [
    {
      block: 'cells',
      caption: titleOf(these),
      label: '',
      groups: [
        {
          title: say('form.levels', { level: plain(String(ladder.fields['level'])) }),
          columns: [...levels, { text: say('form.found'), choices: [] }],
        },
      ],
      signs: signsOf(ground, these),
      closings: closingsWords(),
      rows: hands.flatMap((hand) =>
        passes.map(({ labels }, index) => ({
          heading: index === 0 && labels.length && hand ? hand : null,
          label: labels.length ? listed(labels) : hand,
        })),
      ),
    },
  ]
}

const titleOf = ({ steps }: Together): string => listed(steps.map(({ name }) => plain(name)))

export function trialBlocks(ground: FormGround): Block[] {
  return togetherOf(ground).flatMap((these) => {
    const byHand = these.loops.some((section) => isOverHands(ground.protocol, section))
    const ladder = these.loops.at(-1)
    const cells =
      ladder && isLadder(ladder)
        ? ladderCells(ground, these, ladder, byHand)
        : plainCells(ground, these, byHand)
    return [part(titleOf(these)), ...cells]
  })
}
