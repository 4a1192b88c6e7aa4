import { beforeAll, expect, test } from 'vitest'
import { buildProgram } from '../hosts/program.ts'
import { standStill } from './standing-still.ts'

beforeAll(buildProgram, 120_000)

test('a host that stood still in mid-trial answers afterwards, with nothing lost and the trial as it was pressed', async () => {
  expect(await standStill(1000)).toEqual({ status: 'standing', outcome: 'done', verified: 0 })
}, 60_000)
