/** What is typed on a page before it is kept: typing runs ahead of the saves, and nothing shows as kept before it is. */
import { useState } from 'react'
import type { EventBody } from '../../../../protocols/runner/events.ts'
import type { SheetCell } from '../../../../protocols/runner/view.ts'
import { cellFaceOf } from '../../../steps/registry.ts'
import { tellNumber } from '../../../steps/tell.ts'
import { say } from '../../../words/index.ts'
import { cellId } from './grid.ts'

interface Draft {
  readonly typed: string
  readonly isSaving: boolean
  readonly problem: string | null
  /** What was doubted: entered once more it is taken. */
  readonly doubted: string | null
}

const BLANK: Draft = { typed: '', isSaving: false, problem: null, doubted: null }

export interface Typing {
  draft(cell: SheetCell): Draft | null
  type(cell: SheetCell, typed: string): void
  /** Sends what was typed; false where something is wrong with it, and typing stays in the cell. */
  enter(cell: SheetCell): boolean
}

/** @param send null once the event was taken, else why not, in words */
export function useTyping(send: (body: EventBody) => Promise<string | null>): Typing {
  const [drafts, setDrafts] = useState<Readonly<Record<string, Draft>>>({})
  // What was typed on since then (`typed` differs) is no part of what this is about.
  const put = (cell: SheetCell, change: Partial<Draft> | null, typed?: string): void =>
    setDrafts((all) => {
      const { [cellId(cell)]: before, ...others } = all
      if (typed !== undefined && before?.typed !== typed) return all
      return change === null ? others : { ...all, [cellId(cell)]: { ...(before ?? BLANK), ...change } }
    })
  const sendTyped = async (cell: SheetCell, typed: string, body: EventBody): Promise<void> => {
    put(cell, { isSaving: true, problem: null, doubted: null })
    const problem = await send(body)
    put(cell, problem === null ? null : { isSaving: false, problem }, typed)
  }
  const enter = (cell: SheetCell): boolean => {
    const draft = drafts[cellId(cell)]
    if (draft === undefined || draft.isSaving) return true
    const { typed } = draft
    if (typed.trim() === '') {
      put(cell, null)
      return true
    }
    const read = cellFaceOf(cell.kind)?.read(typed, cell.face)
    if (read === undefined) return true
    if ('problem' in read) {
      put(cell, { problem: read.problem })
      return false
    }
    if (read.doubt !== null && draft.doubted !== typed) {
      const [lowest, highest] = read.doubt
      const values = { value: typed, lowest: tellNumber(lowest, 0), highest: tellNumber(highest, 0) }
      put(cell, { problem: say('sheet.doubted', values), doubted: typed })
      return false
    }
    const { kind, gives, step, place } = cell
    void sendTyped(cell, typed, { kind: `${kind}.${gives}`, step, place, ...read.data(read.doubt !== null) })
    return true
  }
  return {
    draft: (cell) => drafts[cellId(cell)] ?? null,
    type: (cell, typed) => put(cell, { typed, problem: null, isSaving: false }),
    enter,
  }
}
