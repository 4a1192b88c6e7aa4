/** The Moberg pick-up test against what is published of it. */
import { expect, test } from 'vitest'
import { parse } from 'yaml'
import { fileOf } from '../library/folders.ts'
import { arms, facts, type Giving, give } from '../library/giving.ts'

const protocol = parse(fileOf('moberg_pickup', 'protocol.yaml')) as {
  readonly kit: { readonly objects: { readonly check: string }; readonly box: { readonly check: string } }
  readonly lists: { readonly things: readonly { readonly id: string }[] }
}

/** Sizes in centimetres that a text names. */
const sizes = (text: string): readonly number[] =>
  [...text.matchAll(/(\d+(?:\.\d+)?)(?= cm| and \d| by \d)/g)].map(([, size]) => Number(size))

// Seen, on a page of a public encyclopedia: fine screw of 5 cm, wide screw of 2.3, clips of 3.3 and 2.8, ring of 1.4,
// safety pin of 3.8, coins of 2.8 and 2.2, key of 5.5; box of 3 by 8 by 5 cm.
test('the set that was seen in print has its sizes, and the box', () => {
  const [, seen = ''] = protocol.kit.objects.check.split('Set seen in print:')
  expect(sizes(seen)).toEqual([5, 2.3, 3.3, 2.8, 1.4, 3.8, 2.8, 2.2, 5.5])
  expect([...sizes(protocol.kit.box.check)].sort()).toEqual([3, 5, 8])
})

// Memory: twelve objects of the modified form, two passes, 30 s each, the modified form's ring and little finger bound.
test('twelve things are named twice, each once a pass, in an order drawn anew', () => {
  const given = give('moberg_pickup', {
    facts: facts(arms('affected', 'absent')),
    conditions: { object_set: 'twelve_graded', form: 'modified' },
  })
  given.run(20).run(20)
  for (let thing = 0; thing < 24; thing += 1) given.run(3).answers('right')
  const rows = given.scores().trials.filter(({ step, place }) => step === 'felt' && place.hand === 'right')
  for (const pass of [1, 2]) {
    const things = rows.filter(({ place }) => place.pass === pass).map(({ place }) => String(place.thing))
    expect([...things].sort()).toEqual(protocol.lists.things.map(({ id }) => id).sort())
  }
})

// Seen, abstracts of 1999 and 2007: the dominant hand is quicker. Common practice: without sight it takes longer.
test('seen on the public page: with sight before without, the dominant hand before the other within each', () => {
  const given: Giving = give('moberg_pickup', { conditions: { object_set: 'twelve_measured' } })
  const places: string[] = []
  for (const seconds of [12, 13, 25, 28]) {
    const { part, hand } = given.on().step()?.place ?? {}
    places.push(`${part} ${hand}`)
    given.run(seconds).answers('as_usual')
  }
  expect(places).toEqual(['open right', 'open left', 'closed right', 'closed left'])
  expect(given.step()).toBeNull()
})
