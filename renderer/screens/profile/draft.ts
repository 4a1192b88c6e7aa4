/** A profile as it is being typed, and the one place where it becomes a profile or a list of problems. */
import {
  type Arm,
  type Birth,
  type ClientFacts,
  NOTHING_KNOWN,
  type Profile,
  SIDES,
  type Side,
} from '../../../protocols/client.ts'
import { type DateDraft, draftOf, NO_DATE, readDate } from '../../parts/read-date.ts'
import { readNumber } from '../../parts/read-number.ts'
import { say } from '../../words/index.ts'

export interface RestrictionDraft {
  /** Only to tell them apart on the screen. */
  readonly key: string
  readonly what: string
  readonly setBy: string
  readonly until: DateDraft
}

export interface ArmDraft {
  readonly status: Arm['status']
  readonly condition: string
  readonly since: string
  readonly absentPart: string
  readonly restrictions: readonly RestrictionDraft[]
}

export interface BirthDraft {
  readonly known: 'date' | 'told' | 'no'
  readonly date: DateDraft
  readonly years: string
  readonly on: DateDraft
}

export interface ProfileDraft extends Omit<Profile, 'facts' | 'agreement'> {
  readonly birth: BirthDraft
  readonly sex: ClientFacts['sex']
  readonly dominantBefore: ClientFacts['dominantBefore']
  readonly usedNow: ClientFacts['usedNow']
  readonly arms: Readonly<Record<Side, ArmDraft>>
  readonly schooling: string
  readonly agreementGiven: Profile['agreement']['given']
  readonly agreementBy: string
  readonly agreementOn: DateDraft
}

/** What is wrong, by field: such as `birth`, `arms.right.restrictions.0.until`. */
export type Problems = Readonly<Record<string, string>>

const EMPTY: Profile = {
  name: '',
  number: '',
  secondIdentifier: '',
  facts: NOTHING_KNOWN,
  language: '',
  interpreter: '',
  sight: '',
  hearing: '',
  speech: '',
  neglect: '',
  agreement: { given: 'unknown', by: '', on: null },
}

const text = (part: number | undefined) => (part === undefined ? '' : String(part))

function birthDraft(birth: Birth, today: string): BirthDraft {
  const empty: BirthDraft = { known: 'date', date: NO_DATE, years: '', on: draftOf(today) }
  if (birth.known === 'no') return { ...empty, known: 'no' }
  if (birth.known === 'told') {
    return { ...empty, known: 'told', years: String(birth.years), on: draftOf(birth.on) }
  }
  if (birth.known === 'date') return { ...empty, date: draftOf(birth.date) }
  const month = birth.known === 'month' ? birth.month : undefined
  return { ...empty, date: { day: '', month: text(month), year: String(birth.year) } }
}

const armDraft = (arm: Arm): ArmDraft => ({
  ...arm,
  restrictions: arm.restrictions.map((each) => ({
    ...each,
    key: crypto.randomUUID(),
    until: draftOf(each.until),
  })),
})

/** The draft to begin with: of a profile, or of somebody of whom nothing is known yet. */
export function draftFrom(profile: Profile | null, today: string): ProfileDraft {
  const { facts, agreement, ...rest } = profile ?? EMPTY
  const birth = profile
    ? birthDraft(facts.birth, today)
    : { ...birthDraft({ known: 'no' }, today), known: 'date' as const }
  return {
    ...rest,
    birth,
    sex: facts.sex,
    dominantBefore: facts.dominantBefore,
    usedNow: facts.usedNow,
    arms: { right: armDraft(facts.arms.right), left: armDraft(facts.arms.left) },
    schooling: facts.schoolingYears === null ? '' : String(facts.schoolingYears),
    agreementGiven: agreement.given,
    agreementBy: agreement.by,
    agreementOn: draftOf(agreement.on),
  }
}

/** A date that must be whole or left out. */
export function wholeDate(
  draft: DateDraft,
  latest: string | null,
): { readonly date: string | null } | { readonly problem: string } {
  const read = readDate(draft, { earliest: '1900-01-01', latest })
  if ('problem' in read) return { problem: say(`profile.date.${read.problem}`) }
  if (read.known === 'nothing') return { date: null }
  return read.known === 'date' ? { date: read.date } : { problem: say('profile.date.whole') }
}

type Note = (field: string, problem: string) => void

function readBirth({ known, date, years, on }: BirthDraft, today: string, note: Note): Birth {
  if (known === 'no') return { known: 'no' }
  if (known === 'told') {
    const age = readNumber(years, { least: 0, most: 130, isWhole: true })
    const told = wholeDate(on, today)
    if ('problem' in age) note('years', say(`parts.number.${age.problem}`, { least: 0, most: 130 }))
    else if (age.number === null) note('years', say('profile.birth.years.missing'))
    if ('problem' in told) note('toldOn', told.problem)
    else if (told.date === null) note('toldOn', say('profile.birth.on.missing'))
    const sound = 'number' in age && age.number !== null && 'date' in told && told.date !== null
    return sound ? { known: 'told', years: age.number, on: told.date } : { known: 'no' }
  }
  const read = readDate(date, { earliest: '1850-01-01', latest: today })
  if ('problem' in read) {
    note('birth', say(read.problem === 'future' ? 'profile.birth.future' : `profile.date.${read.problem}`))
    return { known: 'no' }
  }
  return read.known === 'nothing' ? { known: 'no' } : read
}

function readArm(side: Side, draft: ArmDraft, note: Note): Arm {
  const restrictions = draft.restrictions.map(({ what, setBy, until }, index) => {
    const end = wholeDate(until, null)
    if (what.trim() === '') note(`arms.${side}.${index}.what`, say('profile.restriction.missing'))
    if ('problem' in end) note(`arms.${side}.${index}.until`, end.problem)
    return { what: what.trim(), setBy: setBy.trim(), until: 'date' in end ? end.date : null }
  })
  return {
    status: draft.status,
    condition: draft.condition.trim(),
    since: draft.since.trim(),
    absentPart: draft.absentPart.trim(),
    restrictions,
  }
}

/** The profile that the draft means, or what is wrong with it. `today` bounds what lies in the past. */
export function readProfile(
  draft: ProfileDraft,
  today: string,
): { readonly profile: Profile } | { readonly problems: Problems } {
  const problems: Record<string, string> = {}
  const note: Note = (field, problem) => {
    problems[field] = problem
  }
  if (draft.name.trim() === '' && draft.number.trim() === '') note('name', say('profile.name.missing'))
  const schooling = readNumber(draft.schooling, { least: 0, most: 40 })
  if ('problem' in schooling)
    note('schooling', say(`parts.number.${schooling.problem}`, { least: 0, most: 40 }))
  const agreed = wholeDate(draft.agreementOn, today)
  if ('problem' in agreed) note('agreementOn', agreed.problem)
  const birth = readBirth(draft.birth, today, note)
  const arms = {
    right: readArm('right', draft.arms.right, note),
    left: readArm('left', draft.arms.left, note),
  }
  if (SIDES.every((side) => arms[side].status === 'less_affected')) note('arms', say('profile.arm.both_less'))
  if (Object.keys(problems).length > 0) return { problems }
  return {
    profile: {
      name: draft.name.trim(),
      number: draft.number.trim(),
      secondIdentifier: draft.secondIdentifier.trim(),
      facts: {
        birth,
        sex: draft.sex,
        dominantBefore: draft.dominantBefore,
        usedNow: draft.usedNow,
        arms,
        schoolingYears: 'number' in schooling ? schooling.number : null,
      },
      language: draft.language.trim(),
      interpreter: draft.interpreter.trim(),
      sight: draft.sight.trim(),
      hearing: draft.hearing.trim(),
      speech: draft.speech.trim(),
      neglect: draft.neglect.trim(),
      agreement: {
        given: draft.agreementGiven,
        by: draft.agreementBy.trim(),
        on: 'date' in agreed ? agreed.date : null,
      },
    },
  }
}
