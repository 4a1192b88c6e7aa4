/** With whom, and under which conditions, walks of all paths begin. */
import { type ClientFacts, NOTHING_KNOWN } from '../client.ts'
import type { Protocol } from '../language/model.ts'

export interface Start {
  readonly name: string
  readonly facts: ClientFacts
  readonly conditions: Readonly<Record<string, string>>
}

const arm = (status: ClientFacts['arms']['right']['status']) => ({ ...NOTHING_KNOWN.arms.right, status })

/** Clients and conditions that a file can tell apart: each differs from the usual ones in one thing. */
export function startsOf(protocol: Protocol): readonly Start[] {
  const facts: ClientFacts = {
    ...NOTHING_KNOWN,
    dominantBefore: 'right',
    usedNow: 'right',
    arms: { right: arm('unaffected'), left: arm('affected') },
  }
  const mirrored: ClientFacts = { ...facts, arms: { right: arm('affected'), left: arm('unaffected') } }
  const oneHanded: ClientFacts = { ...facts, arms: { right: arm('unaffected'), left: arm('absent') } }
  const conditions = protocol.conditions
    .filter(({ setBy }) => setBy !== 'file')
    .flatMap(({ name, options, usual }) =>
      options
        .filter(({ id }) => id !== (usual ?? options[0]?.id))
        .map(({ id }) => ({ name: `${name} ${id}`, facts, conditions: { [name]: id } })),
    )
  return [
    { name: 'usual', facts, conditions: {} },
    { name: 'right affected', facts: mirrored, conditions: {} },
    ...conditions,
    { name: 'nothing known', facts: NOTHING_KNOWN, conditions: {} },
    { name: 'left absent', facts: oneHanded, conditions: {} },
  ]
}
