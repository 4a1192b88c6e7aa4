/** Bends a parsed message: letters get marks and the text grows by a third, arguments stay as they are. */
import type { IntlMessageFormat } from 'intl-messageformat'

type Message = ReturnType<IntlMessageFormat['getAst']>
type Element = Message[number]

/** The parser's number for a piece of plain text in its tree. */
const LITERAL = 0

const PLAIN = 'aeiouycnszAEIOUYCNSZ'
const MARKED = 'áéíóúýçñšžÁÉÍÓÚÝÇÑŠŽ'

const mark = (text: string) =>
  [...text].map((letter) => MARKED.charAt(PLAIN.indexOf(letter)) || letter).join('')

function bendElement(element: Element): Element {
  if (element.type === LITERAL) return { ...element, value: mark(element.value) }
  if (!('options' in element)) return element
  const options = Object.fromEntries(
    Object.entries(element.options).map(([id, option]) => [
      id,
      { ...option, value: option.value.map(bendElement) },
    ]),
  )
  return { ...element, options } as Element
}

/** `⟦` and `⟧` around the whole show where a text was put together from pieces. */
export function bend(message: Message): Message {
  const length = message.reduce((sum, part) => sum + (part.type === LITERAL ? part.value.length : 4), 0)
  const growth = '·'.repeat(Math.ceil(length / 3))
  return [{ type: LITERAL, value: '⟦' }, ...message.map(bendElement), { type: LITERAL, value: `${growth}⟧` }]
}
