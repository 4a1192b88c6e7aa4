import { expect, test } from 'vitest'
import { clientChanged, type Records } from '../../main/records/index.ts'
import { addClient, addUser, folder, open, profileOf } from './clinic.ts'

const names = (records: Records, text: string, limit = 20) =>
  records.read.searchClients(text, limit).found.map((client) => client.profile.name)

function registry() {
  const records = open(folder())
  const user = addUser(records, 'Ada')
  const people: readonly (readonly [string, string])[] = [
    ['Łukasz Ångström', 'K-104'],
    ['Jürgen Groß', 'K-105'],
    ['Zoë O’Brien', 'K-1066'],
    ['İpek Yılmaz', 'M-7'],
    ['محمد علي', 'M-8'],
    ['王小明', 'M-9'],
    ['Ann "Percent" 100%', 'x_y'],
  ]
  const ids = people.map(([name, number]) => addClient(records, user, profileOf(name, { number })))
  return { records, user, ids }
}

test('nobody is listed before three letters or digits', () => {
  const { records } = registry()
  for (const text of ['', 'k', 'Lu', '  j ü ', 'K-1', '%%%', '___', '" OR "']) {
    expect(records.read.searchClients(text, 20)).toEqual({ enough: false, found: [], more: false })
  }
})

test('case and accents make no difference, on either side', () => {
  const { records } = registry()
  for (const text of ['lukasz', 'ŁUKASZ', 'angstrom', 'Ångström', 'GSTR']) {
    expect(names(records, text)).toEqual(['Łukasz Ångström'])
  }
  expect(names(records, 'gross')).toEqual(['Jürgen Groß'])
  expect(names(records, 'JURGEN')).toEqual(['Jürgen Groß'])
  expect(names(records, 'ipek yilmaz')).toEqual(['İpek Yılmaz'])
  expect(names(records, 'محمد')).toEqual(['محمد علي'])
  expect(names(records, '王小明')).toEqual(['王小明'])
})

test('every word must be found, in name or number, in any order, short words too', () => {
  const { records } = registry()
  expect(names(records, 'gross jurgen')).toEqual(['Jürgen Groß'])
  expect(names(records, 'K-10').toSorted()).toEqual(
    ['Jürgen Groß', 'Zoë O’Brien', 'Łukasz Ångström'].toSorted(),
  )
  expect(names(records, 'zoe k-1066')).toEqual(['Zoë O’Brien'])
  expect(names(records, 'zo br')).toEqual(['Zoë O’Brien'])
  expect(names(records, 'zoe k-104')).toEqual([])
})

test('what is typed is text and never an operator', () => {
  const { records } = registry()
  expect(names(records, '100%')).toEqual(['Ann "Percent" 100%'])
  expect(names(records, '"percent"')).toEqual(['Ann "Percent" 100%'])
  expect(names(records, 'ann x_')).toEqual(['Ann "Percent" 100%'])
  for (const text of ['abc*', 'NOT abc', 'search:abc', 'abc AND', '(abc', "abc'--", 'ann k_']) {
    expect(names(records, text)).toEqual([])
  }
})

test('a renamed client is found by the new name only', () => {
  const { records, user, ids } = registry()
  records.append(
    { kind: 'client', id: ids[0] ?? '' },
    [clientChanged.make({ profile: profileOf('Lucas Engström'), reason: 'Name changed.' })],
    user,
  )
  expect(names(records, 'angstrom')).toEqual([])
  expect(names(records, 'engstrom')).toEqual(['Lucas Engström'])
})

test('more than the limit is said, and the list is in order of names', () => {
  const records = open(folder())
  const user = addUser(records, 'Ada')
  for (const name of ['Cara Twin', 'Abe Twin', 'Bob Twin']) addClient(records, user, profileOf(name))
  expect(names(records, 'twin')).toEqual(['Abe Twin', 'Bob Twin', 'Cara Twin'])
  expect(records.read.searchClients('twin', 2)).toMatchObject({ more: true })
  expect(records.read.searchClients('twin', 3)).toMatchObject({ more: false })
})
