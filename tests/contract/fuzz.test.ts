import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { createDispatcher } from '../../main/contract/dispatch.ts'
import { reply } from '../../main/contract/procedure.ts'
import { procedures } from '../../main/contract/procedures.ts'
import { handlersWith } from './handlers.ts'

const NAMES = Object.keys(procedures)
const USER = { id: '01890000-0000-7000-8000-000000000001', name: 'Ada Venn' }
const session = { id: 'fuzz', user: USER }

describe('whatever is sent', () => {
  test('an answer comes back that is a reply, and nothing is thrown', async () => {
    const { dispatch } = createDispatcher({ push: () => {}, onDefect: () => {}, handlers: handlersWith({}) })
    const name = fc.oneof(fc.constantFrom(...NAMES), fc.string())
    await fc.assert(
      fc.asyncProperty(
        name,
        fc.anything({ withDate: true, withMap: true }),
        fc.uuid(),
        async (call, input, id) => {
          const answered = await dispatch(session, call, input, id)
          expect(reply.safeParse(answered).success).toBe(true)
          expect(answered.ok).toBe(false)
        },
      ),
      { numRuns: 2_000 },
    )
  })

  test('every call takes no key that it doesn’t name', async () => {
    const { dispatch } = createDispatcher({ push: () => {}, onDefect: () => {}, handlers: handlersWith({}) })
    for (const name of NAMES) {
      const answered = await dispatch(session, name, { surplus: 1 }, crypto.randomUUID())
      expect([name, answered]).toMatchObject([name, { ok: false, fault: { code: 'bad_input' } }])
    }
  })

  test('a call that needs a user is refused to nobody, whatever it says', async () => {
    const { dispatch } = createDispatcher({ push: () => {}, onDefect: () => {}, handlers: handlersWith({}) })
    const closed = Object.entries(procedures).filter(([, { needs }]) => needs === 'user')
    for (const [name] of closed) {
      const answered = await dispatch({ id: 'x', user: null }, name, { user: USER }, crypto.randomUUID())
      expect(answered).toEqual({ ok: false, fault: { code: 'user_needed', detail: { name } } })
    }
    expect(NAMES.length - closed.length).toBe(3)
  })
})
