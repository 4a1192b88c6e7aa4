import type { Check } from '../check.ts'
import { valid } from 'semver'
import { childOf } from '../reader/tree.ts'

/**
 * What it does: The version has three numbers, as semantic versioning (semver.org) wants.
 *
 * Why it matters: The first number tells whether scores may still be compared with those given before.
 *
 * Example:
 *     version: 1.2
 *
 * Instead:
 *     version: 1.2.0
 */
export default {
  code: 'version_not_semver',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    const version = childOf(draft.tree, 'version')
    if (version?.is !== 'scalar' || draft.isBroken(version) || valid(version.written) === version.written)
      return
    const numbers = version.written.match(/\d+/g) ?? []
    const better = [numbers[0] ?? '1', numbers[1] ?? '0', numbers[2] ?? '0'].map(Number).join('.')
    yield {
      at: version.at,
      message: `"${version.written}" is no version of the form major.minor.patch.`,
      mend: `Write ${better}.`,
    }
  },
} satisfies Check
