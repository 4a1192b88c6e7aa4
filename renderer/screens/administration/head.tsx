import type { AdministrationView } from '../../../protocols/runner/view.ts'
import { say } from '../../words/index.ts'
import { placeWords } from '../../steps/place-words.ts'

interface Props {
  readonly view: AdministrationView
  readonly saved: boolean
  readonly waiting: number
}

/** Where we are, in words; how far along; whether all of it is on disk. */
export function Head({ view, saved, waiting }: Props) {
  const at = view.step ?? view.sheet
  const place = at === null ? [] : placeWords({ practice: false, ...at })
  const { passed, due } = view.progress
  return (
    <div className="giving-head">
      <h1 className="giving-place">{place.length === 0 ? view.protocol.title : place.join(' · ')}</h1>
      <div className="giving-about">
        <span>{view.protocol.title}</span>
        <span className="numbers">
          {say('administration.progress', {
            number: Math.min(passed + 1, Math.max(due, 1)),
            of: Math.max(due, 1),
          })}
        </span>
        <progress className="giving-progress" max={Math.max(due, 1)} value={passed} aria-hidden="true" />
        <output className={saved ? 'giving-saved' : 'giving-unsaved'}>
          {saved
            ? waiting > 1
              ? say('administration.saving', { count: waiting })
              : ''
            : say('administration.not_saved')}
        </output>
      </div>
    </div>
  )
}
