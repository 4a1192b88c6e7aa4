#!/usr/bin/env node
/** The command line's entry. */
import { runCommand } from './run.ts'

process.exitCode = await runCommand(process.argv.slice(2), {
  out: (line) => process.stdout.write(`${line}\n`),
  err: (line) => process.stderr.write(`${line}\n`),
})
