import { CST } from 'yaml'

export interface Unclosed {
  readonly start: number
  readonly what: string
  readonly mend: string
}

/**
 * The innermost bracket or quotation mark before `offset` that is never closed: the cause of most errors that a
 * parser only notices lines later.
 */
export function unclosedBefore(tokens: readonly CST.Token[], offset: number): Unclosed | null {
  let found: Unclosed | null = null
  const open: CST.Token[] = [...tokens]
  for (let token = open.pop(); token; token = open.pop()) {
    const here = token.offset <= offset ? unclosed(token) : null
    if (here && (!found || here.start > found.start)) found = here
    if (token.type === 'document' && token.value) open.push(token.value)
    if (!CST.isCollection(token)) continue
    for (const { key, value } of token.items) {
      if (key) open.push(key)
      if (value) open.push(value)
    }
  }
  return found
}

function unclosed(token: CST.Token): Unclosed | null {
  if (token.type === 'double-quoted-scalar' || token.type === 'single-quoted-scalar') {
    const mark = token.source.charAt(0)
    if (token.source.length > 1 && token.source.endsWith(mark)) return null
    return { start: token.offset, what: 'quotation mark', mend: `Write ${mark} where the text ends.` }
  }
  if (token.type !== 'flow-collection') return null
  const isMap = token.start.type === 'flow-map-start'
  if (token.end.some(({ type }) => type === 'flow-map-end' || type === 'flow-seq-end')) return null
  const mend = `Write ${isMap ? '}' : ']'} where it ends.`
  return { start: token.start.offset, what: 'bracket', mend }
}
