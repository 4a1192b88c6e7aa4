import type { Check } from '../check.ts'

const READ =
  /^(?:protocol\.yaml|norms\/[A-Za-z0-9_.-]+\.csv|words\/[A-Za-z0-9_-]+\.ya?ml|figures\/[a-z][a-z0-9_]*\.svg)$/

/**
 * What it does: Every file in the folder is one that a protocol can have: protocol.yaml, norms/*.csv,
 * words/*.yaml, figures/*.svg.
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
      if (READ.test(file) || /(?:^|\/)(?:README|LICEN[CS]E)[^/]*$/i.test(file)) continue
      yield {
        at: { file, start: 0, end: 0 },
        message: 'This file is not read.',
        mend: 'Move it to norms (.csv), words (.yaml) or figures (.svg, named in small letters), or take it away.',
      }
    }
  },
} satisfies Check
