import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import {
  CHANGE_CAUTIONS,
  CHANGE_SENTENCES,
  MISSING,
  NORM_CAUTIONS,
  OTHER_HAND,
} from '../../protocols/scoring/reasons.ts'

const words: Readonly<Record<string, string>> = JSON.parse(
  readFileSync(new URL('../../renderer/words/en/result.json', import.meta.url), 'utf8'),
)

/** Groups of codes as the screens' words have them. */
const GROUPS = {
  missing: MISSING,
  norm: NORM_CAUTIONS,
  other_hand: OTHER_HAND,
  caution: CHANGE_CAUTIONS,
  sentence: CHANGE_SENTENCES,
} as const

describe('every reason, caution and sentence that a result can give has its words on the screen', () => {
  const rows = Object.entries(GROUPS).flatMap(([group, codes]) =>
    Object.entries(codes).map(([code, details]) => ({
      key: `${group}.${code}`,
      details: details as readonly string[],
    })),
  )

  test.each(rows)('$key', ({ key, details }) => {
    expect(words[key]).toBeDefined()
    const asked = [...(words[key] ?? '').matchAll(/\{(\w+)[},]/g)].map(([, name]) => name ?? '')
    expect(asked.filter((name) => !details.includes(name))).toEqual([])
  })
})
