/**
 * Put before the built desktop program by `--import`: gives it a double of `electron` and prints, as one line of
 * JSON, what the program asked of it and how it answered calls from its own page and from foreign ones. With
 * `--as-second` as the last word another instance is there already.
 */
import { existsSync } from 'node:fs'
import { registerHooks } from 'node:module'

const noted = { switches: [], windows: [], answers: {} }
globalThis.electronDouble = noted

const source = `
const noted = globalThis.electronDouble
const handlers = new Map()
const emitter = () => { const on = new Map(); return {
  on(name, f) { on.set(name, [...(on.get(name) ?? []), f]); return this },
  once(name, f) { return this.on(name, f) },
  emit(name, ...given) { for (const f of on.get(name) ?? []) f(...given) },
} }
export const app = { ...emitter(), isPackaged: false, requestSingleInstanceLock: () => process.argv.at(-1) !== '--as-second',
  whenReady: async () => {}, quit() { app.emit('will-quit'); process.exit(0) }, exit: (code) => process.exit(code) }
export class BrowserWindow {
  static getAllWindows() { return [] }
  constructor(options) {
    Object.assign(this, emitter())
    this.webContents = { ...emitter(), setWindowOpenHandler() {}, send() {} }
    noted.windows.push(options)
    app.emit('web-contents-created', {}, this.webContents)
  }
  async loadURL(url) {
    noted.url = url
    const page = await served(new Request(url))
    noted.page = { status: page.status, policy: page.headers.get('content-security-policy') }
    const call = (frame) => handlers.get('evenhand:call')({ senderFrame: frame }, 'clinic.state', {}, 'x')
    noted.answers.own = await call({ url, parent: null })
    noted.answers.foreign = await call({ url: 'https://evil.example/', parent: null })
    process.stdout.write(JSON.stringify(noted) + '\\n')
    app.quit()
  }
  show() {} focus() {} isMinimized() { return false } restore() {}
}
let served = null
export const protocol = { registerSchemesAsPrivileged: (all) => noted.switches.push(...all), handle: (_, f) => { served = f } }
export const session = { defaultSession: { ...emitter(), setPermissionRequestHandler() {}, setPermissionCheckHandler() {}, setDevicePermissionHandler() {} } }
export const ipcMain = { handle: (channel, f) => handlers.set(channel, f) }
export const dialog = { showErrorBox: (title, text) => process.stderr.write(title + ': ' + text + '\\n') }
export const Menu = { setApplicationMenu() {} }
`

registerHooks({
  resolve: (specifier, context, next) =>
    specifier === 'electron'
      ? { url: `data:text/javascript,${encodeURIComponent(source)}`, format: 'module', shortCircuit: true }
      : next(specifier, context),
})

process.on('exit', () => {
  for (const { webPreferences } of noted.windows)
    if (!existsSync(webPreferences.preload)) process.stderr.write('NO PRELOAD\n')
})
