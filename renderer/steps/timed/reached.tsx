import type { TimedFace } from '../../../protocols/steps/timed/face.ts'
import { say } from '../../words/index.ts'
import { Entry } from '../entry.tsx'
import type { FaceProps } from '../face.ts'
import { tellUnit, tellValue } from '../tell.ts'

/** At the limit: how far it went, one number after the other. */
export function Reached({ face, send }: Pick<FaceProps, 'send'> & { readonly face: TimedFace }) {
  const next = face.reached.find(({ count }) => count === null)
  return (
    <>
      <p className="step-state">{say('steps.timed.limit', { limit: tellValue(face.limit, 0, 's') })}</p>
      {next === undefined ? null : (
        <Entry
          key={next.name}
          label={say('steps.timed.how_far', {
            what: next.text ?? tellUnit(next.name),
            most: next.most === null ? 'none' : String(next.most),
          })}
          unit=""
          isWhole
          onEnter={(count) => send('reached', { what: next.name, count })}
        />
      )}
    </>
  )
}
