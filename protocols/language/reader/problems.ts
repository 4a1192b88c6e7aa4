/** What can be wrong with the text of a YAML file, before anybody asks what it means. */
import type { Problem, Range, Severity } from '../diagnostics.ts'

interface Entry {
  readonly severity: Severity
  readonly message: string
  readonly mend: string
}

/** Each entry: `{0}` and so on stand for the words given where the problem is found. */
export const READER_PROBLEMS = {
  /** The folder has no `protocol.yaml`, so there is no test to give. */
  protocol_missing: {
    severity: 'error',
    message: 'The folder has no file protocol.yaml.',
    mend: 'Put the test into a file of that name, directly in the folder.',
  },
  /** A file without any content. */
  empty_file: {
    severity: 'error',
    message: 'The file is empty.',
    mend: 'Begin with "evenhand: 1", then id, version, language and title.',
  },
  /** A file whose outermost value is a list or a single value. */
  not_a_map: {
    severity: 'error',
    message: 'The file holds {0} where keys with values belong.',
    mend: 'Begin each line at the margin with a key, such as "title: Ring board".',
  },
  /** The text is no YAML. Only the first such place is named: what follows is often its consequence. */
  yaml_syntax: { severity: 'error', message: '{0}', mend: '{1}' },
  /** The same key twice in one map: one of the two would silently win. */
  duplicate_key: {
    severity: 'error',
    message: 'The key "{0}" stands twice here; the first is in line {1}.',
    mend: 'Keep one of the two, or give the second its own name.',
  },
  /** A key that is itself a list or a map, or is missing. */
  key_not_text: {
    severity: 'error',
    message: 'A key must be a word; this is {0}.',
    mend: 'Write a word before the colon.',
  },
  /** `&name`: anchors are refused, since copies by reference hide what a test says at a place. */
  anchor: {
    severity: 'error',
    message: 'The mark "&{0}" names this value for reuse, which protocol files do not allow.',
    mend: 'Take the mark away, and write the value where it is used.',
  },
  /** `*name`: aliases are refused, for the same reason and since they can grow without bound. */
  alias: {
    severity: 'error',
    message: '"*{0}" stands for a value written elsewhere, which protocol files do not allow.',
    mend: 'Write the value out here.',
  },
  /** `<<:` merges another map in some YAML dialects, not in YAML 1.2. */
  merge_key: {
    severity: 'error',
    message: 'The key "<<" would merge another map, which protocol files do not allow.',
    mend: 'Write the keys out here.',
  },
  /** `!tag`: no tag means anything here, and none may run anything. */
  custom_tag: {
    severity: 'error',
    message: 'The tag "{0}" means nothing here.',
    mend: 'Take the tag away; write a text in quotes if it must stay a text.',
  },
  /** A second document after `---` would be ignored. */
  several_documents: {
    severity: 'error',
    message: 'A second document begins here; a file holds one.',
    mend: 'Take away the line "---" (or "..."), or move what follows to a file of its own.',
  },
  /** `.nan` and `.inf` are numbers to YAML, and no measurement. */
  not_finite: {
    severity: 'error',
    message: '"{0}" is no number that can be measured.',
    mend: 'Write a number, or leave the key out where no limit is meant.',
  },
  /** More digits than a double holds: another number would be read than the one written. */
  digits_lost: {
    severity: 'error',
    message: '"{0}" has more digits than can be kept; it would be read as {1}.',
    mend: 'Write fewer digits, or put it in quotes if it is a name or a number of a document.',
  },
  file_too_large: {
    severity: 'error',
    message: 'The file has {0} characters; at most {1} are read.',
    mend: 'Take away what does not belong to the test, or split it into two tests.',
  },
  too_deep: {
    severity: 'error',
    message: 'Values are nested more than {0} deep here.',
    mend: 'Take away brackets or sections around it.',
  },
  too_many_nodes: {
    severity: 'error',
    message: 'The file has more than {0} values; what follows from here is not read.',
    mend: 'Take away what does not belong to the test, or split it into two tests.',
  },
  /** Lines that end in CR LF are read like any others; reported since a table of hashes sees a difference. */
  crlf_lines: {
    severity: 'advice',
    message: 'The lines of this file end in CR LF.',
    mend: 'Let the editor write plain line feeds (LF), so that the file is the same on every machine.',
  },
  byte_order_mark: {
    severity: 'advice',
    message: 'The file begins with a byte order mark.',
    mend: 'Save it as UTF-8 without that mark.',
  },
  /** Marks that turn the direction of writing can make a text look different from what it says. */
  bidi_control: {
    severity: 'error',
    message:
      'An invisible character here ({0}) turns the direction of writing, so the line may read otherwise than it is.',
    mend: 'Delete the character; right-to-left words need none of it.',
  },
  control_character: {
    severity: 'error',
    message: 'An invisible control character stands here ({0}).',
    mend: 'Delete the character.',
  },
  /** U+FFFD stands where the bytes were no UTF-8. */
  unreadable_character: {
    severity: 'warning',
    message: 'A character here could not be read.',
    mend: 'Write it again, and save the file as UTF-8.',
  },
} satisfies Readonly<Record<string, Entry>>

export type ReaderCode = keyof typeof READER_PROBLEMS
export const READER_CODES = Object.keys(READER_PROBLEMS) as readonly ReaderCode[]

export function readerProblem(code: ReaderCode, at: Range, ...words: readonly (string | number)[]): Problem {
  const { severity, message, mend } = READER_PROBLEMS[code]
  return { code, severity, at, message: fill(message, words), mend: fill(mend, words) }
}

/** Puts `words` where `{0}`, `{1}` … stand. */
export function fill(sentence: string, words: readonly (string | number)[]): string {
  return sentence.replace(/\{(\d)\}/g, (_, index: string) => String(words[Number(index)] ?? ''))
}
