/**
 * Tables of bands hold the limits that were collected, whole: each row as from, below, band, provenance, under the
 * group it is for. Where print has whole seconds or points, a band goes on up to the next one.
 */
import { describe, expect, test } from 'vitest'
import { fileOf, folderOf, rowsOf, TESTS } from './folders.ts'

const COLLECTED: Readonly<Record<string, readonly string[]>> = {
  // Seen, translated summary: 16-25, 26-33, 34-50, above 50 s; 18-27, 28-45, 46-55, above 55 s.
  'functional_dexterity norms/aaron2003.csv': [
    'dominant,,26,functional,seen',
    'dominant,26,34,moderate,seen',
    'dominant,34,50.05,minimal,seen',
    'dominant,50.05,,not_functional,seen',
    'nondominant,,28,functional,seen',
    'nondominant,28,46,moderate,seen',
    'nondominant,46,55.05,minimal,seen',
    'nondominant,55.05,,not_functional,seen',
  ],
  // Memory: 0-10, 11-21, 22-42, 43-54, 55-57 points.
  'action_research_arm norms/hoonhorst2015.csv': [
    '0,11,none,memory',
    '11,22,poor,memory',
    '22,43,limited,memory',
    '43,55,notable,memory',
    '55,,full,memory',
  ],
  // Memory: 0-22, 23-31, 32-47, 48-52, 53-66 points.
  'fugl_meyer_upper norms/hoonhorst2015.csv': [
    '0,23,none,memory',
    '23,32,poor,memory',
    '32,48,limited,memory',
    '48,53,notable,memory',
    '53,,full,memory',
  ],
  // Memory: 0-15, 16-34, 35-53, 54-66 points.
  'fugl_meyer_upper norms/woytowicz2017.csv': [
    '0,16,severe,memory',
    '16,35,severe_moderate,memory',
    '35,54,moderate_mild,memory',
    '54,,mild,memory',
  ],
  // Memory: under 6 mm, 6-10, 11-15 mm.
  'two_point_discrimination norms/hand_society.csv': [
    ',6,normal,memory',
    '6,11,fair,memory',
    '11,,poor,memory',
  ],
  // Seen, a teaching page: 90 to 100 per cent of at least five things; here of ten.
  'stereognosis norms/teaching_page.csv': [',9,fewer,seen', '9,,expected,seen'],
  // Seen, a paper's table: 1.65-2.83, 3.22-3.61, 3.84-4.31, 4.56-6.45 and 6.65.
  'touch_threshold norms/groups.csv': [
    ',3.22,normal,seen',
    '3.22,3.84,light_touch,seen',
    '3.84,4.56,protective,seen',
    '4.56,6.65,loss,seen',
    '6.65,,deep,seen',
  ],
}

const banded = TESTS.flatMap((name) =>
  [...folderOf(name).files.keys()]
    .filter((path) => path.endsWith('.csv') && 'band' in (rowsOf(name, path)[0] ?? {}))
    .map((path) => `${name} ${path}`),
)

test('every table of bands is compared', () => expect(Object.keys(COLLECTED).sort()).toEqual(banded.sort()))

describe.each(Object.entries(COLLECTED))('%s', (table, rows) => {
  const [name = '', path = ''] = table.split(' ')

  test('stands as collected, to the last digit', () => {
    expect(fileOf(name, path).trimEnd().split('\n').slice(1)).toEqual(rows)
  })
})
