#!/usr/bin/env node
/** The command line's entry. */
import { runCommand } from './run.ts'

// Whoever reads a part only, as `head` does, has what they wanted: no fault of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit()
  throw error
})

process.exitCode = await runCommand(process.argv.slice(2), {
  out: (line) => process.stdout.write(`${line}\n`),
  err: (line) => process.stderr.write(`${line}\n`),
})
