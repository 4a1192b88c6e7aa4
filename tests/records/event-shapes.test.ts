import { expect, test } from 'vitest'
import { z } from 'zod'
import { EVENT_KINDS, eventFileName } from '../../main/records/events.ts'

test('an event kind stands in the file of its name and version', () => {
  for (const [name, kind] of EVENT_KINDS) expect(eventFileName(kind.kind, kind.version)).toBe(name)
})

test('the shape of a kind that was once used never changes: a new shape is a new version', async () => {
  const shapes = [...EVENT_KINDS].map(
    ([name, kind]) => `${name} ${JSON.stringify(z.toJSONSchema(kind.body))}\n`,
  )
  await expect(shapes.toSorted().join('\n')).toMatchFileSnapshot('./event-shapes.txt')
})
