/**
 * A keyboard at an X server, by its test extension: key events as real as a machine without a keyboard can have them.
 * Speaks the X protocol itself (X11R7.7, chapters 1, 8 and appendix B, and the XTEST extension 2.2), so that the moment
 * at which a press was handed over is known to the time of one round trip.
 */
import { once } from 'node:events'
import { connect, type Socket } from 'node:net'

const SUCCESS = 1
const REPLY = 1
const SET_INPUT_FOCUS = 42
const GET_INPUT_FOCUS = 43
const QUERY_TREE = 15
const QUERY_EXTENSION = 98
const FAKE_INPUT = 2
const KEY_PRESS = 2
const KEY_RELEASE = 3

/** Codes that an X server's own keyboard map gives to keys. */
export const KEYCODES = { Space: 65, z: 52 } as const

/** ms on this process's clock between which the server took an event. */
export interface Handed {
  readonly before: number
  readonly after: number
}

export class XKeyboard {
  readonly #socket: Socket
  #read = Buffer.alloc(0)
  #root = 0
  #test = 0

  private constructor(socket: Socket) {
    this.#socket = socket
    socket.on('data', (data) => {
      this.#read = Buffer.concat([this.#read, data])
    })
  }

  static async open(display: number): Promise<XKeyboard> {
    const socket = connect(`/tmp/.X11-unix/X${display}`)
    await once(socket, 'connect')
    const keyboard = new XKeyboard(socket)
    await keyboard.#greet()
    return keyboard
  }

  close(): void {
    this.#socket.destroy()
  }

  async #take(bytes: number): Promise<Buffer> {
    while (this.#read.length < bytes) await once(this.#socket, 'data')
    const taken = this.#read.subarray(0, bytes)
    this.#read = this.#read.subarray(bytes)
    return taken
  }

  /** The next answer; events and errors that come in between are of no interest here. */
  async #reply(): Promise<Buffer> {
    for (;;) {
      const head = await this.#take(32)
      if (head[0] === REPLY) return Buffer.concat([head, await this.#take(4 * head.readUInt32LE(4))])
    }
  }

  async #greet(): Promise<void> {
    const hello = Buffer.alloc(12)
    hello.write('l', 0)
    hello.writeUInt16LE(11, 2)
    this.#socket.write(hello)
    const head = await this.#take(8)
    const setup = Buffer.concat([head, await this.#take(4 * head.readUInt16LE(6))])
    if (setup[0] !== SUCCESS) throw new Error('the X server refused the connection')
    const vendor = Math.ceil(setup.readUInt16LE(24) / 4) * 4
    this.#root = setup.readUInt32LE(40 + vendor + 8 * (setup[29] ?? 0))
    const name = 'XTEST'
    const ask = Buffer.alloc(16)
    ask[0] = QUERY_EXTENSION
    ask.writeUInt16LE(4, 2)
    ask.writeUInt16LE(name.length, 4)
    ask.write(name, 8)
    this.#socket.write(ask)
    const found = await this.#reply()
    if (found[8] !== 1) throw new Error('the X server has no test extension')
    this.#test = found[9] ?? 0
  }

  /** Gives the keyboard to every window below the root in turn: without a window manager nobody else does. */
  async focus(): Promise<void> {
    const ask = Buffer.alloc(8)
    ask[0] = QUERY_TREE
    ask.writeUInt16LE(2, 2)
    ask.writeUInt32LE(this.#root, 4)
    this.#socket.write(ask)
    const tree = await this.#reply()
    for (let child = 0; child < tree.readUInt16LE(16); child += 1) {
      const give = Buffer.alloc(12)
      give[0] = SET_INPUT_FOCUS
      give.writeUInt16LE(3, 2)
      give.writeUInt32LE(tree.readUInt32LE(32 + 4 * child), 4)
      this.#socket.write(give)
    }
    await this.#hand([])
  }

  /** Sends requests and waits until the server has done them. */
  async #hand(requests: readonly Buffer[]): Promise<Handed> {
    const sync = Buffer.alloc(4)
    sync[0] = GET_INPUT_FOCUS
    sync.writeUInt16LE(1, 2)
    const before = performance.now()
    this.#socket.write(Buffer.concat([...requests, sync]))
    await this.#reply()
    return { before, after: performance.now() }
  }

  #fake(type: number, keycode: number): Buffer {
    const request = Buffer.alloc(36)
    request[0] = this.#test
    request[1] = FAKE_INPUT
    request.writeUInt16LE(9, 2)
    request[4] = type
    request[5] = keycode
    return request
  }

  /** Presses a key and lets it go after 40 ms. Gives back when the server took the press. */
  async press(keycode: number): Promise<Handed> {
    const handed = await this.#hand([this.#fake(KEY_PRESS, keycode)])
    await new Promise((done) => setTimeout(done, 40))
    await this.#hand([this.#fake(KEY_RELEASE, keycode)])
    return handed
  }
}
