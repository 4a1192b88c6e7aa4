import canonicalize from 'canonicalize'

/** A value's RFC 8785 text: keys sorted, no spaces, numbers as ECMAScript writes them. The one reader of it. */
export function canonicalText(value: unknown): string {
  const text = canonicalize(value)
  if (text === undefined) throw new TypeError('This has no JSON form.')
  return text
}
