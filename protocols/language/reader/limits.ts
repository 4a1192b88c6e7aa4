/** Bounds of what is read at all. Far above any real test, far below what could hold the program up. */
export const MOST_CHARACTERS = 256 * 1024
export const MOST_NODES = 20_000
export const DEEPEST = 48
/** A figure may carry more drawing than a protocol carries words. */
export const MOST_FIGURE_CHARACTERS = 512 * 1024
