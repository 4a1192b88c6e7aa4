/**
 * Every code that a result gives for a missing value, a caution or a sentence, with the names of its details.
 * The words for them stand in the words files of screens, reports and the command line; a test holds that none
 * is left without. Details are ids or numbers, never sentences.
 */
import { OUTCOMES } from '../language/model.ts'

type Details = readonly string[]

/** Outcomes as reasons: the trial that has no value. Loops around the step are details too. */
const OF_A_TRIAL: Details = ['step', 'column']

/** Why a value is missing. */
export const MISSING = {
  ...(Object.fromEntries(OUTCOMES.map((outcome) => [outcome, OF_A_TRIAL])) as Record<
    (typeof OUTCOMES)[number],
    Details
  >),
  /** A trial that was done has nothing in that column. */
  no_reading: OF_A_TRIAL,
  /** Nothing was given there. */
  no_rows: [],
  /** Fewer values than the formula picks. */
  too_few: ['needed', 'given'],
  /** The formula wants exactly one value. */
  not_only: ['given'],
  /** The score's own `needs` isn't met. */
  needs_not_met: ['score'],
  divided_by_zero: [],
  /** A value that is only known to be at least so much can't be used in this formula. */
  bound: [],
  outside_range: ['score', 'value', 'low', 'high'],
  dominance_unknown: [],
  affected_unknown: [],
  both_affected: [],
  none_affected: [],
  condition_unknown: ['condition'],
  no_property: ['name'],
  no_such_row: ['row'],
  not_a_count: ['given'],
  not_a_number: [],
  wrong_unit: ['unit'],
  circular: ['score'],
  /** The formula was stopped after that many steps. */
  too_long: ['steps'],
  /** The test was left as the wrong one: its trials stay and are not scored. */
  withdrawn: [],
  /** The name means nothing here. */
  unknown: ['name'],
  null: [],
} as const satisfies Readonly<Record<string, Details>>

/** What to keep in mind with norms, or why they are withheld. */
export const NORM_CAUTIONS = {
  /** The condition stood differently where the norms were gathered. */
  condition_differs: ['condition', 'here', 'there'],
  /** How these conditions stood there, or here, is not known: names joined by commas. */
  conditions_unknown: ['conditions', 'count'],
  /** A deviation or a change made for the client's sake touches what is measured. */
  modified: ['count'],
  /** A deviation that the protocol lets stand with a caution. */
  deviated: ['count'],
  age_unknown: [],
  /** The birth as recorded comes after the administration. */
  age_impossible: [],
  /** The age is known only to lie in a range, in completed years. */
  age_uncertain: ['from', 'to'],
  sex_unknown: [],
  dominance_unknown: [],
  /** Some of what the client may be, by age or sex, has no row in the table. */
  partly_without_row: [],
  /** The table's youngest and oldest, in completed years; where it is open at one end, the other. */
  table_ages: ['from', 'to'],
  table_from: ['from'],
  table_to: ['to'],
  /** How many people stand behind the row isn't known: no interval, no correction for a small group. */
  size_unknown: [],
  /** More than three standard deviations from the mean: few people of the norm group lie there. */
  far_out: [],
  /** What a column of the table, such as schooling or an answer, is here isn't known: its name. */
  column_unknown: ['column'],
  /** LMS gives nothing for a value of 0 or less. */
  lms_undefined: [],
  bound: [],
  /** There is no value to compare. */
  no_value: [],
  /** The table is in a unit that doesn't convert to the score's. */
  wrong_unit: ['unit'],
} as const satisfies Readonly<Record<string, Details>>

/** Why this hand isn't compared with the other. */
export const OTHER_HAND = {
  other_absent: [],
  other_affected: [],
  other_unknown: [],
  other_restricted: [],
  /** The other hand has no value; the reason's code is a detail. */
  other_no_value: ['reason'],
  /** The other hand was given differently: other trials, or a deviation in one of the two. */
  other_given_differently: [],
  no_value: [],
  bound: [],
} as const satisfies Readonly<Record<string, Details>>

/** What stood differently at the earlier time, or where a change figure was gathered. */
export const CHANGE_CAUTIONS = {
  /** Another version of the protocol, comparable by its number. */
  version_differs: ['before', 'now'],
  wording_differs: [],
  examiner_differs: [],
  condition_differed: ['condition', 'before', 'now'],
  deviated_then: ['count'],
  deviated_now: ['count'],
  /** The figure was gathered with one examiner; here two gave the test, or the other way round. */
  figure_examiners: ['examiners'],
  figure_condition_differs: ['condition', 'here', 'there'],
  figure_conditions_unknown: ['conditions', 'count'],
  /** Whether the figure applies to this hand or client isn't known. */
  applies_unknown: ['reason'],
  /** Worked out from a standard error of measurement. */
  from_sem: [],
  practice_not_adjusted: [],
} as const satisfies Readonly<Record<string, Details>>

/** The sentence about a change. */
export const CHANGE_SENTENCES = {
  /** Within the error of the measurement by every figure: no change detected, which isn't "no change". */
  no_change_beyond_error: ['statistic'],
  /** Beyond the error by every figure. */
  change_beyond_error: ['statistic'],
  /** Beyond the error and as large as matters to people. */
  change_beyond_error_and_important: ['statistic'],
  /** Some figures say beyond the error, others don't. */
  figures_disagree: ['beyond', 'figures'],
  /** No figure for the error applies. */
  no_figure: [],
  /** A bound leaves it open. */
  cannot_tell: [],
  /** Scores of different major versions aren't compared. */
  not_comparable: ['before', 'now'],
} as const satisfies Readonly<Record<string, Details>>
