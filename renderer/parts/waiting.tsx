import { say } from '../words/index.ts'

/** Stands where something is still being read. */
export function Waiting() {
  return (
    <p className="soft" role="status">
      {say('parts.waiting')}
    </p>
  )
}
