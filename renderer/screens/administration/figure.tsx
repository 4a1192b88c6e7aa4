import { say } from '../../words/index.ts'

/** A step's drawing. Its text comes from a protocol file: as an image it can run nothing and load nothing. */
export function Figure({ figure }: { readonly figure: string | null }) {
  if (figure === null) return null
  return (
    <img
      className="giving-figure"
      src={`data:image/svg+xml;utf8,${encodeURIComponent(figure)}`}
      alt={say('administration.figure')}
    />
  )
}
