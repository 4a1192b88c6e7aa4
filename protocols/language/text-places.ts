/** Places inside texts: what a message parser finds wrong, at its character in the file. */
import { childOf, type ScalarNode } from './reader/tree.ts'
import { scalarOffsets } from './reader/scalar-offsets.ts'
import type { Draft } from './convert/draft.ts'
import type { WordingFile } from './convert/wordings.ts'
import type { Range } from './diagnostics.ts'
import { readMessage } from './messages.ts'

export interface PlacedFault {
  readonly at: Range
  readonly reason: string
}

/** Braces that can't be read, in the protocol's own texts and in all wording files. */
export function* messageFaults(draft: Draft, wordings: readonly WordingFile[]): Iterable<PlacedFault> {
  for (const { node } of draft.texts.values()) if (node) yield* faultsIn(draft, node)
  for (const { tree } of wordings) {
    const texts = childOf(tree, 'texts')
    if (texts?.is !== 'map') continue
    for (const { value } of texts.entries) if (value.is === 'scalar') yield* faultsIn(draft, value)
  }
}

function* faultsIn(draft: Draft, node: ScalarNode): Iterable<PlacedFault> {
  const { fault } = readMessage(node.written)
  if (!fault) return
  const { file } = node.at
  const offsets = scalarOffsets(draft.folder.files.get(file) ?? '', node)
  const start = offsets[fault.start] ?? node.at.start
  yield { at: { file, start, end: Math.max(start, offsets[fault.end] ?? node.at.end) }, reason: fault.reason }
}
