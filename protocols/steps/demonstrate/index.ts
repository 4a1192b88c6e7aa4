import { onceDone } from '../once-done.ts'

export default onceDone({ kind: 'demonstrate', event: 'shown', precedes: false, takes: [6_000, 20_000] })
