import { join } from 'node:path'
import { afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest'
import { CALL_CHANNEL } from '../../main/contract/channel.ts'
import { createDispatcher } from '../../main/contract/dispatch.ts'
import { createResponder } from '../../main/hosts/respond.ts'
import { newFolder } from '../calls/desk.ts'
import { handlersWith } from '../contract/handlers.ts'
import { type Frame, makeElectron, PAGE_FRAME } from './electron-stand-in.ts'
import { buildProgram } from './program.ts'
import { makeScreen } from './screen-folder.ts'

const electron = vi.hoisted(() => ({ now: null as null | ReturnType<typeof makeElectron> }))
vi.mock('electron', () => ({
  get app() {
    return electron.now?.module.app
  },
  get BrowserWindow() {
    return electron.now?.module.BrowserWindow
  },
  get contextBridge() {
    return electron.now?.module.contextBridge
  },
  get dialog() {
    return electron.now?.module.dialog
  },
  get ipcMain() {
    return electron.now?.module.ipcMain
  },
  get ipcRenderer() {
    return electron.now?.module.ipcRenderer
  },
  get Menu() {
    return electron.now?.module.Menu
  },
  get protocol() {
    return electron.now?.module.protocol
  },
  get session() {
    return electron.now?.module.session
  },
}))

const USER = { id: '01890000-0000-7000-8000-000000000001', name: 'Ada Venn' }
const shell = () => electron.now as ReturnType<typeof makeElectron>

async function openShell() {
  const { answerCalls, declareScheme, openWindow } = await import('../../main/hosts/desktop/shell.ts')
  const { dispatch } = createDispatcher({
    push: () => {},
    onDefect: () => {},
    handlers: handlersWith({ 'users.add': () => USER }),
  })
  declareScheme()
  answerCalls({ dispatcher: { dispatch, counts: new Map() }, listen: () => () => {} })
  const window = await openWindow({ respond: createResponder(makeScreen()) })
  return { window, contents: shell().windows[0]?.webContents }
}

const download = (url: string) => {
  const event = { preventDefault: vi.fn<() => void>() }
  shell().web.emit('will-download', event, { getURL: () => url })
  return event.preventDefault.mock.calls.length === 0
}
const call = (frame: Frame | null) =>
  shell().invokeFrom(frame, CALL_CHANNEL, 'users.add', { name: 'Ada' }, crypto.randomUUID())

beforeEach(() => {
  electron.now = makeElectron()
})
afterEach(() => {
  electron.now = null
})

describe('the desktop window', () => {
  test('STD-SEC-12 the page is isolated, sandboxed and has no Node', async () => {
    await openShell()
    expect(shell().windows[0]?.options.webPreferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      webviewTag: false,
    })
    expect(shell().windows[0]?.shown).toBe(true)
  })

  test('STD-SEC-12 no permission is ever granted', async () => {
    await openShell()
    const granted: boolean[] = []
    for (const name of [
      'media',
      'geolocation',
      'notifications',
      'clipboard-read',
      'openExternal',
      'fullscreen',
    ])
      shell().web.permissionRequest?.({}, name, (yes) => granted.push(yes))
    expect(granted).toEqual([false, false, false, false, false, false])
    expect(shell().web.permissionCheck?.()).toBe(false)
    expect(shell().web.deviceCheck?.()).toBe(false)
  })

  test('STD-SEC-12 navigation, redirects, web views and new windows are refused', async () => {
    const { contents } = await openShell()
    for (const name of ['will-navigate', 'will-redirect', 'will-attach-webview']) {
      const event = { preventDefault: vi.fn<() => void>() }
      expect(contents?.emit(name, event), `${name} is listened to`).toBe(true)
      expect(event.preventDefault).toHaveBeenCalledOnce()
    }
    expect(contents?.open?.({ url: 'https://evil.example' })).toEqual({ action: 'deny' })
  })

  test('only what the page has made itself may be saved to a file', async () => {
    await openShell()
    expect(download('blob:evenhand://screen/1b4e28ba')).toBe(true)
    expect(download('https://evil.example/x.exe')).toBe(false)
    expect(download('blob:https://evil.example/1')).toBe(false)
  })

  test('STD-SEC-12 a call counts only from the page’s own top frame', async () => {
    await openShell()
    const foreign: (Frame | null)[] = [
      { url: 'https://evil.example/', parent: null },
      { url: 'evenhand://elsewhere/', parent: null },
      { url: 'file:///index.html', parent: null },
      { url: 'data:text/html,x', parent: null },
      { url: 'evenhand://screen/', parent: PAGE_FRAME },
      null,
    ]
    for (const frame of foreign)
      expect(await call(frame)).toEqual({ ok: false, fault: { code: 'foreign_request', detail: {} } })
    expect(await call(PAGE_FRAME)).toEqual({ ok: true, value: USER })
  })

  test('a call of another shape than the preload’s is refused', async () => {
    await openShell()
    expect(await shell().invokeFrom(PAGE_FRAME, CALL_CHANNEL, 7, {}, 'x')).toMatchObject({ ok: false })
    expect(await shell().invokeFrom(PAGE_FRAME, CALL_CHANNEL, 'users.add', {}, {})).toMatchObject({
      ok: false,
    })
  })

  test('the page comes by the shell’s own scheme under the same headers as in a browser', async () => {
    await openShell()
    expect(shell().schemes).toEqual([
      { scheme: 'evenhand', privileges: { standard: true, secure: true, supportFetchAPI: true } },
    ])
    expect(shell().windows[0]?.url).toBe('evenhand://screen/')
    const page = await shell().served.get('evenhand')?.(new Request('evenhand://screen/'))
    expect(page?.status).toBe(200)
    expect(page?.headers.get('content-security-policy')).toContain("default-src 'none'")
    expect(page?.headers.get('cross-origin-opener-policy')).toBe('same-origin')
    expect(page?.headers.get('cross-origin-embedder-policy')).toBe('require-corp')
    const outside = await shell().served.get('evenhand')?.(new Request('evenhand://screen/../secret.txt'))
    expect(outside?.status).toBe(404)
  })

  test('the preload hands the page two functions and nothing of the shell', async () => {
    vi.resetModules()
    await import('../../main/hosts/desktop/preload.ts')
    expect(Object.keys(shell().exposed)).toEqual(['evenhand'])
    expect(Object.keys(shell().exposed.evenhand as object).sort()).toEqual(['invoke', 'listen'])
  })
})

describe('the window in front', () => {
  beforeAll(buildProgram, 120_000)

  test('a second start brings the first window forward, out of the taskbar too', async () => {
    vi.resetModules()
    const words = process.argv.splice(2, process.argv.length, '--records', join(newFolder(), 'records'))
    await import('../../main/hosts/desktop/index.ts')
    await vi.waitFor(() => expect([shell().windows[0]?.shown, shell().errors]).toEqual([true, []]))
    const [window] = shell().windows
    if (window) window.minimized = true
    shell().app.emit('second-instance')
    expect([window?.minimized, window?.focused]).toEqual([false, 1])
    shell().app.emit('will-quit')
    process.argv.splice(2, process.argv.length, ...words)
  })
})
