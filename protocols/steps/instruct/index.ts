import { onceDone } from '../once-done.ts'

export default onceDone({ kind: 'instruct', event: 'said', precedes: true, takes: [4_000, 16_000] })
