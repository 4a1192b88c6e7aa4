import type { StepView } from '../../../protocols/runner/view.ts'
import { say } from '../../words/index.ts'

/** A step's drawing. Its text comes from a protocol file: as an image it can run nothing and load nothing. */
export function Figure({ figure }: { readonly figure: StepView['figure'] }) {
  if (figure === null) return null
  const { drawing, words, hand } = figure
  return (
    <figure className="giving-figure">
      <img
        src={`data:image/svg+xml;utf8,${encodeURIComponent(drawing)}`}
        alt={words === '' ? say('administration.figure') : words}
      />
      {hand === null ? null : <figcaption>{say('administration.figure_hand', { hand })}</figcaption>}
    </figure>
  )
}
