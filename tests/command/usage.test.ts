import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { evenhand, jsonOf } from './evenhand.ts'

const COMMANDS = [
  'agree',
  'backup',
  'check',
  'compare',
  'events',
  'form',
  'rehearse',
  'restore',
  'salvage',
  'score',
  'verify',
]

describe('the command line helps whoever types it wrong', () => {
  test('a misspelt command ends with 2 and the one that was meant', async () => {
    const { code, out, err } = await evenhand('chekc', 'x')
    expect([code, out]).toEqual([2, ''])
    expect(err).toContain('Did you mean check?')
    expect((await evenhand('frobnicate')).err).not.toContain('Did you mean')
  })

  test('a misspelt option ends with 2 and the one that was meant', async () => {
    const { code, err } = await evenhand('check', '--jsno', 'protocols/library')
    expect(code).toBe(2)
    expect(err).toContain('Did you mean --json?')
  })

  test('an option without its value, a value without its option, too little and too much', async () => {
    for (const words of [
      ['check'],
      ['events'],
      ['events', 'a', 'b'],
      ['events', 'a', '--records'],
      ['check', 'x', '--json=yes'],
      ['compare', 'nine_hole_peg'],
      ['compare', 'nine_hole_peg', '--hand', 'middle'],
      ['score', 'nine_hole_peg'],
    ]) {
      const { code, err } = await evenhand(...words)
      expect([words, code, err.includes('\n')]).toEqual([words, 2, true])
    }
  })

  test('a problem is JSON too where JSON was asked for', async () => {
    const { code, err } = await evenhand('check', '/nowhere', '--json')
    expect(code).toBe(2)
    expect(JSON.parse(err)).toMatchObject({ error: { code: 'command.no_such_path' } })
  })

  test('help lists every command with its usage', async () => {
    const { code, out } = await evenhand('help')
    expect(code).toBe(0)
    for (const name of COMMANDS) expect(out).toContain(`evenhand ${name}`)
    expect((await evenhand('check', '--help')).out).toContain('evenhand check PATH…')
    expect((await evenhand('--version')).out).toMatch(/^Evenhand \d+\.\d+\.\d+$/)
  })

  test('every file in commands/ is a command of that name', async () => {
    const files = readdirSync('main/hosts/command/commands').map((file) => file.replace(/\.ts$/, ''))
    expect(files.sort()).toEqual(COMMANDS)
  })

  test('every command’s output has a JSON Schema that says what no other key may do', async () => {
    for (const name of COMMANDS) {
      const schema = jsonOf(await evenhand('schema', name))
      expect(schema).toHaveProperty('$schema', 'https://json-schema.org/draft/2020-12/schema')
      expect(JSON.stringify(schema)).toContain('"additionalProperties":false')
    }
    expect((await evenhand('schema', 'chek')).err).toContain('Did you mean check?')
  })
})
