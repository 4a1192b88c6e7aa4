import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import type { AdministrationView, StepView } from '../../protocols/runner/view.ts'
import { COMMAND_KEYS } from '../../renderer/input/keys.ts'
import { CommandList } from '../../renderer/screens/administration/commands.tsx'
import { mainIntent, mainOffer } from '../../renderer/screens/administration/intents.ts'
import { Halted, Stale } from '../../renderer/screens/administration/waits.tsx'
import { faceOf, faces } from '../../renderer/steps/registry.ts'
import { Giving, libraryProtocol } from '../runner/giving.ts'
import { drawn, mainLabel, nobody } from './drawn.tsx'

/** Does what the screen would do: the main key where the chart offers it, else what the step waits for. */
function goOn(giving: Giving): void {
  const view = giving.view()
  const runs = view.step?.state === 'running'
  const waits = view.step !== null && faceOf(view.step).main(view.step, null).isWaiting === true
  const body = runs || waits ? null : mainIntent(giving.stamp(2000), () => null)(view)
  if (body !== null) return void giving.do(body)
  const { step } = view
  if (step === null) throw new Error('Nothing to do')
  const { face } = step
  if (step.kind === 'timed') return void giving.press('stopped', 21_400)
  if (step.kind === 'measured')
    return void giving.do(giving.body('entered', { value: 31.5, confirmed: false }))
  if (step.kind === 'rest') return void giving.rest()
  if (step.state === 'ended') return void giving.do(giving.body('entered', { count: 61, confirmed: false }))
  giving.now = Number((face.startedAt as { at: number }).at) + Number(face.window) * 1000
  giving.do(giving.body('window_ended', { at: giving.now, clock: giving.clock }))
}

/** Every view from the first step to the finished test, as the screen's own keys lead through it. */
function* walk(protocol: string): Generator<AdministrationView> {
  const giving = new Giving(libraryProtocol(protocol))
  giving.begin()
  for (let turn = 0; turn < 400; turn += 1) {
    const view = giving.view()
    yield view
    if (view.phase === 'finished') return
    goOn(giving)
  }
  throw new Error('It does not end')
}

describe.each(['nine_hole_peg', 'box_and_block', 'grip_strength'])(
  'The screen leads through %s',
  (protocol) => {
    const views = [...walk(protocol)]
    const steps = views.filter((view): view is AdministrationView & { step: StepView } => view.step !== null)

    it('from the first step to the end by nothing but what it offers', () => {
      expect(views.at(-1)?.phase).toBe('finished')
      expect(steps.length).toBeGreaterThan(12)
    })

    it('draws every step without a missing word, a lost number or an empty next action', () => {
      for (const view of steps) {
        const markup = drawn(view)
        expect(markup).not.toMatch(/NaN|undefined|\[object/)
        expect(mainLabel(markup)).not.toBe('')
      }
    })

    it('says where it is in words: the hand, and which trial', () => {
      const places = steps.map((view) => /giving-place">([^<]*)</.exec(drawn(view))?.[1] ?? '')
      expect(places.some((place) => place.startsWith('Right hand'))).toBe(true)
      expect(places.some((place) => place.startsWith('Left hand'))).toBe(true)
    })

    it('has a face for every kind that the protocol uses', () => {
      for (const { step } of steps) expect(faces.has(step.kind)).toBe(true)
    })

    it('shows the words of the step and what may be said, as the protocol has them', () => {
      for (const { step, ...view } of steps) {
        const text = drawn({ ...view, step })
          .replaceAll('&#x27;', "'")
          .replaceAll('&quot;', '"')
          .replaceAll('&amp;', '&')
        for (const words of [step.text ?? '', ...step.maySay]) expect(text).toContain(words)
      }
    })

    it('keeps the trials so far in sight at every step, each with its value', () => {
      for (const view of steps) {
        const list = /giving-trials">(.*?)<\/ol>/.exec(drawn(view))?.[1] ?? ''
        const given = view.trials.filter(({ status }) => status !== 'running')
        expect(list.match(/<li>/g) ?? []).toHaveLength(given.length)
        expect(list.match(/21\.4 s|61 (blocks|taps)|31\.5/g) ?? []).toHaveLength(given.length)
      }
    })
  },
)

const running = (): Giving => {
  const giving = new Giving(libraryProtocol('nine_hole_peg'))
  return giving.begin().toTrial().start()
}

describe('The stage while a clock runs', () => {
  it('offers void, happenings, stop and cover, and lets everything else wait', () => {
    const view = running().view()
    const list = renderToStaticMarkup(<CommandList view={view} taken={[]} onCommand={() => {}} />)
    const open = [...list.matchAll(/aria-disabled="(true|false)">([^<]*)</g)].map(([, shut, label]) => [
      label,
      shut,
    ])
    expect(Object.fromEntries(open)).toMatchObject({
      Void: 'false',
      'Stop for safety': 'false',
      'Cover the screen': 'false',
      Deviation: 'true',
      Pause: 'true',
      Remark: 'true',
    })
  })

  it('tells that the clock runs in words, and shows no number while the clock is hidden', () => {
    const view = running().view()
    expect(drawn(view)).toContain('The clock is running')
    expect(drawn(view)).not.toMatch(/\d+\.\d s/)
  })

  it('is told by its face, and by no other state', () => {
    const giving = running()
    const step = giving.view().step
    expect(step && faceOf(step).isRunning(step)).toBe(true)
    giving.press('stopped', 20_000)
    const after = giving.view().step
    expect(after && faceOf(after).isRunning(after)).toBe(false)
  })
})

describe('The stage in other states', () => {
  it('says that something is not saved, in words', () => {
    const view = new Giving(libraryProtocol('nine_hole_peg')).begin().view()
    expect(drawn(view, { saved: false })).toContain('Not saved yet')
  })

  it('says in place why an act was not taken', () => {
    const view = new Giving(libraryProtocol('nine_hole_peg')).begin().view()
    expect(drawn(view, { refusal: { refused: 'key_dead', detail: { leftMs: 400 } } })).toContain(
      'Too soon after the stop',
    )
    expect(drawn(view, { refusal: { refused: 'never_heard_of', detail: {} } })).toContain('never_heard_of')
  })

  it('waits visibly while paused, with the way on', () => {
    const giving = new Giving(libraryProtocol('nine_hole_peg')).begin()
    giving.do({ kind: 'paused', reason: 'Telephone' })
    const markup = drawn(giving.view())
    expect(markup).toContain('Telephone')
    expect(mainLabel(markup)).toBe('Go on')
  })

  it('asks what ends and why once it was stopped for the client’s sake, with nothing chosen beforehand', () => {
    const giving = new Giving(libraryProtocol('nine_hole_peg')).begin().toTrial().start()
    giving.do({ kind: 'halted', stamp: giving.stamp() })
    const markup = renderToStaticMarkup(<Halted view={giving.view()} onAct={nobody} />)
    expect(markup).toContain('What ends?')
    expect(markup).not.toMatch(/checked=""|data-selected/)
  })

  it('lets nothing go on after a long gap before it is decided how', () => {
    const view = new Giving(libraryProtocol('nine_hole_peg')).begin().view()
    const markup = renderToStaticMarkup(<Stale view={{ ...view, phase: 'stale' }} onAct={nobody} />)
    expect(markup).toContain('Repeat the practice first')
    expect(markup).not.toMatch(/checked=""|data-selected/)
  })

  it('ends by the main key once everything was given', () => {
    const views = [...walk('nine_hole_peg')]
    const end = views.find((view) => view.phase === 'giving' && view.step === null)
    expect(end && mainOffer(end)).toBe('finished')
    expect(end && mainLabel(drawn(end))).toBe('Finish the test')
  })

  it('has a key for every command in the list', () => {
    const view = new Giving(libraryProtocol('nine_hole_peg')).begin().view()
    const list = renderToStaticMarkup(<CommandList view={view} taken={[]} onCommand={() => {}} />)
    // The list doesn’t list itself, and this test has nobody who rates another day.
    const listed = Object.keys(COMMAND_KEYS).filter((command) => command !== 'help' && command !== 'later')
    expect([...list.matchAll(/<kbd/g)]).toHaveLength(listed.length)
  })
})
