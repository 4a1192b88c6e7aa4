/**
 * The keys that work while a test is given, in one place. Letters are what the keyboard prints (`key`), so that
 * they fit its layout; the main key and the pedal are the clinic's setting and are found by `code`.
 */

/** What a key can ask for, beside the main key's own act and the protocol's happenings. */
export type Command =
  | 'void'
  | 'undo'
  | 'pause'
  | 'stop'
  | 'close'
  | 'deviation'
  | 'accommodation'
  | 'remark'
  | 'typed'
  | 'correct'
  | 'skip'
  | 'later'
  | 'put_right'
  | 'cover'
  | 'help'

export const COMMAND_KEYS: Readonly<Record<Command, string>> = {
  void: 'v',
  undo: 'u',
  pause: 'p',
  stop: 'escape',
  close: 'c',
  deviation: 'd',
  accommodation: 'a',
  remark: 'r',
  typed: 't',
  correct: 'e',
  skip: 's',
  later: 'l',
  put_right: 'w',
  cover: 'k',
  help: '?',
}

/** Keys that a protocol's happening never takes over: each protects the client, the trial or the record. */
const NEVER_YIELDED: readonly Command[] = ['void', 'undo', 'stop', 'cover', 'help']

/** Commands that may be asked for while a clock runs; everything else waits for the trial's end. */
export const WHILE_RUNNING: readonly Command[] = ['void', 'stop', 'cover']

/** What the program compares: the printed letter, small. */
export const printed = (key: string): string => key.toLowerCase()

const LETTER = /^[a-z]$/

interface Keyed {
  readonly name: string
  readonly key: string | null
}

/**
 * The key of each happening: the protocol's own where it names one that is free, else the first letter of its
 * name that nothing else uses. A happening that finds none is left to the pointer (null).
 */
export function happeningKeys(happenings: readonly Keyed[]): Readonly<Record<string, string | null>> {
  const reserved = new Set(NEVER_YIELDED.map((command) => COMMAND_KEYS[command]))
  const keys = new Map<string, string | null>()
  const used = new Set<string>()
  for (const { name, key } of happenings) {
    const own = key === null ? null : printed(key)
    if (own === null || reserved.has(own) || used.has(own)) continue
    keys.set(name, own)
    used.add(own)
  }
  const taken = new Set([...Object.values(COMMAND_KEYS), ...used])
  for (const { name } of happenings) {
    if (keys.has(name)) continue
    const letter = [...name, ...'abcdefghijklmnopqrstuvwxyz'].find(
      (each) => LETTER.test(each) && !taken.has(each),
    )
    keys.set(name, letter ?? null)
    if (letter !== undefined) taken.add(letter)
  }
  return Object.fromEntries(keys)
}

/** The command that a printed key asks for, unless a happening on offer has taken the key over. */
export function commandOf(key: string, happenings: Readonly<Record<string, string | null>>): Command | null {
  const small = printed(key)
  if (Object.values(happenings).includes(small)) return null
  const found = Object.entries(COMMAND_KEYS).find(([, each]) => each === small)
  return found === undefined ? null : (found[0] as Command)
}
