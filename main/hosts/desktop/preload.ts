/** The one thing that the page sees of the desktop shell: calls and pushes, as plain data. */
import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron'
import { CALL_CHANNEL, PUSH_CHANNEL } from '../../contract/channel.ts'
import type { Transport } from '../../contract/transport.ts'

const transport: Transport = {
  invoke: (name, input, call) => ipcRenderer.invoke(CALL_CHANNEL, name, input, call),
  listen(listener) {
    const heard = (_event: IpcRendererEvent, push: unknown) => listener(push)
    ipcRenderer.on(PUSH_CHANNEL, heard)
    return () => {
      ipcRenderer.off(PUSH_CHANNEL, heard)
    }
  },
}

contextBridge.exposeInMainWorld('evenhand', transport)
