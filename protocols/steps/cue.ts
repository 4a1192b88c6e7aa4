import { z } from 'zod'
import { from, words } from '../language/schema/shapes.ts'

/** What starts or stops a trial, as the file writes it. */
export const cue = z.union([z.strictObject({ said: words }), z.strictObject({ seen: words }), from], {
  error: '{ said: words }, { seen: words } or { from: expression }',
})
