/** The desktop host: one instance, one window, the same calls and the same bytes as the browser host. */
import { app, dialog, Menu } from 'electron'
import { PROGRAM } from '../../program.ts'
import { readArguments } from '../arguments.ts'
import { problemOf } from '../problem.ts'
import { salvageLines } from '../salvage-lines.ts'
import { type Started, startUp } from '../start-up.ts'
import { answerCalls, declareScheme, openWindow } from './shell.ts'

/** What a packaged program is started with begins after its own name; in a checkout after the folder as well. */
const given = process.argv.slice(app.isPackaged ? 1 : 2)

async function run(): Promise<void> {
  let started: Started | null = null
  app.on('window-all-closed', () => app.quit())
  app.on('will-quit', () => started?.close())
  try {
    started = await startUp(readArguments(given))
    await app.whenReady()
    Menu.setApplicationMenu(null)
    answerCalls(started)
    if (started.salvaged) dialog.showErrorBox(PROGRAM.name, salvageLines(started.salvaged).join('\n'))
    const window = await openWindow(started)
    app.on('second-instance', () => {
      if (window.isMinimized()) window.restore()
      window.focus()
    })
  } catch (error) {
    dialog.showErrorBox(PROGRAM.name, problemOf(error).message)
    app.exit(2)
  }
}

declareScheme()
if (app.requestSingleInstanceLock()) void run()
else app.quit()
