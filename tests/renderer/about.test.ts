import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { say } from '../../renderer/words/index.ts'

const readme = readFileSync(join(import.meta.dirname, '../../README.md'), 'utf8').replaceAll(/\s+/g, ' ')

/** What the About screen says in one of its parts. */
const about = (part: string) => say(`about.${part}.text`, { program: 'Evenhand' })

describe('What the program is and isn’t stands on screen and in the README alike', () => {
  it('STD-ADM-11 supervision, least hardware and limits are on the About screen, which leads to the README', () => {
    expect(about('supervision')).toMatch(/supervised or managed/i)
    expect(about('hardware')).toMatch(/two processor cores.*4 GB.*1280 by 800/)
    expect(about('limits')).toMatch(/README.*docs\/LIMITS\.md/)
    expect(readme).toMatch(/supervised\*? or \*?managed/i)
    expect(readme).toMatch(/two processor cores, 4 GB of memory, a screen of 1280 × 800/)
    expect(readme).toContain('docs/LIMITS.md')
  })

  it('STD-PROC-2 intended use and that it is no medical device are on the About screen and in the README', () => {
    expect(about('use')).toMatch(/standardized hand or arm test/)
    expect(about('not')).toMatch(
      /no diagnosis.*no advice on treatment.*not certified as a medical device.*no alarm/,
    )
    expect(readme).toMatch(/not a medical device.*diagnoses nothing, advises no treatment, raises no alarm/)
  })

  it('says on the first screen and in the README that it is not for real clients yet', () => {
    expect(say('first.unsafe.title')).toBe('Not for real clients yet.')
    expect(readme).toContain('Not for real clients yet.')
  })
})
