/** The paper form of every test of the library: all its words are on it. `npm run long -- forms`. */
import { readdirSync } from 'node:fs'
import { expect, test } from 'vitest'
import { formRead, missingFrom } from '../reports/forms.ts'
import { libraryProtocol } from '../runner/giving.ts'

const library = readdirSync('protocols/library', { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name)

test.each(library)('%s', (id) => {
  const protocol = libraryProtocol(id)
  const form = formRead(protocol)
  expect(missingFrom(form, protocol)).toEqual([])
  expect(form.told).toBe(form.pages.length)
})
