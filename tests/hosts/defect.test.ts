import { describe, expect, test } from 'vitest'
import { placeOf } from '../../main/hosts/defect.ts'

describe('what is logged of a defect', () => {
  test('is its sort and the way through our code, and nothing that the error says', () => {
    for (const message of ['Rosa Marsh has no shoe', 'a\n    at Rosa Marsh (bed 4)\n b', '']) {
      const logged = placeOf(new TypeError(message))
      expect(logged).toMatch(/^TypeError\n\s+at .*defect\.test\.ts/)
      expect(logged).not.toMatch(/Rosa|shoe|bed/)
    }
  })

  test('of something thrown that is no error, only what sort of value it is', () => {
    expect(placeOf('Rosa Marsh')).toBe('string')
  })
})
