import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, test } from 'vitest'
import type { Push } from '../../main/contract/pushes.ts'
import {
  act,
  addClient,
  type Desk,
  faultOf,
  give,
  openDesk,
  LIBRARY,
  PEGS,
  until,
  begin,
  isFinished,
} from './desk.ts'

let desk: Desk
let own = ''
const IN_LIBRARY = readdirSync(LIBRARY)
  .filter((name) => existsSync(join(LIBRARY, name, 'protocol.yaml')))
  .toSorted()
const OWN = { from: 'clinic', key: 'our_pegs' } as const
const edit = (change: (text: string) => string) => {
  const file = join(own, 'protocol.yaml')
  writeFileSync(file, change(readFileSync(file, 'utf8')))
}

beforeEach(async () => {
  desk = await openDesk()
  own = join(desk.clinic.ownProtocols, OWN.key)
  cpSync('protocols/library/nine_hole_peg', own, { recursive: true })
  edit((text) => text.replace('id: nine_hole_peg', 'id: our_pegs'))
  return () => desk.clinic.close()
})

const ownLine = async () =>
  (await desk.client.call('protocols.list', {})).find(({ key, from }) => key === OWN.key && from === OWN.from)

const drop = (text: string) => {
  const folder = join(desk.folder, 'words', PEGS.key)
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, 'licensed.yaml'), text)
}
const pegs = async () =>
  (await desk.client.call('protocols.list', {})).find(
    ({ key, from }) => key === PEGS.key && from === PEGS.from,
  )

describe('words of the clinic’s own for a test of the library', () => {
  test('are offered beside the test’s own, and the administration says that they were used', async () => {
    drop('language: en\nfor: nine_hole_peg\ntexts:\n  title: Pegs, as licensed\n')
    expect((await desk.client.call('protocols.read', PEGS)).wordings).toContain('licensed')
    const opened = await desk.client.call('administrations.open', {
      store: 'rehearsal',
      protocol: PEGS,
      client: null,
      wording: 'licensed',
    })
    expect(opened.protocol).toMatchObject({
      id: 'nine_hole_peg',
      wording: 'licensed',
      title: 'Pegs, as licensed',
    })
  })

  test('with a mistake in them are told, and the test is given in its own words all the same', async () => {
    drop('language: en\nfor: nine_hole_peg\ntexts:\n  no_such.text: Pegs\n')
    const line = await pegs()
    expect(line?.sound).toBe(true)
    expect(line?.problems.filter(({ severity }) => severity === 'error')).toMatchObject([
      { code: 'wording_key_unknown', file: 'nine_hole_peg/words/licensed.yaml', line: 4 },
    ])
    await give(desk, PEGS, null)
    expect(desk.defects).toEqual([])
  })
})

describe('the clinic’s own folder', () => {
  test('a clean protocol is offered beside the library’s, marked as the clinic’s own', async () => {
    const lines = await desk.client.call('protocols.list', {})
    expect(lines.filter(({ from }) => from === 'library').map(({ id }) => id)).toEqual(IN_LIBRARY)
    expect(await ownLine()).toMatchObject({ sound: true, id: 'our_pegs', from: 'clinic' })
    const view = await give(desk, OWN, await addClient(desk, 'Ada Marsh'))
    expect(view.protocol).toMatchObject({ id: 'our_pegs', from: 'clinic' })
  })

  test('a faulty one is listed with its problems at their lines, can’t be given, and breaks nothing', async () => {
    edit((text) => text.replace(/^version: .*$/m, 'version: soon'))
    const line = await ownLine()
    expect(line).toMatchObject({ sound: false, id: null, title: OWN.key })
    const row = readFileSync(join(own, 'protocol.yaml'), 'utf8').split('\n').indexOf('version: soon') + 1
    expect(line?.problems[0]).toMatchObject({ severity: 'error', file: 'our_pegs/protocol.yaml', line: row })
    for (const call of [
      desk.client.call('protocols.read', OWN),
      desk.client.call('administrations.open', {
        store: 'rehearsal',
        protocol: OWN,
        client: null,
        wording: null,
      }),
    ])
      expect(await faultOf(call)).toMatchObject({ code: 'protocol_faulty', detail: { key: OWN.key } })
    await give(desk, PEGS, null)
    expect(desk.defects).toEqual([])
  })

  test('one in a language version to come says so in a sentence, at its line, and the rest is offered', async () => {
    edit((text) => text.replace(/^evenhand: 1$/m, 'evenhand: 2'))
    const line = await ownLine()
    const row = readFileSync(join(own, 'protocol.yaml'), 'utf8').split('\n').indexOf('evenhand: 2') + 1
    expect(line?.sound).toBe(false)
    expect(line?.problems).toMatchObject([{ code: 'language_version', severity: 'error', line: row }])
    expect(line?.problems[0]?.message).toContain('version 2')
    expect((await desk.client.call('protocols.list', {})).filter(({ sound }) => sound)).toHaveLength(
      IN_LIBRARY.length,
    )
  })

  test.each([
    ['an empty folder', () => mkdirSync(join(desk.clinic.ownProtocols, 'odd'))],
    [
      'a folder of notes',
      () => {
        mkdirSync(join(desk.clinic.ownProtocols, 'odd'))
        writeFileSync(join(desk.clinic.ownProtocols, 'odd', 'notes.txt'), 'x')
      },
    ],
    [
      'a file that is no YAML',
      () => {
        mkdirSync(join(desk.clinic.ownProtocols, 'odd'))
        writeFileSync(join(desk.clinic.ownProtocols, 'odd', 'protocol.yaml'), '{{{:::')
      },
    ],
    [
      'bytes that are no text',
      () => {
        mkdirSync(join(desk.clinic.ownProtocols, 'odd'))
        writeFileSync(join(desk.clinic.ownProtocols, 'odd', 'protocol.yaml'), Buffer.from([0xff, 0xfe, 0x00]))
      },
    ],
  ])('%s is listed as faulty beside the rest', async (_, make) => {
    make()
    const lines = await desk.client.call('protocols.list', {})
    const odd = lines.find(({ key }) => key === 'odd')
    expect(odd?.sound).toBe(false)
    expect(odd?.problems.length).toBeGreaterThan(0)
    expect(lines.filter(({ sound }) => sound)).toHaveLength(IN_LIBRARY.length + 1)
  })

  test('a mended one is offered without a restart, and open screens are told', async () => {
    edit((text) => text.replace(/^version: .*$/m, 'version: soon'))
    expect((await ownLine())?.sound).toBe(false)
    const told = new Promise<Push>((resolve) => desk.client.listen(resolve))
    edit((text) => text.replace(/^version: .*$/m, 'version: 1.0.2'))
    expect(await told).toEqual({ push: 'protocols' })
    expect(await ownLine()).toMatchObject({ sound: true, version: '1.0.2' })
  })

  test('one with the id of a library’s is offered with a warning', async () => {
    edit((text) => text.replace('id: our_pegs', 'id: nine_hole_peg'))
    const line = await ownLine()
    expect(line?.sound).toBe(true)
    expect(line?.problems.map(({ code }) => code)).toContain('id_in_library')
  })

  test('a name that is a path leads nowhere', async () => {
    for (const key of ['../protocols/our_pegs', '..', '/etc', 'our_pegs/norms'])
      expect((await faultOf(desk.client.call('protocols.read', { from: 'clinic', key })))?.code).toBe(
        'no_such_protocol',
      )
  })
})

describe('an administration keeps the protocol it was given by', () => {
  test('changed in the middle, the test goes on by the old text', async () => {
    const view = await begin(desk, OWN, await addClient(desk, 'Ada Marsh'))
    edit((text) => text.replace(/^title: .*$/m, 'title: Renamed').replace(/^version: .*$/m, 'version: 2.0.0'))
    const done = await until(desk, view, isFinished)
    expect(done.protocol).toEqual(view.protocol)
  })

  test('removed in the middle, it goes on after a restart to its end and its report', async () => {
    const view = await begin(desk, OWN, await addClient(desk, 'Ada Marsh'))
    rmSync(own, { recursive: true })
    const { folder } = desk
    desk.clinic.close()
    desk = await openDesk({ folder })
    const which = { store: 'records', id: view.id } as const
    const cut = await desk.client.call('administrations.view', which)
    const confirmed = await act(desk, cut.view, { kind: 'confirmed', what: 'resume' })
    const done = await until(desk, confirmed, isFinished)
    expect(done.protocol).toEqual(view.protocol)
    expect((await desk.client.call('administrations.result', which)).result.complete).toBe(true)
    expect((await desk.client.call('administrations.report', which)).pdfBase64.length).toBeGreaterThan(1000)
    expect(desk.defects).toEqual([])
  })

  test('removed after it was used, result and report are still there', async () => {
    const { id } = await give(desk, OWN, await addClient(desk, 'Ada Marsh'))
    const which = { store: 'records', id } as const
    const before = await desk.client.call('administrations.result', which)
    rmSync(own, { recursive: true })
    const { folder } = desk
    desk.clinic.close()
    desk = await openDesk({ folder })
    expect(await ownLine()).toBeUndefined()
    expect(await desk.client.call('administrations.result', which)).toEqual(before)
    expect((await desk.client.call('administrations.report', which)).pdfBase64.length).toBeGreaterThan(1000)
  })
})

describe('a norm table that a named person has verified', () => {
  test('is marked so in results, until the mark is taken back or the table changes', async () => {
    const { id } = await give(desk, OWN, await addClient(desk, 'Ada Marsh'))
    const standing = async () => {
      const { result } = await desk.client.call('administrations.result', { store: 'records', id })
      const [norm] = result.scores
        .flatMap(({ norms }) => norms)
        .filter(({ norm: name }) => name === 'adults_1985')
      return [norm?.standing, norm?.verifiedBy]
    }
    expect(await standing()).toEqual(['memory', null])
    const verify = (verified: boolean) =>
      desk.client.call('norms.verify', { protocol: OWN, norm: 'adults_1985', verified })
    await verify(true)
    expect(await standing()).toEqual(['verified', 'Ada Venn'])
    await verify(false)
    expect(await standing()).toEqual(['memory', null])
    const fault = await faultOf(
      desk.client.call('norms.verify', { protocol: OWN, norm: 'nobody', verified: true }),
    )
    expect(fault).toEqual({ code: 'no_such_norm', detail: { norm: 'nobody' } })
  })
})

const tableNow = async () => {
  const tables = await desk.client.call('norms.read', { from: 'clinic', key: OWN.key })
  return tables.find(({ norm }) => norm === 'adults_1985')
}

describe('a norm table to be compared with its source', () => {
  test('is shown row by row as it stands in the file, and says who has compared it', async () => {
    const table = await tableNow()
    expect(table?.rows.length).toBeGreaterThan(0)
    expect(table?.rows.every(({ line }) => line > 1)).toBe(true)
    expect(table?.verified).toBeNull()
    await desk.client.call('norms.verify', { protocol: OWN, norm: 'adults_1985', verified: true })
    expect((await tableNow())?.verified?.by).toBe('Ada Venn')
    await desk.client.call('norms.verify', { protocol: OWN, norm: 'adults_1985', verified: false })
    expect((await tableNow())?.verified).toBeNull()
  })
})

test('tables of every kind are shown by the columns of their file, bands in words', async () => {
  const path = join(desk.clinic.ownProtocols, 'ring_board')
  cpSync('tests/language/corpus/sound/everything', path, { recursive: true })
  const tables = await desk.client.call('norms.read', { from: 'clinic', key: 'ring_board' })
  const shown = Object.fromEntries(tables.map(({ norm, columns, rows }) => [norm, [columns, rows[0]?.cells]]))
  expect(shown).toEqual({
    means: [
      ['schooling', 'mean', 'sd'],
      ['0..8', 16.1, 1.9],
    ],
    ranks: [
      ['wood', 'glasses', 'p2.5', 'p50', 'p97.5'],
      ['oak', null, 14, 18, 26],
    ],
    growth: [
      ['l', 'm', 's'],
      [0.8, 38.2, 0.14],
    ],
    strong: [
      ['arm', 'cut', 'below', 'above', 'equal'],
      ['affected', 80, 'Weak', 'Firm', 'above'],
    ],
    speed: [
      ['from', 'below', 'band'],
      [null, 16, 'Quick'],
    ],
  })
})

describe('the clinic’s kit', () => {
  const piece = {
    item: 'board',
    ownName: 'Board 2',
    conditions: {},
    unit: '',
    lastCheck: null,
    nextCheck: null,
  }

  test('a piece is registered once, and its next check can be set later', async () => {
    const card = await desk.client.call('protocols.read', PEGS)
    const item = card.kit.find(({ registered }) => registered)?.id ?? ''
    const kept = await desk.client.call('kit.register', {
      protocol: 'nine_hole_peg',
      piece: { ...piece, item },
    })
    const checked = { ...kept, nextCheck: '2027-01-31' }
    await desk.client.call('kit.register', { protocol: 'nine_hole_peg', piece: checked })
    expect(await desk.client.call('kit.list', { protocol: 'nine_hole_peg' })).toEqual([checked])
    const { kit } = await desk.client.call('administrations.proposal', { protocol: PEGS, client: null })
    expect(kit).toEqual([checked])
  })

  test('what the protocol knows no kit for, or a day that there is not, is refused', async () => {
    const register = (given: object) =>
      faultOf(desk.client.call('kit.register', { protocol: 'nine_hole_peg', piece: { ...piece, ...given } }))
    expect(await register({ item: 'anvil' })).toEqual({ code: 'no_such_kit', detail: { item: 'anvil' } })
    const item = (await desk.client.call('protocols.read', PEGS)).kit.find(({ registered }) => registered)?.id
    expect((await register({ item, lastCheck: '2026-02-30' }))?.code).toBe('date_impossible')
  })
})
