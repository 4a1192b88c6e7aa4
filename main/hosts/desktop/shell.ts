/**
 * The desktop window: the screen in a sandbox that can do nothing but make the contract's calls. It goes
 * nowhere, opens nothing, is granted nothing, and a call counts only when it comes from its own page.
 */
import { join } from 'node:path'
import {
  app,
  BrowserWindow,
  ipcMain,
  type IpcMainInvokeEvent,
  protocol,
  type Session as WebSession,
  session,
  type WebPreferences,
} from 'electron'
import { CALL_CHANNEL, PUSH_CHANNEL } from '../../contract/channel.ts'
import type { Session } from '../../contract/dispatch.ts'
import type { Reply } from '../../contract/procedure.ts'
import { PROGRAM } from '../../program.ts'
import { programFolder } from '../program-folder.ts'
import type { Started } from '../start-up.ts'

/** A scheme of our own and not `file:`, which has no headers and so neither nonce nor isolation. */
const SCHEME = 'evenhand'
const PAGE = `${SCHEME}://screen/`

const SAFE_PREFERENCES: WebPreferences = {
  contextIsolation: true,
  sandbox: true,
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  webSecurity: true,
  allowRunningInsecureContent: false,
  webviewTag: false,
  navigateOnDragDrop: false,
  spellcheck: false,
}

/** Must be told before the shell is ready, so that the page is a secure, ordinary origin. */
export function declareScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ])
}

/**
 * Nothing that any page in this process asks for is ever granted, and none goes anywhere else. All that may be
 * saved to a file is what the page itself has made, such as a report.
 */
function closeOff(web: WebSession): void {
  web.setPermissionRequestHandler((_contents, _permission, answer) => answer(false))
  web.setPermissionCheckHandler(() => false)
  web.setDevicePermissionHandler(() => false)
  web.on('will-download', (event, item) => {
    if (!item.getURL().startsWith(`blob:${PAGE}`)) event.preventDefault()
  })
  app.on('web-contents-created', (_event, contents) => {
    contents.setWindowOpenHandler(() => ({ action: 'deny' }))
    contents.on('will-navigate', (event) => event.preventDefault())
    contents.on('will-redirect', (event) => event.preventDefault())
    contents.on('will-attach-webview', (event) => event.preventDefault())
  })
}

/** Answers calls from the page's own top frame, and from no other. */
export function answerCalls({ dispatcher, listen }: Pick<Started, 'dispatcher' | 'listen'>): void {
  const screen: Session = { id: crypto.randomUUID(), user: null }
  const foreign: Reply = { ok: false, fault: { code: 'foreign_request', detail: {} } }
  ipcMain.handle(CALL_CHANNEL, (event, name: unknown, input: unknown, call: unknown) => {
    if (!isOwnPage(event) || typeof name !== 'string' || typeof call !== 'string') return foreign
    return dispatcher.dispatch(screen, name, input, call)
  })
  listen((push) => {
    for (const window of BrowserWindow.getAllWindows()) window.webContents.send(PUSH_CHANNEL, push)
  })
}

function isOwnPage({ senderFrame }: IpcMainInvokeEvent): boolean {
  if (!senderFrame || senderFrame.parent) return false
  const { protocol: scheme, host } = new URL(senderFrame.url)
  return `${scheme}//${host}/` === PAGE
}

export async function openWindow({ respond }: Pick<Started, 'respond'>): Promise<BrowserWindow> {
  protocol.handle(SCHEME, async ({ method, url }) => {
    const { status, headers, body } = await respond(method, new URL(url).pathname)
    return new Response(typeof body === 'string' || body === null ? body : new Uint8Array(body), {
      status,
      headers,
    })
  })
  closeOff(session.defaultSession)
  const window = new BrowserWindow({
    title: PROGRAM.name,
    width: 1280,
    height: 860,
    minWidth: 640,
    minHeight: 480,
    show: false,
    autoHideMenuBar: true,
    webPreferences: {
      ...SAFE_PREFERENCES,
      preload: join(programFolder(), 'out', 'preload', 'preload.cjs'),
    },
  })
  window.once('ready-to-show', () => window.show())
  await window.loadURL(PAGE)
  return window
}
