/** The YAML library's error codes in words for people who write tests, not programs. */

interface Sentence {
  readonly message: string
  readonly mend: string
}

const SENTENCES: Readonly<Record<string, Sentence>> = {
  TAB_AS_INDENT: { message: 'The line is indented with a tab.', mend: 'Indent with spaces only.' },
  BAD_INDENT: {
    message: 'The line is not indented like its neighbours.',
    mend: 'Let it begin in the same column as the lines of the same level; put a text that has ": " or " #" in it into quotes.',
  },
  BAD_DQ_ESCAPE: {
    message: 'A backslash in double quotes begins a special character, and this is none.',
    mend: 'Write \\\\ for a backslash, or use single quotes.',
  },
  BAD_SCALAR_START: {
    message: 'A text may not begin with this character.',
    mend: 'Put the text in quotes.',
  },
  BLOCK_AS_IMPLICIT_KEY: {
    message: 'A second ": " follows in the same line.',
    mend: 'Put the text after the first colon in quotes, or start a new line.',
  },
  BLOCK_IN_FLOW: {
    message: 'A list or map by lines stands within brackets.',
    mend: 'Close the bracket first, or write the list within brackets too.',
  },
  KEY_OVER_1024_CHARS: {
    message: 'A bracket or quote seems not to be closed before the colon.',
    mend: 'Close it, or put the text in quotes.',
  },
  MISSING_CHAR: {
    message:
      'Something is missing here: a closing bracket, a closing quote, a comma, or a space after a colon or comma.',
    mend: 'Add it; each [ needs its ], each { its }, each quote a second one, each ":" a space behind it.',
  },
  MULTILINE_IMPLICIT_KEY: {
    message: 'The line before the colon runs over several lines.',
    mend: 'Write "key: value" in each line; indent the lines that continue a text deeper than their key.',
  },
  UNEXPECTED_TOKEN: {
    message: 'This cannot stand here.',
    mend: 'Put a text with special characters ([ ] { } , : # & * ! | > % @ or a quote) in quotes.',
  },
  MULTIPLE_ANCHORS: { message: 'Two marks with "&" stand before one value.', mend: 'Take both away.' },
  MULTIPLE_TAGS: { message: 'Two tags with "!" stand before one value.', mend: 'Take both away.' },
  RESOURCE_EXHAUSTION: { message: 'The file is nested too deeply to be read.', mend: 'Take away brackets.' },
}

/** What to say for a code of the library; `original` is what the library itself says. */
export function syntaxSentence(code: string, original: string): Sentence {
  const known = SENTENCES[code]
  if (known) return { message: `${known.message} (${original.replace(/\.$/, '')})`, mend: known.mend }
  return {
    message: `This is no YAML: ${original.replace(/\.$/, '')}.`,
    mend: 'Compare with a line that is read, or put the text in quotes.',
  }
}
