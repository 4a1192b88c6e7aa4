/**
 * Tables of range of motion have a row a motion instead of bands of age, so that they are compared here: how many rows,
 * the sums of their columns, and rows picked out, as collected. A lost, doubled or misread row shows in one of them.
 */
import { describe, expect, test } from 'vitest'
import { fileOf, folderOf, rowsOf } from './folders.ts'

const TEST = 'range_of_motion'

interface Collected {
  readonly rows: number
  /** By column, to the last digit. */
  readonly sums: Readonly<Record<string, number>>
  readonly spots: readonly string[]
}

const COLLECTED: Readonly<Record<string, Collected>> = {
  boone1979: {
    rows: 13,
    sums: { n: 13 * 109, mean: 1095.7, sd: 72.4 },
    spots: [
      'wrist_flexion,goniometer,M,2,54,any,109,76.4,6.3,seen',
      'elbow_extension,goniometer,M,2,54,any,109,0.6,3.1,memory',
    ],
  },
  boone1979_means: {
    rows: 13,
    sums: { n: 13 * 109, mean: 1097, sd: 0 },
    spots: ['shoulder_abduction,M,2,54,any,109,184,,seen', 'elbow_extension,M,2,54,any,109,1,,seen'],
  },
  green1992: {
    rows: 12,
    sums: { n: 12 * 20, mean: 965, sd: 0 },
    spots: ['shoulder_medial_rotation,any,18,55,any,20,49,,seen', 'elbow_extension,any,18,55,any,20,0,,seen'],
  },
  walker1984: {
    rows: 13,
    sums: { n: 13 * 60, mean: 973, sd: 0 },
    // Printed as 4 with a mark for a lack of extension.
    spots: ['elbow_extension,any,65,85,any,60,-4,,seen', 'wrist_ulnar_deviation,any,65,85,any,60,26,,seen'],
  },
  macedo2009: {
    rows: 13,
    sums: { n: 13 * 90, mean: 1225, sd: 0 },
    spots: ['shoulder_flexion,F,18,59,any,90,188,,seen', 'elbow_extension,F,18,59,any,90,2,,seen'],
  },
  handbook_surgeons: {
    rows: 13,
    sums: { n: 0, mean: 1090, sd: 0 },
    spots: ['shoulder_flexion,any,,,any,,180,,seen', 'elbow_extension,any,,,any,,0,,seen'],
  },
  handbook_impairment: {
    rows: 13,
    sums: { cut: 1010 },
    spots: ['shoulder_flexion,180,under,at_least,above,seen', 'wrist_flexion,60,under,at_least,above,seen'],
  },
  typical_hand: {
    rows: 14,
    sums: { n: 0, mean: 765, sd: 0 },
    spots: ['thumb_ip_extension,any,,,any,,15,,seen', 'thumb_mcp_extension,any,,,any,,10,,seen'],
  },
  typical_fingers: {
    rows: 5,
    sums: { n: 0, mean: 270, sd: 0 },
    spots: ['pip_flexion,any,,,any,,100,,seen', 'pip_extension,any,,,any,,0,,seen'],
  },
  zwerus2017: {
    rows: 3,
    sums: { n: 3 * 352, mean: 313, sd: 0 },
    spots: ['forearm_supination,any,,,dominant,352,87,,seen'],
  },
  gill2020: {
    rows: 4,
    sums: { n: 0, mean: 621.2, sd: 0 },
    spots: ['shoulder_abduction,inclinometer,F,20,91,right,,149.7,,seen'],
  },
  fan2019: {
    rows: 4,
    sums: { n: 0, mean: 289.9, sd: 0 },
    spots: ['wrist_extension,midway,F,23,30,dominant,,74.4,,seen'],
  },
  soucie2011: {
    rows: 38,
    sums: { n: 0, mean: 3592.8, sd: 0 },
    spots: [
      'shoulder_flexion,goniometer,M,20,44,any,,168.8,,seen',
      'elbow_extension,goniometer,M,45,69,any,,-0.7,,memory',
    ],
  },
  vairo2012: {
    rows: 16,
    sums: { n: 8 * (548 + 74), p5: 1308, p50: 1594.5, p95: 1857.35 },
    spots: ['shoulder_flexion,F,17,20,dominant,74,155,160,164.75,168,175,180,180,seen'],
  },
  vairo2012_arc: {
    rows: 4,
    sums: { n: 2 * (548 + 74), p5: 513.75, p50: 617.5, p95: 723.55 },
    spots: ['M,17,20,nondominant,548,130,135,144,153,165,175,179.55,seen'],
  },
}

test('every table is compared', () => {
  const tables = [...folderOf(TEST).files.keys()].filter((path) => path.endsWith('.csv'))
  expect(
    Object.keys(COLLECTED)
      .map((name) => `norms/${name}.csv`)
      .sort(),
  ).toEqual(tables.sort())
})

describe.each(Object.entries(COLLECTED))('%s', (name, { rows, sums, spots }) => {
  const path = `norms/${name}.csv`
  const own = rowsOf(TEST, path)

  test('as many rows, and the same sums', () => {
    expect(own).toHaveLength(rows)
    for (const [column, sum] of Object.entries(sums)) {
      const found = own.reduce((all, row) => all + Math.round(Number(row[column] || 0) * 100), 0) / 100
      expect([column, found]).toEqual([column, sum])
    }
  })

  test('rows picked out stand as collected, to the last digit', () => {
    const lines = fileOf(TEST, path).split('\n')
    for (const spot of spots) expect(lines).toContain(spot)
  })
})

test('each row is of a motion that the protocol measures', () => {
  const yaml = fileOf(TEST, 'protocol.yaml')
  const motions = Object.keys(COLLECTED).flatMap((name) =>
    rowsOf(TEST, `norms/${name}.csv`).flatMap((row) => row.motion ?? row.passive_motion ?? row.joint ?? []),
  )
  expect(motions.filter((motion) => !yaml.includes(`- id: ${motion}\n`))).toEqual([])
  expect(motions.length).toBeGreaterThan(100)
})
