/** What can be wrong with the shape of a file: keys and the kinds of their values. */
import type { Problem, Range } from '../diagnostics.ts'
import { fill } from '../reader/problems.ts'

interface Entry {
  readonly message: string
  readonly mend: string
}

/** All are errors: a test is not given from a file that can be read in two ways. */
export const SCHEMA_PROBLEMS = {
  /** `evenhand:` names the version of this language; another one may mean the same keys differently. */
  language_version: {
    message: 'This file says it is written in version {0} of the language; this program reads version 1.',
    mend: 'Write "evenhand: 1" if it is, else open it with a newer program.',
  },
  /** Mostly a slip of the pen; an ignored key would leave out something that the author meant. */
  unknown_key: { message: 'The key "{0}" means nothing {1}.', mend: '{2}' },
  missing_key: { message: 'The key "{0}" is missing {1}.', mend: 'Add it: {2}.' },
  /** A key with nothing behind its colon. */
  empty_value: {
    message: 'The key "{0}" has no value.',
    mend: 'Write {1} behind the colon, or take the key away.',
  },
  wrong_type: { message: 'Here stands {0}; expected {1}.', mend: '{2}' },
  /** The right type of value in the wrong form, such as a name with a capital letter. */
  wrong_form: {
    message: '"{0}" does not have the form needed; expected {1}.',
    mend: 'Write {1} instead.',
  },
  not_an_option: { message: '"{0}" is none of the words that can stand here.', mend: '{1}' },
  out_of_range: { message: '{0} lies outside what is allowed here: {1}.', mend: 'Write a number within it.' },
  wrong_length: { message: 'This is {0}: {1}.', mend: '{2}' },
  /** The first key of a step says what kind it is, and no such kind exists. */
  unknown_kind: {
    message: '"{0}" is no kind of step or section.',
    mend: '{1}',
  },
  /** A step's first key is its kind, so that the eye finds it. */
  kind_not_first: {
    message: 'A step begins with its kind; this one begins with "{0}".',
    mend: 'Put "{1}" first.',
  },
} satisfies Readonly<Record<string, Entry>>

export type SchemaCode = keyof typeof SCHEMA_PROBLEMS
export const SCHEMA_CODES = Object.keys(SCHEMA_PROBLEMS) as readonly SchemaCode[]

export function schemaProblem(code: SchemaCode, at: Range, ...words: readonly (string | number)[]): Problem {
  const { message, mend } = SCHEMA_PROBLEMS[code]
  return { code, severity: 'error', at, message: fill(message, words), mend: fill(mend, words) }
}
