import type { AdministrationView } from '../../protocols/runner/view.ts'
import { say } from '../words/index.ts'
import { tellSide } from './tell.ts'

type Rule = AdministrationView['rules'][number]

function tellRule({ rule, place, did, text }: Rule): string {
  if (did !== 'nothing') return did === 'asked' ? '' : text
  return say('steps.rule_nothing', {
    what: [rule.replaceAll('_', ' '), tellSide(place)].filter(Boolean).join(' · '),
  })
}

/**
 * What the protocol's rules did, in its own words, and which rules and sections did nothing, since what they ask had no
 * answer; each said once.
 */
export const tellRules = (rules: readonly Rule[]): readonly string[] => [
  ...new Set(rules.map(tellRule).filter((words) => words !== '')),
]
