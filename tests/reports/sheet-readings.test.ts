import { expect, test } from 'vitest'
import { onSheets } from '../../main/reports/sections/sheet-readings.ts'
import { readBack, reportOf } from './reports.ts'

test('readings of a sheet stand in a table by line and hand, each with its number, and on no line of their own', () => {
  const input = reportOf('range_of_motion')
  const { trials } = input.result
  const sheets = onSheets(input)
  expect(sheets.size).toBeGreaterThan(20)
  const { text } = readBack(input)
  expect(text).toContain('On the sheet:')
  for (const trial of sheets) expect(text).toContain(`(${trials.indexOf(trial) + 1})`)
  const values = [...sheets]
    .flatMap(({ readings }) => Object.values(readings))
    .flatMap(({ value }) => (typeof value === 'number' ? [String(value).replace('-', '−')] : []))
  expect(values.length).toBeGreaterThan(10)
  for (const value of values) expect(text).toContain(value)
})

test('a reading that something befell, that was put right or given anew keeps a line of its own', () => {
  const input = reportOf('range_of_motion')
  const [first] = onSheets(input)
  if (!first) throw new Error('There is no reading of a sheet.')
  const trials = input.result.trials.map((trial) =>
    trial === first ? { ...trial, remark: 'The elbow was stiff.' } : trial,
  )
  const altered = { ...input, result: { ...input.result, trials } }
  expect(onSheets(altered).size).toBe(onSheets(input).size - 1)
})
