import type { BUILT_IN } from '../schema/top.ts'

/**
 * English words of the void reasons that every protocol has. A protocol in another language, or with better
 * words, writes a happening of the same name; a wording file gives them by key like any other text.
 */
export const BUILT_IN_WORDS: Readonly<Record<(typeof BUILT_IN)[number], string>> = {
  timing_mistake: 'The examiner pressed too early, too late or not at all.',
  not_ready: 'The client was not ready.',
  interruption: 'Something interrupted the trial.',
  kit_fault: 'Something was wrong with the kit.',
}

/** What one of those who rate is called, before the number. */
export const RATER_WORDS = 'Rater'
