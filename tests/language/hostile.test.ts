import { describe, expect, test } from 'vitest'
import { unsafeParts } from '../../protocols/language/figures/safe-svg.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { casesIn } from './corpus.ts'
import { folderOf } from './folders.ts'

const least =
  casesIn('sound')
    .find(({ name }) => name === 'least.yaml')
    ?.folder.files.get('protocol.yaml') ?? ''

/** Far above what any of these takes, far below what a regular expression that runs away would. */
const SOON_MS = 8000

const times = (part: string, characters = 240_000): string =>
  part.repeat(Math.floor(characters / part.length))

describe('STD-FMT-4 a text made to hold the program up is read or refused soon', () => {
  test.each([
    ['one endless word', `${least}x: ${times('a')}\n`],
    ['one endless number', `${least}x: ${times('1')} x y\n`],
    ['a limit that is an endless number', least.replace('limit: 60 s', `limit: ${times('1')} x y`)],
    ['many keys', least + times('k: 1\n')],
    ['many different unknown keys', least + Array.from({ length: 9000 }, (_, n) => `key_${n}: 1\n`).join('')],
    [
      'two endless names that are alike',
      least
        .replace('kit:\n', `kit:\n  ${times('a', 90_000)}: { text: A }\n`)
        .replace('of: [board]', `of: [${times('a', 89_999)}b]`),
    ],
    ['many steps', least.replace('scores:', `${times('  - { position: p, text: P. }\n', 200_000)}scores:`)],
    ['many scores', least + times('  - { score: t, value: first(carry.time), unit: s }\n', 150_000)],
    ['explicit keys', times('? ')],
    ['list marks in one line', times('- ')],
    ['quotation marks', times("'")],
    ['anchors', times('&a ')],
    ['colons', times(': ')],
    ['deep indents', Array.from({ length: 600 }, (_, n) => `${' '.repeat(n)}a:`).join('\n')],
    ['empty lines', least + times('\n')],
    [
      'braces of a message',
      least.replace('text: Seated at the table.', `text: "${times('{a, select, other {', 3900)}"`),
    ],
  ])('%s', (_, text) => {
    const begun = performance.now()
    const { diagnostics } = readProtocol(folderOf(text))
    expect(diagnostics.map(({ code }) => code)).not.toContain('check_crashed')
    expect(performance.now() - begun).toBeLessThan(SOON_MS)
  })

  test.each([
    '<!--',
    '<!',
    '<?',
    '<![CDATA[',
    '<',
    '<a b="',
    "<a b='",
    '&',
    '<title ',
    'url(',
    '<a ',
    '<a x=url( >',
    '</a>',
  ])('a figure of %s', (part) => {
    const begun = performance.now()
    expect(unsafeParts(times(part, 500_000)).length).toBeGreaterThan(0)
    expect(performance.now() - begun).toBeLessThan(SOON_MS)
  })
})

const drawing = (inside: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg"><title>T</title>${inside}</svg>`

describe('a figure is a plain drawing', () => {
  test.each([
    '<path d="M1 1"/>',
    '<g fill="#fff" style="stroke: red"><circle r="1"/></g>',
    '<use href="#a"/>',
    '<rect fill="url(#grey)"/>',
    '<text>a &amp; b &#176; &lt;</text>',
    '<!-- drawn by hand -->',
  ])('%s is one', (inside) => {
    expect(unsafeParts(drawing(inside))).toEqual([])
  })

  test.each([
    '<script>x</script>',
    '<SCRIPT/>',
    '<svg:script/>',
    '<path onload="x"/>',
    '<path ONLOAD="x"/>',
    '<path x:onload="x"/>',
    '<a href="https://example.org"><path/></a>',
    '<use xlink:href="a.svg#b"/>',
    '<use href="&#104;ttps://example.org"/>',
    '<use href="javascript:x"/>',
    '<image href="#a"/>',
    '<foreignObject><p/></foreignObject>',
    '<style>@import "x"</style>',
    '<rect style="background: url(//example.org)"/>',
    '<rect style="background: u\\72l(x)"/>',
    '<rect fill="url( &#39;https://example.org&#39; )"/>',
    '<animate attributeName="href" to="x"/>',
    '<set attributeName="onclick" to="x"/>',
    '<rect xml:base="https://example.org"/>',
    '<path d=M1/>',
    '<path d="M1"',
    '<text>&xxe;</text>',
    '<rect id="&xxe;"/>',
    '<![CDATA[<script>]]>',
    '<?xml-stylesheet href="x"?>',
    '<!--><script>x</script>-->',
    '<!-- --!><script>x</script> -->',
  ])('%s is none', (inside) => {
    expect(unsafeParts(drawing(inside)).length).toBeGreaterThan(0)
  })
})
