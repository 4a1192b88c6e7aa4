/**
 * Imported before anything that builds a schema: zod otherwise tries `new Function` once, which the screen's
 * content security policy reports as a violation.
 */
import { config } from 'zod'

config({ jitless: true })
