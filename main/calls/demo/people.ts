/**
 * Everybody in the demo clinic, all invented: the hand clinic of a small community hospital on a coast that is on
 * no map. The clients were chosen to show what a record can hold, uncertain facts included.
 */
import { type Arm, NOTHING_KNOWN, type Profile } from '../../../protocols/client.ts'

export const EXAMINERS = ['Imke Tarnow (demo)', 'Odile Brackwater (demo)'] as const

/** A past visit: how many days before today, and the tests given, in their order. */
export interface PastVisit {
  readonly daysAgo: number
  readonly examiner: 0 | 1
  readonly tests: readonly string[]
  /** How well the affected hand does, from 0, as it was at its worst, to 1, as the other one does. */
  readonly recovered: number
  /** What went otherwise than the protocol says. */
  readonly deviation?: { readonly what: string; readonly reason: string }
}
export interface DemoClient {
  readonly profile: Profile
  readonly visits: readonly PastVisit[]
}

const arm = (given: Partial<Arm>): Arm => ({ ...NOTHING_KNOWN.arms.right, status: 'unaffected', ...given })

type Facts = Partial<Profile['facts']>
type Rest = Partial<Omit<Profile, 'facts' | 'name' | 'number'>>

const person = (name: string, number: string, facts: Facts, rest: Rest = {}): Profile => ({
  name,
  number,
  secondIdentifier: '',
  facts: { ...NOTHING_KNOWN, ...facts },
  language: '',
  interpreter: '',
  sight: '',
  hearing: '',
  speech: '',
  neglect: '',
  agreement: { given: 'unknown', by: '', on: null },
  ...rest,
})

export const PEGS = 'nine_hole_peg'
export const BLOCKS = 'box_and_block'
export const GRIP = 'grip_strength'

const right = { dominantBefore: 'right', usedNow: 'right' } as const
const born = (date: string) => ({ birth: { known: 'date', date } as const })

export const CLIENTS: readonly DemoClient[] = [
  {
    profile: person(
      'Brunhild Osterkamp',
      'D-1001',
      {
        ...born('1958-03-14'),
        ...right,
        sex: 'F',
        arms: { right: arm({ status: 'affected', condition: 'Wrist fracture, healed' }), left: arm({}) },
      },
      { secondIdentifier: 'Old lighthouse, gate 2', sight: 'Reading glasses' },
    ),
    visits: [
      { daysAgo: 63, examiner: 0, tests: [PEGS, BLOCKS], recovered: 0.05 },
      {
        daysAgo: 35,
        examiner: 0,
        tests: [PEGS, BLOCKS],
        recovered: 0.4,
        deviation: { what: 'The table was higher than the elbow.', reason: 'The low table was in use.' },
      },
      { daysAgo: 7, examiner: 1, tests: [PEGS, BLOCKS], recovered: 0.75 },
    ],
  },
  {
    profile: person('Tidemann Ruge', 'D-1002', {
      ...born('1949-11-02'),
      sex: 'M',
      dominantBefore: 'right',
      usedNow: 'left',
      arms: { right: arm({ status: 'affected', condition: 'Stroke', since: '5 months ago' }), left: arm({}) },
    }),
    visits: [
      { daysAgo: 90, examiner: 1, tests: [BLOCKS, GRIP], recovered: 0 },
      { daysAgo: 48, examiner: 1, tests: [BLOCKS, GRIP], recovered: 0.35 },
      { daysAgo: 12, examiner: 0, tests: [BLOCKS, GRIP], recovered: 0.65 },
    ],
  },
  {
    profile: person('Ferelith Quayne', 'D-1003', {
      birth: { known: 'year', year: 1991 },
      sex: 'F',
      dominantBefore: 'left',
      usedNow: 'left',
      arms: { right: arm({}), left: arm({ status: 'affected', condition: 'Thumb ligament repair' }) },
    }),
    visits: [{ daysAgo: 21, examiner: 0, tests: [BLOCKS, GRIP], recovered: 0.5 }],
  },
  {
    profile: person('Jorin Saltby', 'D-1004', {
      ...born('1972-07-29'),
      sex: 'M',
      dominantBefore: 'right',
      usedNow: 'left',
      arms: { right: arm({ status: 'absent', absentPart: 'Forearm and hand' }), left: arm({}) },
    }),
    visits: [{ daysAgo: 30, examiner: 1, tests: [BLOCKS], recovered: 1 }],
  },
  {
    profile: person('Wendeline Ottermoor', 'D-1005', {
      ...born('1965-01-20'),
      ...right,
      sex: 'F',
      arms: {
        right: arm({ status: 'affected', condition: 'Joint disease of the hands' }),
        left: arm({ status: 'less_affected', condition: 'Joint disease of the hands' }),
      },
    }),
    visits: [
      { daysAgo: 40, examiner: 0, tests: [PEGS], recovered: 0.6 },
      { daysAgo: 5, examiner: 0, tests: [PEGS], recovered: 0.55 },
    ],
  },
  {
    profile: person(
      'Pim Ravensund',
      'D-1006',
      { ...born('2019-05-06'), ...right, sex: 'M', arms: { right: arm({}), left: arm({}) } },
      { agreement: { given: 'yes', by: 'His mother', on: null } },
    ),
    visits: [{ daysAgo: 18, examiner: 1, tests: [BLOCKS], recovered: 1 }],
  },
  {
    profile: person(
      '',
      'D-1007',
      { birth: { known: 'no' } },
      { language: 'Not English', interpreter: 'Needed' },
    ),
    visits: [],
  },
]
