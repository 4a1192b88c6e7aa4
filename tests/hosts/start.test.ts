import { join } from 'node:path'
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readArguments } from '../../main/hosts/arguments.ts'
import { opener } from '../../main/hosts/browser/open-browser.ts'
import { dataFolder, recordsFolder } from '../../main/hosts/folders.ts'
import { nearest } from '../../main/hosts/nearest.ts'
import { HostProblem } from '../../main/hosts/problem.ts'

const problem = (given: readonly string[]) => {
  try {
    readArguments(given)
  } catch (error) {
    if (error instanceof HostProblem) return error
    throw error
  }
  return null
}

describe('what the program can be started with', () => {
  test('nothing: the platform’s folder, any free port, and the browser is opened', () => {
    expect(readArguments([])).toEqual({ demo: false, records: null, port: 0, open: true })
  })

  test('every option in both spellings', () => {
    const expected = { demo: true, records: '/tmp/records', port: 8123, open: false }
    expect(readArguments(['--demo', '--records', '/tmp/records', '--port', '8123', '--no-open'])).toEqual(
      expected,
    )
    expect(readArguments(['--records=/tmp/records', '--port=8123', '--no-open', '--demo'])).toEqual(expected)
  })

  test('a misspelt option is refused with the one that was meant', () => {
    const found = problem(['--dmeo'])
    expect(found?.code).toBe('start.unknown_option')
    expect(found?.message).toContain('--demo?')
    expect(problem(['records'])?.code).toBe('start.unknown_option')
  })

  test('a port that is none, and records without a path', () => {
    for (const port of ['http', '-1', '65536', '80.5', ''])
      expect(problem([`--port=${port}`])?.code).toBe('start.bad_port')
    expect(problem(['--records'])?.code).toBe('start.records_without_path')
    expect(problem(['--records='])?.code).toBe('start.records_without_path')
  })
})

describe('where records lie', () => {
  test('in the platform’s own data folder', () => {
    expect(dataFolder('linux', '/home/ada', {})).toBe('/home/ada/.local/share/evenhand')
    expect(dataFolder('linux', '/home/ada', { XDG_DATA_HOME: '/data' })).toBe('/data/evenhand')
    expect(dataFolder('darwin', '/Users/ada', {})).toBe('/Users/ada/Library/Application Support/Evenhand')
    expect(dataFolder('win32', '/u', { LOCALAPPDATA: '/u/local' })).toBe(join('/u/local', 'Evenhand'))
  })

  test('a demo clinic’s never in the folder of real ones, whatever was asked', () => {
    for (const asked of [null, '/clinic'])
      expect(recordsFolder(asked, true)).not.toBe(recordsFolder(asked, false))
    expect(recordsFolder('/clinic', false)).toBe('/clinic')
    expect(recordsFolder('/clinic', true)).toBe('/clinic/demo')
  })
})

describe('opening the browser', () => {
  test('only where somebody sits at a desktop', () => {
    expect(opener('linux', {})).toBeNull()
    expect(opener('linux', { DISPLAY: ':0' })).toEqual(['xdg-open'])
    expect(opener('linux', { WAYLAND_DISPLAY: 'wayland-0' })).toEqual(['xdg-open'])
    expect(opener('darwin', {})).toEqual(['open'])
    expect(opener('win32', {})?.[0]).toBe('rundll32')
  })
})

describe('guessing what was meant', () => {
  test('the word itself is the nearest, and one wrong letter doesn’t matter', () => {
    const words = ['check', 'rehearse', 'events', 'score', 'compare', 'verify']
    fc.assert(
      fc.property(fc.constantFrom(...words), fc.nat(3), fc.constantFrom('x', 'q', ''), (word, at, letter) => {
        expect(nearest(word, words)).toBe(word)
        expect(nearest(word.slice(0, at) + letter + word.slice(at + 1), words)).toBe(word)
      }),
    )
    expect(nearest('frobnicate', words)).toBeNull()
  })
})
