/** Letters that Unicode does not take apart into a letter and a mark, as people type them without. */
const PLAIN: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  ł: 'l',
  þ: 'th',
  ı: 'i',
}

/**
 * A name or a query as it is searched: lower case, without accents, one space between words. `Łukasz Ångström`
 * is found as `lukasz angstrom`, and the other way about.
 */
export function folded(text: string): string {
  return text
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[ßæœøđðłþı]/g, (letter) => PLAIN[letter] ?? letter)
    .replace(/\s+/g, ' ')
    .trim()
}
