/** A text in all the words that it can have: for each item, hand in turn and condition that changes it. */
import { SIDES } from '../../../protocols/client.ts'
import { readMessage } from '../../../protocols/language/messages.ts'
import type { Section, Text } from '../../../protocols/language/model.ts'
import { passAt, passesOf } from '../../../protocols/language/passes.ts'
import { listed, plain } from '../figures.ts'
import { say } from '../words.ts'
import { type FormGround, HANDS } from './ground.ts'
import { ONE_PASS, type PassOnPaper, passesInside } from './passes-on-paper.ts'

/** Words that hold for one item, or where a condition stands otherwise; a null label: for all. */
export interface Variant {
  readonly label: string | null
  readonly words: string
}

/** What stands for words that can't be told. */
const UNTOLD = '…'

function readBy({ wording }: FormGround, text: Text): readonly string[] {
  return 'key' in text ? readMessage(wording.texts[text.key] ?? '').arguments : text.from.reads
}

/** The items that a text may be of: of a drawn list each of its kinds once. The hands are left open. */
function itemsOf(ground: FormGround, loops: readonly Section[]): readonly PassOnPaper[] {
  const { protocol } = ground
  return loops.reduce((found, section) => {
    const loop = passesOf(section, protocol.draws)
    if (loop === null || loop.list === null || !Object.hasOwn(protocol.draws, loop.list))
      return found.flatMap((one) => passesInside(ground, section, one))
    const kinds = protocol.lists[loop.list] ?? []
    return found.flatMap(({ place, labels }) =>
      kinds.map(({ id }) => ({
        place: { ...place, ...passAt(loop, id, 1) },
        labels: [...labels, plain(id)],
      })),
    )
  }, ONE_PASS)
}

/** Words that hang on which hand comes first can be told only with a hand in its turn. */
function byTurn({ words }: FormGround, text: Text, pass: PassOnPaper, hand: string): readonly Variant[] {
  return SIDES.map((side, index) => ({
    label: listed([say('form.hand_in_turn', { number: index + 1 }), ...pass.labels]),
    words: words(text, { place: { ...pass.place, [hand]: side } }),
  }))
}

function byCondition({ protocol, usual, words, option }: FormGround, text: Text): readonly Variant[] {
  const usually = words(text)
  return protocol.conditions
    .filter(({ setBy }) => setBy !== 'file')
    .flatMap(({ name, options }) =>
      options.flatMap(({ id }) => {
        const told = words(text, { conditions: { ...usual, [name]: id } })
        const label = say('form.where', { condition: plain(name), option: option(name, id) })
        return told === usually ? [] : [{ label, words: told }]
      }),
    )
}

/** @param around the sections around the step, outermost first */
export function variantsOf(ground: FormGround, text: Text, around: readonly Section[]): readonly Variant[] {
  const reads = readBy(ground, text)
  const loops = around.filter((section) => {
    const passes = passesOf(section, ground.protocol.draws)
    return passes !== null && passes.list !== null && reads.includes(passes.loop)
  })
  const hand = loops.find((section) => passesOf(section, ground.protocol.draws)?.list === HANDS)
  const found = itemsOf(ground, loops).flatMap((pass): readonly Variant[] => {
    const words = ground.words(text, { place: pass.place })
    if (words.includes(UNTOLD) && hand) return byTurn(ground, text, pass, hand.name)
    return [{ label: pass.labels.length ? listed(pass.labels) : null, words }]
  })
  const [first] = found
  const isAlike = found.every(({ words }) => words === first?.words)
  return [...(first && isAlike ? [{ label: null, words: first.words }] : found), ...byCondition(ground, text)]
}
