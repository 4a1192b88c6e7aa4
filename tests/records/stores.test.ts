import { expect, test } from 'vitest'
import type { StoreKind } from '../../main/records/index.ts'
import { addUser, folder, HASH, open, openedBy } from './clinic.ts'
import { begin, furnished } from './clinic.ts'
import { faultOf } from './fault.ts'

test.each([
  ['clinic', 'demo'],
  ['clinic', 'rehearsal'],
  ['demo', 'clinic'],
  ['rehearsal', 'clinic'],
] as const)('a %s store is never opened as a %s store', (is: StoreKind, asked: StoreKind) => {
  const at = folder()
  open(at, { store: is }).close()
  expect(faultOf(() => open(at, { store: asked }))).toEqual({
    code: 'records.other-store',
    detail: { folder: at, found: is, asked },
  })
  expect(open(at, { store: is }).store).toBe(is)
})

test('a rehearsal is kept in the rehearsal store only, and nothing else is kept there', () => {
  const records = open(folder())
  furnished(records)
  const rehearsals = open(folder(), { store: 'rehearsal' })
  const user = addUser(rehearsals, 'Ada')
  expect(() => begin(rehearsals, user, null)).toThrow(TypeError)
  const id = rehearsals.newId()
  const opened = { ...openedBy(user, 'Ada'), rehearsal: true } as never
  rehearsals.append({ kind: 'administration', id }, [opened], user)
  expect(rehearsals.read.administration(id)).toMatchObject({ rehearsal: true, hash: HASH })
  expect(records.read.administration(id)).toBeNull()
})
