import { renderToStaticMarkup } from 'react-dom/server'
import { expect, it } from 'vitest'
import type { Trial } from '../../protocols/runner/view.ts'
import { Trials } from '../../renderer/screens/result/trials.tsx'
import { reportOf } from '../reports/reports.ts'

const { result } = reportOf('nine_hole_peg')

const shown = (change: Partial<Trial>, happenings: typeof result.happenings = []): string =>
  renderToStaticMarkup(
    <Trials
      store="records"
      client={null}
      onPutRight={() => {}}
      result={{ ...result, happenings, trials: result.trials.map((trial) => ({ ...trial, ...change })) }}
    />,
  )

const SEEN = [
  { name: 'other_hand', seen: 'The other hand moves a peg.' },
  { name: 'dropped', seen: 'A peg falls.' },
]

it('A void trial tells its reason and what befell it in the protocol’s words, never by a name', () => {
  const by = { at: '2026-03-02T10:03:00.000+01:00', by: 'Ada Brook' }
  const gone = { happening: 'other_hand', remark: '', valueSeen: false, cause: 'happening', ...by }
  const markup = shown({ status: 'void', void: gone, happenings: ['dropped', 'dropped'] }, SEEN)
  expect(markup).toContain('Void: The other hand moves a peg; Ada Brook, 10:03 (UTC+01:00)<')
  expect(markup).toContain('A peg falls (2 times)')
  expect(markup).not.toContain('other_hand')
})

it('A trial that the program broke off tells what by, and a standing one what befell it', () => {
  const by = { at: '2026-03-02T10:03:00.000+01:00', by: 'Ada Brook' }
  const restarted = { happening: null, remark: '', valueSeen: false, cause: 'restart', ...by }
  expect(shown({ status: 'void', void: restarted })).toContain(
    'Void: interrupted by a restart; Ada Brook, 10:03 (UTC+01:00)',
  )
  expect(shown({ happenings: ['dropped'] }, SEEN)).toContain('>A peg falls<')
})
