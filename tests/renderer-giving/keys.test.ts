import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { COMMAND_KEYS, commandOf, happeningKeys } from '../../renderer/input/keys.ts'

const happening = (name: string, key: string | null = null) => ({ name, key })

describe('Keys of happenings', () => {
  it('are the protocol’s own where it names a free one', () => {
    expect(happeningKeys([happening('fell', 'f'), happening('lifted', 'L')])).toEqual({
      fell: 'f',
      lifted: 'l',
    })
  })

  it('never take the keys that protect client, trial and record', () => {
    const keys = happeningKeys([
      happening('vanished', 'v'),
      happening('upset', 'u'),
      happening('kicked', 'k'),
    ])
    for (const key of Object.values(keys))
      expect([COMMAND_KEYS.void, COMMAND_KEYS.undo, COMMAND_KEYS.cover]).not.toContain(key)
  })

  it('take over the key of a command that can wait, which then is reached from the list', () => {
    const keys = happeningKeys([happening('pain', 'p')])
    expect(keys.pain).toBe('p')
    expect(commandOf('p', keys)).toBeNull()
    expect(commandOf('p', {})).toBe('pause')
  })

  it('differ from each other and from every key in use, whatever the happenings are called', () => {
    const name = fc.stringMatching(/^[a-z][a-z0-9_]{0,8}$/)
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.record({ name, key: fc.option(fc.constantFrom(...'abvfku?')) }), {
          selector: (each) => each.name,
          maxLength: 12,
        }),
        (happenings) => {
          const keys = Object.values(happeningKeys(happenings)).filter((key) => key !== null)
          expect(new Set(keys).size).toBe(keys.length)
          expect(keys).not.toContain(COMMAND_KEYS.void)
          expect(keys).not.toContain(COMMAND_KEYS.cover)
        },
      ),
    )
  })
})

describe('Keys of commands', () => {
  it('are found by the printed letter, small or capital', () => {
    expect(commandOf('V', {})).toBe('void')
    expect(commandOf('Escape', {})).toBe('stop')
    expect(commandOf('?', {})).toBe('help')
    expect(commandOf('ö', {})).toBeNull()
  })

  it('are all different', () => {
    const keys = Object.values(COMMAND_KEYS)
    expect(new Set(keys).size).toBe(keys.length)
  })
})
