import { describe, expect, it } from 'vitest'
import { CallFailed } from '../../main/contract/client.ts'
import type { Input, Name, Output } from '../../main/contract/procedures.ts'
import type { EventBody } from '../../protocols/runner/events.ts'
import { type DeskHost, openDesk } from '../../renderer/screens/administration/desk.ts'
import { Giving, libraryProtocol } from '../runner/giving.ts'

/** A host over a real runner whose answers can get lost before or after the act was written. */
function madeHost() {
  const giving = new Giving(libraryProtocol('nine_hole_peg')).begin()
  const written: EventBody[] = []
  let losing: ('before' | 'after')[] = []
  let faulty: string | null = null
  const act = (body: EventBody): Output<'administrations.act'> => {
    const way = losing.shift()
    if (way === 'before') throw new CallFailed({ code: 'host_gone', detail: {} })
    const refused = giving.take(body)
    if (refused === null) written.push(body)
    if (way === 'after') throw new CallFailed({ code: 'host_gone', detail: {} })
    const view = giving.view()
    return refused === null
      ? { taken: true, view, saved: true }
      : { taken: false, refusal: { refused, detail: {} }, view, saved: true }
  }
  const call = async <N extends Name>(name: N, input: Input<N>): Promise<Output<N>> => {
    if (faulty !== null) throw new CallFailed({ code: faulty, detail: {} })
    const answer =
      name === 'administrations.view'
        ? { view: giving.view(), saved: true }
        : act((input as Input<'administrations.act'>).body)
    return answer as Output<N>
  }
  const host: DeskHost = { call, later: async () => {} }
  return {
    giving,
    written,
    host,
    lose: (ways: readonly ('before' | 'after')[]) => {
      losing = [...ways]
    },
    fail: (code: string | null) => {
      faulty = code
    },
  }
}

const remark = (text: string) => () => ({ kind: 'remarked', text }) as const

async function opened() {
  const made = madeHost()
  const desk = openDesk(made.host, { store: 'records', id: '0192f000-0000-7000-8000-000000000000' })
  await desk.read()
  return { ...made, desk }
}

describe('The screen’s hold on an administration', () => {
  it('shows nothing new before the host has answered', async () => {
    const { desk, giving } = await opened()
    const before = desk.state().view
    const acted = desk.act(remark('one'), false)
    expect(desk.state().view).toBe(before)
    await acted
    expect(desk.state().view?.remarks).toEqual(giving.view().remarks)
  })

  it('sends acts one after another, each meant by the view that stands when its turn comes', async () => {
    const { desk, written } = await opened()
    const places: string[] = []
    const next = () =>
      desk.act((view) => {
        places.push(view.step?.name ?? '')
        const pieces = (view.step?.face.pieces ?? []) as { id: string }[]
        return view.step?.kind === 'kit'
          ? {
              kind: 'kit.checked',
              step: view.step.name,
              place: view.step.place,
              ticked: pieces.map(({ id }) => id),
              problems: [],
              stamp: null,
            }
          : { kind: 'remarked', text: 'here' }
      }, false)
    await Promise.all([next(), next()])
    expect(new Set(places).size).toBe(2)
    expect(written.map(({ kind }) => kind)).toEqual(['kit.checked', 'remarked'])
  })

  it('loses no act and doubles none, whether it was lost on the way there or its answer on the way back', async () => {
    const { desk, written, lose } = await opened()
    lose(['before', 'before'])
    expect((await desk.act(remark('lost twice on the way'), false)).taken).toBe(true)
    lose(['after'])
    expect((await desk.act(remark('written, the answer lost'), false)).taken).toBe(true)
    expect(written.map((body) => 'text' in body && body.text)).toEqual([
      'lost twice on the way',
      'written, the answer lost',
    ])
    expect(desk.state().fault).toBeNull()
  })

  it('says in place why an act was not taken, and forgets it with the next', async () => {
    const { desk } = await opened()
    const { taken, refusal } = await desk.act(() => ({ kind: 'resumed' }), false)
    expect(taken).toBe(false)
    expect(desk.state().refusal).toEqual(refusal)
    await desk.act(remark('on'), false)
    expect(desk.state().refusal).toBeNull()
  })

  it('leaves a refusal to whoever asked quietly', async () => {
    const { desk } = await opened()
    const { refusal } = await desk.act(() => ({ kind: 'resumed' }), true)
    expect(refusal).not.toBeNull()
    expect(desk.state().refusal).toBeNull()
  })

  it('keeps what it shows, and says so, when a call fails for good', async () => {
    const { desk, fail } = await opened()
    const before = desk.state().view
    fail('records_refuse')
    expect((await desk.act(remark('no'), false)).taken).toBe(false)
    expect(desk.state().fault?.code).toBe('records_refuse')
    expect(desk.state().view).toBe(before)
    fail(null)
    expect((await desk.act(remark('yes'), false)).taken).toBe(true)
    expect(desk.state().fault).toBeNull()
  })

  it('does nothing where a press means nothing any more', async () => {
    const { desk, written } = await opened()
    expect(await desk.act(() => null, false)).toEqual({ taken: false, refusal: null })
    expect(written).toEqual([])
  })

  it('tells its listeners of every change, until they have heard enough', async () => {
    const { desk } = await opened()
    let heard = 0
    const enough = desk.listen(() => {
      heard += 1
    })
    await desk.act(remark('one'), false)
    expect(heard).toBeGreaterThan(0)
    const before = heard
    enough()
    await desk.act(remark('two'), false)
    expect(heard).toBe(before)
  })
})
