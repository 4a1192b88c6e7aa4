import type { AdministrationView } from '../../../protocols/runner/view.ts'
import { Button } from '../../parts/button.tsx'
import { Notice } from '../../parts/notice.tsx'
import { tellSide } from '../../steps/tell.ts'
import { say } from '../../words/index.ts'

type Named = AdministrationView['missing'][number]

export interface MissingProps {
  readonly missing: readonly Named[]
  readonly onTakeUp: (named: Named) => void
}

/** The rule, and the hand where it is of one. */
const tellNamed = ({ rule, place }: Named): string =>
  [rule.replaceAll('_', ' '), tellSide(place)].filter(Boolean).join(' · ')

/** What a correction shows to be missing, before the end: it is given now, or left so. */
export function Missing({ missing, onTakeUp }: MissingProps) {
  if (missing.length === 0) return null
  return (
    <Notice tone="caution" title={say('administration.missing.title', { count: missing.length })} isLive>
      <p>{say('administration.missing.then')}</p>
      <ul className="giving-reasons">
        {missing.map((named) => (
          <li key={JSON.stringify(named)}>
            <Button isLarge onPress={() => onTakeUp(named)}>
              {say('administration.missing.give', { what: tellNamed(named) })}
            </Button>
          </li>
        ))}
      </ul>
    </Notice>
  )
}
