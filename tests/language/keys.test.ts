import { expect, test } from 'vitest'
import { readProtocol } from '../../protocols/language/read.ts'
import { happeningKeys } from '../../renderer/input/keys.ts'
import { casesIn } from './corpus.ts'
import { folderOf } from './folders.ts'

const least =
  casesIn('sound')
    .find(({ name }) => name === 'least.yaml')
    ?.folder.files.get('protocol.yaml') ?? ''

test.each([...'abcdefghijklmnopqrstuvwxyz?'])(
  'the key %s is refused to a happening exactly when the screen keeps it for itself',
  (key) => {
    const { diagnostics } = readProtocol(folderOf(least.replace('key: f', `key: "${key}"`)))
    const refused = diagnostics.some(({ code }) => code === 'key_reserved')
    const granted = happeningKeys([{ name: 'fell', key }])['fell'] === key
    expect(refused).toBe(!granted)
  },
)
