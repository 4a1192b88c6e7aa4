/** How a printed key is named for the key caps: by the code that such a key usually has. */
export function capOf(key: string): string {
  if (key === 'escape') return 'Escape'
  return /^[a-z]$/.test(key) ? `Key${key.toUpperCase()}` : key
}
