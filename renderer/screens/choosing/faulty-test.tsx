import { Table } from '../../parts/table.tsx'
import { say } from '../../words/index.ts'
import type { Line } from './index.tsx'

/** A test that can't be offered, with what is wrong in it, where, and what to do about it. */
export function FaultyTest({ line }: { readonly line: Line }) {
  const errors = line.problems.filter((problem) => problem.severity === 'error')
  return (
    <article className="choosing-faulty">
      <h3>{say('choosing.faulty.count', { test: line.title || line.key, count: errors.length })}</h3>
      <Table
        caption={say('choosing.faulty.table', { test: line.title || line.key })}
        columns={[
          { id: 'place', title: say('choosing.faulty.place') },
          { id: 'message', title: say('choosing.faulty.message') },
          { id: 'mend', title: say('choosing.faulty.mend') },
        ]}
        rows={line.problems.map((problem, index) => ({
          id: `${index}-${problem.code}`,
          cells: [
            say('choosing.faulty.at', {
              file: problem.file,
              line: String(problem.line),
              column: String(problem.column),
            }),
            problem.message,
            problem.mend,
          ],
        }))}
      />
    </article>
  )
}
