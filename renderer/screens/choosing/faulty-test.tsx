import { Table } from '../../parts/table.tsx'
import { say } from '../../words/index.ts'
import type { Line } from './index.tsx'

/** A test that can't be offered, with what is wrong in it, where, and what to do about it. */
export function FaultyTest({ line }: { readonly line: Line }) {
  const errors = line.problems.filter((problem) => problem.severity === 'error')
  const test = line.title || line.key
  return (
    <article className="choosing-faulty">
      <h3>{say('choosing.faulty.count', { test, count: errors.length })}</h3>
      <Problems caption={say('choosing.faulty.table', { test })} problems={line.problems} />
    </article>
  )
}

interface ProblemsProps {
  readonly caption: string
  readonly isCaptionSeen?: boolean
  readonly problems: Line['problems']
}

/** Problems of a test's file, each at its line with its mend. */
export function Problems({ caption, isCaptionSeen = false, problems }: ProblemsProps) {
  return (
    <Table
      caption={caption}
      isCaptionSeen={isCaptionSeen}
      columns={[
        { id: 'place', title: say('choosing.faulty.place') },
        { id: 'message', title: say('choosing.faulty.message') },
        { id: 'mend', title: say('choosing.faulty.mend') },
      ]}
      rows={problems.map((problem, index) => ({
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
  )
}
