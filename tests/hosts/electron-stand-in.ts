/**
 * A stand-in for the module `electron`: it remembers what the shell asks for, and carries calls between the
 * preload and the main half as the real one does, by structured clone.
 */
import { EventEmitter } from 'node:events'

type Handler = (event: { senderFrame: Frame | null }, ...values: unknown[]) => unknown
export interface Frame {
  readonly url: string
  readonly parent: Frame | null
}

export const PAGE_FRAME: Frame = { url: 'evenhand://screen/', parent: null }

type AskPermission = (contents: unknown, name: string, answer: (yes: boolean) => void) => void

class StandInSession extends EventEmitter {
  permissionRequest: AskPermission | null = null
  permissionCheck: (() => boolean) | null = null
  deviceCheck: (() => boolean) | null = null
  setPermissionRequestHandler(handler: AskPermission) {
    this.permissionRequest = handler
  }
  setPermissionCheckHandler(handler: () => boolean) {
    this.permissionCheck = handler
  }
  setDevicePermissionHandler(handler: () => boolean) {
    this.deviceCheck = handler
  }
}

export function makeElectron() {
  const handlers = new Map<string, Handler>()
  const windows: StandInWindow[] = []
  const toPage = new EventEmitter()
  const exposed: Record<string, unknown> = {}
  const schemes: unknown[] = []
  const served = new Map<string, (request: Request) => Promise<Response>>()
  const web = new StandInSession()

  class StandInContents extends EventEmitter {
    open: ((details: { url: string }) => { action: string }) | null = null
    setWindowOpenHandler(handler: (details: { url: string }) => { action: string }) {
      this.open = handler
    }
    send(channel: string, value: unknown) {
      toPage.emit(channel, {}, structuredClone(value))
    }
  }

  class StandInWindow extends EventEmitter {
    readonly options: Record<string, unknown>
    readonly webContents = new StandInContents()
    shown = false
    focused = 0
    minimized = false
    url = ''
    constructor(options: Record<string, unknown>) {
      super()
      this.options = options
      windows.push(this)
      app.emit('web-contents-created', {}, this.webContents)
    }
    static getAllWindows() {
      return windows
    }
    async loadURL(url: string) {
      this.url = url
      this.emit('ready-to-show')
    }
    show() {
      this.shown = true
    }
    focus() {
      this.focused += 1
    }
    isMinimized() {
      return this.minimized
    }
    restore() {
      this.minimized = false
    }
  }

  const app = Object.assign(new EventEmitter(), {
    isPackaged: false,
    first: true,
    quits: 0,
    exits: [] as number[],
    requestSingleInstanceLock: () => app.first,
    whenReady: async () => {},
    quit() {
      app.quits += 1
    },
    exit(code: number) {
      app.exits.push(code)
    },
  })
  const errors: string[] = []

  /** A call as it reaches the main half from a frame; the preload's own calls come from the page's. */
  const invokeFrom = async (senderFrame: Frame | null, channel: string, ...values: unknown[]) => {
    const handler = handlers.get(channel)
    if (!handler) throw new Error(`No handler for ${channel}`)
    return structuredClone(await handler({ senderFrame }, ...structuredClone(values)))
  }

  return {
    module: {
      app,
      BrowserWindow: StandInWindow,
      contextBridge: {
        exposeInMainWorld(name: string, value: unknown) {
          exposed[name] = value
        },
      },
      dialog: { showErrorBox: (_title: string, text: string) => errors.push(text) },
      ipcMain: { handle: (channel: string, handler: Handler) => handlers.set(channel, handler) },
      ipcRenderer: {
        invoke: (channel: string, ...values: unknown[]) => invokeFrom(PAGE_FRAME, channel, ...values),
        on: (channel: string, listener: (...values: unknown[]) => void) => toPage.on(channel, listener),
        off: (channel: string, listener: (...values: unknown[]) => void) => toPage.off(channel, listener),
      },
      Menu: { setApplicationMenu: () => {} },
      protocol: {
        registerSchemesAsPrivileged: (asked: unknown[]) => schemes.push(...asked),
        handle: (scheme: string, respond: (request: Request) => Promise<Response>) =>
          served.set(scheme, respond),
      },
      session: { defaultSession: web },
    },
    app,
    web,
    windows,
    exposed,
    schemes,
    served,
    errors,
    invokeFrom,
  }
}
