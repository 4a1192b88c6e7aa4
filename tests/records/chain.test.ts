import { createHash } from 'node:crypto'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { bodyBytes, digestOf, envelopeBytes, type Envelope, FIRST, hashOf } from '../../main/records/chain.ts'

const envelope: Envelope = {
  id: '019c2f6b-6a00-7a3e-8000-00000000abcd',
  device: '019c2f6b-6a00-7a3e-8000-000000000001',
  sequence: 7,
  clock: '019cacc5aa000000',
  user: '019c2f6b-6a00-7a3e-8000-000000000002',
  stream: { kind: 'client', id: '019c2f6b-6a00-7a3e-8000-000000000003' },
  kind: 'client-added',
  version: 1,
  at: '2026-03-02T10:00:00.000+01:00',
}

test('a body is hashed as its RFC 8785 bytes, whatever the order of its keys', () => {
  expect(bodyBytes({ b: 1e21, a: ['é', -0, 1.5], kind: 'x' }).toString()).toBe(
    '{"a":["é",0,1.5],"b":1e+21,"kind":"x"}',
  )
  expect(bodyBytes({ kind: 'x', a: ['é', -0, 1.5], b: 1e21 })).toEqual(
    bodyBytes({ b: 1e21, a: ['é', -0, 1.5], kind: 'x' }),
  )
  expect(() => bodyBytes({ a: Number.NaN })).toThrow(/NaN/)
})

test('exactly the bytes that the docstring names are hashed', () => {
  const salt = Buffer.alloc(32, 5)
  const body = bodyBytes({ kind: 'client-added' })
  const digest = createHash('sha256')
    .update(Buffer.concat([salt, Buffer.from('{"kind":"client-added"}')]))
    .digest()
  expect(digestOf(salt, body)).toEqual(digest)
  const written =
    '{"at":"2026-03-02T10:00:00.000+01:00","clock":"019cacc5aa000000","device":"019c2f6b-6a00-7a3e-8000-000000000001",' +
    '"id":"019c2f6b-6a00-7a3e-8000-00000000abcd","kind":"client-added","sequence":7,' +
    '"stream":{"id":"019c2f6b-6a00-7a3e-8000-000000000003","kind":"client"},' +
    '"user":"019c2f6b-6a00-7a3e-8000-000000000002","version":1}'
  const length = Buffer.from([0, 0, Math.floor(written.length / 256), written.length % 256])
  const hash = createHash('sha256')
    .update(Buffer.concat([Buffer.alloc(32), length, Buffer.from(written), digest]))
    .digest()
  expect(hashOf(FIRST, envelope, digest)).toEqual(hash)
})

test('an envelope is hashed as its RFC 8785 bytes, whatever it holds', () => {
  const text = fc.string({ unit: 'binary', maxLength: 12 })
  const any: fc.Arbitrary<Envelope> = fc.record({
    id: text,
    device: text,
    sequence: fc.nat(),
    clock: text,
    user: text,
    stream: fc.record({ kind: fc.constantFrom('client', 'administration', 'clinic'), id: text }),
    kind: text,
    version: fc.nat(),
    at: text,
  })
  fc.assert(
    fc.property(any, (one) => {
      expect(envelopeBytes(one)).toEqual(bodyBytes(one))
    }),
  )
})

test('a hash that was written once stays what it was', () => {
  const digest = digestOf(Buffer.alloc(32, 5), bodyBytes({ kind: 'client-added' }))
  expect(hashOf(FIRST, envelope, digest).toString('hex')).toMatchInlineSnapshot(
    `"a84783ddebe7751be039e0a6bd50fdc3c9f0257ef01989e65d32b0d19907ed99"`,
  )
})
