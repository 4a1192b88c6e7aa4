/** The steps of a protocol as they are read one after the other, what is around them set in. */
import type { Expression } from '../../../protocols/language/expressions/types.ts'
import type { From, Node, Rule, Section, Step } from '../../../protocols/language/model.ts'
import { passesOf } from '../../../protocols/language/passes.ts'
import { listed, plain } from '../figures.ts'
import { type Block, heading } from '../page.ts'
import { hasWords, say } from '../words.ts'
import { type FormGround, isOverHands } from './ground.ts'
import { stepFacts } from './step-facts.ts'
import { formulaWords, valueWords } from './told.ts'
import { type Variant, variantsOf } from './variants.ts'

/** Deeper than this nothing is set in further: a column of words needs its width. */
const DEEPEST = 5

interface Standing {
  readonly around: readonly Section[]
  readonly depth: number
  readonly told: Told
}

const within = ({ around, depth, told }: Standing, section: Section | null): Standing => ({
  told,
  around: section ? [...around, section] : around,
  depth: Math.min(depth + 1, DEEPEST),
})

/** What has to hold for each case of a choice, by the case's name; null where a section isn't one. */
function casesOf({ fields, steps }: Section): ReadonlyMap<string, string> | null {
  const { cases } = fields as {
    readonly cases?: readonly { readonly when: Expression; readonly name: string }[]
  }
  if (cases === undefined) return null
  const told = new Map(
    cases.map(({ when, name }) => [name, say('form.only_if', { formula: formulaWords(when) })]),
  )
  return new Map(steps.map(({ name }) => [name, told.get(name) ?? say('form.otherwise')]))
}

/** Expressions and values of a section in the order in which they matter, by the keys that hold them. */
const FORMULAS = ['where', 'until', 'accepted'] as const

function timesWords(ground: FormGround, times: unknown): readonly string[] {
  if (typeof times !== 'object' || times === null) return []
  if (!('least' in times))
    return [say('form.times', { times: valueWords(ground, times as From<number>, null) })]
  const { least, most } = times as { readonly least: From<number>; readonly most: From<number> }
  const [low, high] = [valueWords(ground, least, null), valueWords(ground, most, null)]
  return [say('form.times_between', { low, high })]
}

function orderWords(order: unknown): readonly string[] {
  const orders = Array.isArray(order) ? order.map(String) : typeof order === 'string' ? [order] : []
  const told = orders.map((one) => {
    const word = `order.${one}`
    return hasWords(word) ? say(word) : plain(one)
  })
  return told.length ? [say('form.order', { orders: told.join('; ') })] : []
}

/** What a ladder looks for, where it isn't the first of its list that is accepted. */
const GREATEST = 'greatest-accepted'

function ladderWords({ item }: FormGround, section: Section, list: string): readonly string[] {
  const { begin, moves, finds } = section.fields as {
    readonly begin?: string | { readonly from: Expression }
    readonly moves?: { readonly accepted: string; readonly failed: string }
    readonly finds?: string
  }
  if (begin === undefined || moves === undefined || finds === undefined) return []
  const from = typeof begin === 'string' ? item(list, begin) : formulaWords(begin.from)
  return [say('form.ladder', { begin: from, ...moves, last: finds === GREATEST ? 'yes' : 'no' })]
}

/** The items that a loop goes through; of a drawn list how often each comes. */
function itemsWords({ protocol, item }: FormGround, list: string): string {
  const draw = protocol.draws[list]
  const items = (protocol.lists[list] ?? []).map(({ id }) =>
    draw ? say('form.draw_count', { item: item(list, id), count: draw.counts[id] ?? 0 }) : item(list, id),
  )
  return listed(items)
}

function sectionLines(ground: FormGround, section: Section): readonly string[] {
  const { protocol } = ground
  const { fields } = section
  const passes = passesOf(section, protocol.draws)
  const list = passes?.list ?? null
  const draw = list === null ? undefined : protocol.draws[list]
  const hands = isOverHands(protocol, section)
  return [
    ...(list === null || hands || protocol.lists[list]?.length === 1
      ? []
      : [say(draw ? 'form.drawn_of' : 'form.items', { items: itemsWords(ground, list) })]),
    ...(draw && draw.alikeInRow !== null ? [say('form.alike', { count: draw.alikeInRow })] : []),
    ...(typeof fields['take'] === 'number' ? [say('form.take', { count: fields['take'] })] : []),
    ...orderWords(fields['order']),
    ...timesWords(ground, fields['times']),
    ...(list === null ? [] : ladderWords(ground, section, list)),
    ...FORMULAS.flatMap((key) => {
      const formula = fields[key] as Expression | undefined
      return formula ? [say(`form.section.${key}`, { formula: formulaWords(formula) })] : []
    }),
    ...(fields['sheet'] === true ? [say('form.sheet')] : []),
  ]
}

function sectionTitle({ protocol }: FormGround, section: Section): string {
  const passes = passesOf(section, protocol.draws)
  if (passes === null) return plain(section.name)
  const name = plain(passes.loop)
  return passes.list === null ? say('form.repeat', { name }) : say('form.each', { name })
}

function ruleLines({ words }: FormGround, rule: Rule): readonly string[] {
  const credits = Object.entries(rule.credit).map(([step, credit]) =>
    say('form.credit', { step: plain(step), credit }),
  )
  return [
    say('form.rule', { formula: formulaWords(rule.when) }),
    ...(rule.confirm ? [say('form.confirm', { words: words(rule.confirm) })] : []),
    ...(rule.end === null
      ? []
      : [say('form.ends', { what: rule.end === 'test' ? 'test' : 'part', name: plain(rule.end) })]),
    ...(credits.length ? [say('form.credits', { credits: listed(credits) })] : []),
    ...(rule.note ? [words(rule.note)] : []),
  ]
}

/** The steps by the words they have: long lists of words are printed once. */
type Told = Map<string, string>

/** So many variants are said again by the name of the step that has them already. */
const MANY = 6

function textsOf(ground: FormGround, step: Step, around: readonly Section[], told: Told): readonly Variant[] {
  const texts = step.text ? variantsOf(ground, step.text, around) : []
  const known = told.get(JSON.stringify(texts))
  if (texts.length < MANY || known === undefined) {
    told.set(JSON.stringify(texts), step.name)
    return texts
  }
  return [{ label: null, words: say('form.same_words', { step: plain(known) }) }]
}

function stepBlock(ground: FormGround, step: Step, { around, depth, told }: Standing): Block {
  const kind = `form.step.${step.kind}`
  const what = hasWords(kind) ? say(kind) : plain(step.kind)
  const label = say('form.step_named', {
    what,
    name: plain(step.name),
    practice: step.practice ? 'yes' : 'no',
  })
  return {
    block: 'step',
    depth,
    label,
    texts: textsOf(ground, step, around, told),
    facts: [
      ...(step.of === null ? [] : [say('form.of', { step: plain(step.of) })]),
      ...stepFacts(ground, step, around),
    ],
  }
}

function nodeBlocks(ground: FormGround, node: Node, standing: Standing): Block[] {
  const { depth } = standing
  if (node.node === 'step') return [stepBlock(ground, node, standing)]
  if (node.node === 'rule') return [{ block: 'loop', depth, title: null, lines: ruleLines(ground, node) }]
  const cases = casesOf(node)
  if (cases === null) {
    const head: Block = {
      block: 'loop',
      depth,
      title: sectionTitle(ground, node),
      lines: sectionLines(ground, node),
    }
    return [head, ...node.steps.flatMap((one) => nodeBlocks(ground, one, within(standing, node)))]
  }
  return node.steps.flatMap((part): Block[] => {
    const title = cases.get(part.name) ?? ''
    const inside = part.node === 'section' ? part.steps : []
    return [
      { block: 'loop', depth, title, lines: [] },
      ...inside.flatMap((one) => nodeBlocks(ground, one, within(standing, null))),
    ]
  })
}

export function scriptOf(ground: FormGround): Block[] {
  const standing: Standing = { around: [], depth: 0, told: new Map() }
  return [
    heading(say('form.script'), say('form.script.hint')),
    ...ground.protocol.steps.flatMap((node) => nodeBlocks(ground, node, standing)),
  ]
}
