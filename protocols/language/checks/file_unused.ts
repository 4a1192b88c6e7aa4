import type { Check } from '../check.ts'

const READ =
  /^(?:protocol\.yaml|norms\/[A-Za-z0-9_.-]+\.csv|words\/[A-Za-z0-9_-]+\.ya?ml|figures\/[a-z][a-z0-9_]*\.svg)$/
/** Notes, and what file systems leave behind under names that begin with a dot. */
const NOTES = /\.(?:md|txt)$|(?:^|\/)LICEN[CS]E$|(?:^|\/)\./i

/**
 * What it does: Every file in the folder is one that a protocol can have: protocol.yaml, norms/*.csv,
 * words/*.yaml, figures/*.svg; or a note (.md, .txt, LICENSE).
 *
 * Why it matters: A file under another name is not read, though its author may believe it is.
 *
 * Example:
 *     norms/adults.xlsx
 *
 * Instead:
 *     norms/adults.csv
 */
export default {
  code: 'file_unused',
  severity: 'advice',
  needs: [],
  *run({ draft }) {
    for (const file of draft.folder.files.keys()) {
      if (READ.test(file) || NOTES.test(file)) continue
      yield {
        at: { file, start: 0, end: 0 },
        message: 'This file is not read.',
        mend: 'Move it to norms (.csv), words (.yaml) or figures (.svg, named in small letters), or take it away.',
      }
    }
  },
} satisfies Check
