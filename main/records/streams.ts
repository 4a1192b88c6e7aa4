import type { Stream } from './entry.ts'

const NIL = '00000000-0000-0000-0000-000000000000'

/** The clinic's own stream: one in every file, with the same id, so that two files of one clinic can be merged. */
export const CLINIC: Stream = { kind: 'clinic', id: NIL }

/** The user of what the program does by itself. */
export const PROGRAM = NIL
