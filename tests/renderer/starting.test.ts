import { describe, expect, it } from 'vitest'
import { type Arm, NOTHING_KNOWN } from '../../protocols/client.ts'
import { restrictionsOf } from '../../renderer/app/person.ts'
import {
  askedConditions,
  barredBy,
  type Card,
  conditionsOf,
  type Proposal,
  readStart,
  type StartDraft,
  startDraft,
} from '../../renderer/screens/starting/draft.ts'
import { buildsOf, NO_PIECE, readPiece } from '../../renderer/screens/starting/piece-draft.ts'

const TODAY = '2026-11-25'
const option = (id: string) => ({ id, text: id })
const precautions = [{ id: 'wound', ask: 'An open wound?', why: null }]

const card: Card = {
  line: {
    key: 'ring_board',
    from: 'clinic',
    sound: true,
    id: 'ring_board',
    version: '1.0.0',
    title: 'Ring board',
    purpose: '',
    suits: '',
    minutes: [2, 4],
    measures: [],
    kit: [],
    problems: [],
  },
  floor: null,
  ceiling: null,
  precautions,
  conditions: [
    { name: 'board', title: 'board', setBy: 'kit', options: [option('oak'), option('cork')], usual: null },
    {
      name: 'fill',
      title: 'fill',
      setBy: 'clinic',
      options: [option('60 s'), option('61 s')],
      usual: '60 s',
    },
    {
      name: 'posture',
      title: 'posture',
      setBy: 'examiner',
      options: [option('sits'), option('stands')],
      usual: 'sits',
    },
    { name: 'event', title: 'event', setBy: 'file', options: [option('touch')], usual: null },
  ],
  kit: [
    { id: 'board', text: 'Board', check: null, registered: true },
    { id: 'rings', text: 'Rings', check: null, registered: false },
  ],
  accommodations: [],
  wordings: [],
  sources: [],
}

const piece = {
  id: '0198c0de-0000-7000-8000-000000000001',
  item: 'board',
  ownName: 'Board 2',
  conditions: { board: 'oak' },
  unit: '',
  lastCheck: null,
  nextCheck: null,
}

const nothing: Proposal = { conditions: {}, kit: [], visit: null, lastGivenOn: null }
const affected: Arm = {
  ...NOTHING_KNOWN.arms.right,
  status: 'affected',
  restrictions: [{ what: 'no load', setBy: 'Dr. Aasen', until: null }],
}
const facts = { ...NOTHING_KNOWN, arms: { ...NOTHING_KNOWN.arms, right: affected } }
const restrictions = restrictionsOf(facts)

const begin = (proposal = nothing) => startDraft({ card, proposal, precautions, restrictions, today: TODAY })
const read = (draft: StartDraft) => readStart(draft, { card, restrictions, today: TODAY })
const problemsOf = (draft: StartDraft) => {
  const answer = read(draft)
  return 'problems' in answer ? Object.keys(answer.problems).sort() : []
}
const answer = (given: 'not_present' | 'cleared' | 'not_given' | 'not_known') => ({
  answer: given,
  by: '',
  on: { day: '20', month: '11', year: '2026' },
})
const answered: StartDraft = {
  ...begin({ ...nothing, kit: [piece] }),
  precautions: { wound: answer('not_present') },
  restrictions: [answer('not_known')],
  pain: '3',
  conditions: { fill: '60 s', posture: 'sits' },
}

const cleared = (on: { day: string; month: string; year: string }, by: string) =>
  problemsOf({ ...answered, precautions: { wound: { answer: 'cleared', by, on } } })

describe('H13: nothing is answered beforehand, and nothing due can be passed over', () => {
  it('every precaution, every restriction, pain, kit and the examiner’s conditions are asked', () => {
    expect(problemsOf(begin())).toEqual([
      'conditions.posture',
      'kit.board',
      'pain',
      'precautions.wound',
      'restrictions.0',
    ])
  })

  it('once all is answered it goes into the record as it was answered', () => {
    expect(read(answered)).toMatchObject({
      prepared: {
        precautions: { wound: { answer: 'not_present' } },
        restrictions: [{ what: 'Right arm: no load', clearance: { answer: 'not_known' } }],
        painNow: 3,
        kit: [{ ownName: 'Board 2' }],
        conditions: { board: 'oak', fill: '60 s', posture: 'sits' },
      },
    })
  })

  it('a clearance needs who gave it and a day that has come', () => {
    expect(cleared({ day: '', month: '', year: '' }, '')).toEqual([
      'precautions.wound.by',
      'precautions.wound.on',
    ])
    expect(cleared({ day: '26', month: '11', year: '2026' }, 'Dr. Aasen')).toEqual(['precautions.wound.on'])
    expect(cleared({ day: '25', month: '11', year: '2026' }, 'Dr. Aasen')).toEqual([])
  })

  it('pain that can’t be told is no zero', () => {
    expect(read({ ...answered, pain: 'unknown' })).toMatchObject({ prepared: { painNow: null } })
  })

  it('says for what the test is not to be given', () => {
    const barred = { ...answered, precautions: { wound: answer('not_given') } }
    expect(barredBy(barred, precautions, restrictions)).toEqual(['An open wound?'])
    expect(barredBy(answered, precautions, restrictions)).toEqual([])
  })

  it('a tiredness that is no number from 0 to 10 is refused in place', () => {
    expect(problemsOf({ ...answered, visit: { ...answered.visit, tiredness: '11' } })).toEqual(['tiredness'])
  })
})

describe('Kit and conditions stand as last time until somebody changes them', () => {
  const last = begin({ ...nothing, kit: [piece], conditions: { fill: '61 s', posture: 'stands' } })

  it('proposes them', () => {
    expect(last.kit.board).toEqual(piece)
    expect(last.conditions).toMatchObject({ fill: '61 s', posture: 'stands', event: 'touch' })
  })

  it('drops an option that the protocol no longer has', () => {
    expect(begin({ ...nothing, conditions: { fill: '90 s' } }).conditions.fill).toBe('60 s')
  })

  it('the piece in use settles its build, whatever was said last time', () => {
    expect(conditionsOf({ ...last, conditions: { ...last.conditions, board: 'cork' } }).board).toBe('oak')
    expect(askedConditions(card, last).map(({ name }) => name)).toEqual(['fill', 'posture'])
  })

  it('a piece that doesn’t say its build leaves the build to be asked', () => {
    const silent = { ...last, kit: { board: { ...piece, conditions: {} } } }
    expect(askedConditions(card, silent).map(({ name }) => name)).toContain('board')
  })
})

describe('A piece of kit is registered with its own name and build', () => {
  const builds = buildsOf(card, new Set())
  const readOne = (draft: typeof NO_PIECE) => readPiece(draft, { builds, item: 'board', today: TODAY })

  it('asks for both, in place', () => {
    const one = readOne(NO_PIECE)
    expect('problems' in one && Object.keys(one.problems).sort()).toEqual(['board', 'ownName'])
  })

  it('a check that lies ahead can’t be the last one', () => {
    const one = readOne({ ...NO_PIECE, lastCheck: { day: '1', month: '1', year: '2027' } })
    expect('problems' in one && one.problems.lastCheck).toBeTruthy()
  })

  it('takes what is known and leaves the rest open', () => {
    expect(readOne({ ...NO_PIECE, ownName: ' Board 2 ', conditions: { board: 'oak' } })).toEqual({
      piece: {
        item: 'board',
        ownName: 'Board 2',
        conditions: { board: 'oak' },
        unit: '',
        lastCheck: null,
        nextCheck: null,
      },
    })
  })
})
