import { say } from '../words/index.ts'

/** Stands where something is still being read. */
export function Waiting() {
  return <output className="soft">{say('parts.waiting')}</output>
}
