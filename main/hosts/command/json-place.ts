/**
 * The offset of the value that a path leads to in a text of valid JSON; where the path leads nowhere, of the last
 * value on the way that is there. For a key that should not be there it is the key's value.
 */
export function placeInJson(text: string, path: readonly PropertyKey[]): number {
  const [key, ...rest] = path
  const start = skipSpace(text, 0)
  if (key === undefined) return start
  for (const child of childrenOf(text, start)) {
    if (child.key === String(key)) {
      const inner = text.slice(child.start, child.end)
      return child.start + placeInJson(inner, rest)
    }
  }
  return start
}

interface Child {
  readonly key: string
  readonly start: number
  readonly end: number
}

function* childrenOf(text: string, start: number): Generator<Child> {
  const isObject = text[start] === '{'
  if (!isObject && text[start] !== '[') return
  let at = skipSpace(text, start + 1)
  for (let index = 0; at < text.length && !'}]'.includes(text.charAt(at)); index += 1) {
    let key = String(index)
    if (isObject) {
      const end = valueEnd(text, at)
      key = JSON.parse(text.slice(at, end)) as string
      at = skipSpace(text, skipSpace(text, end) + 1)
    }
    const end = valueEnd(text, at)
    yield { key, start: at, end }
    at = skipSpace(text, end)
    if (text[at] === ',') at = skipSpace(text, at + 1)
  }
}

const skipSpace = (text: string, from: number): number => {
  let at = from
  while (/\s/.test(text.charAt(at))) at += 1
  return at
}

function valueEnd(text: string, start: number): number {
  let depth = 0
  for (let at = start; at < text.length; at += 1) {
    const letter = text.charAt(at)
    if (letter === '"') {
      at = stringEnd(text, at)
      if (depth === 0) return at + 1
    } else if ('{['.includes(letter)) depth += 1
    else if ('}]'.includes(letter)) {
      depth -= 1
      if (depth <= 0) return depth < 0 ? at : at + 1
    } else if (letter === ',' && depth === 0) return at
  }
  return text.length
}

/** The offset of the quote that closes the string that opens here. */
function stringEnd(text: string, open: number): number {
  let at = open + 1
  while (at < text.length && text[at] !== '"') at += text[at] === '\\' ? 2 : 1
  return at
}
