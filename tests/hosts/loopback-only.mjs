/** Put before a program by `--import`: every way out of the machine is closed and told, loopback is left. */
import dgram from 'node:dgram'
import dns from 'node:dns'
import { syncBuiltinESMExports } from 'node:module'
import net from 'node:net'

const LOOPBACK = ['127.0.0.1', '::1', 'localhost']

function deny(what) {
  process.stderr.write(`LEFT THE MACHINE: ${what}\n`)
  throw new Error('Denied by the test.')
}

const connect = net.Socket.prototype.connect
net.Socket.prototype.connect = function connectLoopback(...given) {
  const [first, second] = given.flat()
  const host = typeof first === 'object' ? (first.path ?? first.host ?? 'localhost') : (second ?? 'localhost')
  if (!LOOPBACK.includes(host)) deny(`connect ${host}`)
  return connect.apply(this, given)
}
for (const name of ['lookup', 'resolve']) {
  const ask = dns[name]
  dns[name] = (host, ...rest) => (LOOPBACK.includes(host) ? ask(host, ...rest) : deny(`${name} ${host}`))
}
dgram.createSocket = () => deny('datagram')
syncBuiltinESMExports()
