/** The browser host: the program in this machine's browser, over one loopback port. */
import { readArguments } from '../arguments.ts'
import { HostProblem, problemOf } from '../problem.ts'
import { salvageLines } from '../salvage-lines.ts'
import { startUp } from '../start-up.ts'
import { say } from '../words.ts'
import { openBrowser } from './open-browser.ts'
import { type BrowserServer, startServer } from './server.ts'

async function run(): Promise<void> {
  const given = readArguments(process.argv.slice(2))
  const { dispatcher, respond, listen, salvaged, close } = await startUp(given)
  let server: BrowserServer
  try {
    server = await startServer({ port: given.port, respond, dispatch: dispatcher.dispatch, listen })
  } catch (error) {
    close()
    const taken = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE'
    throw taken ? new HostProblem('start.port_taken', { port: String(given.port) }) : error
  }
  console.log(say('browser.at', { entry: server.entry }))
  if (salvaged) for (const line of salvageLines(salvaged)) console.error(line)
  if (given.demo) console.log(say('browser.demo'))
  if (given.open) openBrowser(server.entry)

  let ending = false
  const end = async () => {
    if (ending) return
    ending = true
    await server.close()
    try {
      close()
    } catch (error) {
      console.error(say('browser.not_all_saved', { problem: problemOf(error).message }))
      process.exit(2)
    }
    console.log(say('browser.ending'))
    process.exit(0)
  }
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => void end())
}

run().catch((error: unknown) => {
  console.error(problemOf(error).message)
  process.exit(2)
})
