import { onceDone } from '../once-done.ts'

export default onceDone({ kind: 'position', event: 'set', precedes: true, takes: [1_500, 6_500] })
