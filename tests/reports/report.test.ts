import { describe, expect, test } from 'vitest'
import { renderReport, type ReportInput, shortText } from '../../main/reports/index.ts'
import { NOTHING_KNOWN } from '../../protocols/client.ts'
import { shownValue } from '../../protocols/scoring/rounding.ts'
import { facts } from '../runner/giving.ts'
import { freshReportOf, readBack, reportOf } from './reports.ts'

const TESTS = ['nine_hole_peg', 'box_and_block', 'grip_strength'] as const
const UNVERIFIED = 'Not verified by a named person of this clinic'
const VERIFIED = 'Beside norms that this clinic has verified'

/** The report cut at its headings: what stands under each. */
function under(text: string, heading: string, next: string): string {
  const from = text.indexOf(heading)
  const to = text.indexOf(next, from + heading.length)
  if (from < 0 || to < 0) throw new Error(`No '${heading}' before '${next}' in: ${text}`)
  return text.slice(from, to)
}

describe.each(TESTS)('the report of %s', (id) => {
  const input = reportOf(id)

  test('has every figure of its result, raw values first', () => {
    const { text } = readBack(input)
    const values = under(text, 'Values as measured', 'Every trial')
    for (const score of input.result.scores.filter((one) => one.value !== null)) {
      expect(values).toContain(shownValue(score.value ?? Number.NaN, score.decimals))
    }
    const trials = under(text, 'Every trial', 'Otherwise than the protocol says')
    expect(input.result.trials.length).toBeGreaterThan(2)
    const times = input.result.trials
      .flatMap((trial) => Object.values(trial.readings))
      .flatMap(({ value, unit }) => (typeof value === 'number' && unit === 's' ? [shownValue(value, 2)] : []))
    for (const time of times) expect(trials).toContain(time)
    expect(text.indexOf('Values as measured')).toBeLessThan(text.indexOf(VERIFIED))
  })

  test('names client, day with offset, examiner, protocol, version and the words used', () => {
    const { text } = readBack(input)
    for (const words of [
      'Ingrid Sørensen-Öztürk',
      'K-1042',
      '11 June 1973',
      '52 years',
      '2 March 2026, 10:00 to 10:',
      '(UTC+01:00)',
      'Ada Brook',
      `${id.replaceAll('_', ' ')} ${input.result.protocol.version}, of the library`,
      'the protocol’s own (en)',
      'Harbour Hand Clinic',
      '7K2M-04QX-9TZB-HC31',
      'right (dominant hand first)',
      'right hand, practice',
    ]) {
      expect(text).toContain(words)
    }
  })

  test('STD-INT-1 names norm source, stratum, n, statistic, percentile definition and both intervals', () => {
    const { text } = readBack(input)
    const norms = under(text, UNVERIFIED, 'Error of the measurement')
    const compared = input.result.scores.flatMap((score) =>
      score.norms.filter((norm) => norm.strata.some((stratum) => stratum.z !== null)),
    )
    expect(compared.length).toBeGreaterThan(0)
    for (const norm of compared) {
      const reference = `[${input.result.sources.findIndex(({ cite }) => cite === norm.source.cite) + 1}]`
      expect(norms).toContain(reference)
      expect(text).toContain(`${reference} ${norm.source.cite.replace(/\.$/, '').replace(/\s+/g, ' ')}`)
      for (const { n, sex, ageMin, ageMax, z, mean, sd } of norm.strata) {
        if (z === null || mean === null || sd === null) continue
        expect(norms).toContain(String(n ?? 'no interval: n not known'))
        expect(norms).toContain(sex === 'F' ? 'women' : sex === 'M' ? 'men' : 'both sexes')
        expect(norms).toContain(ageMax === null ? `${ageMin} years and over` : `${ageMin} to ${ageMax} years`)
        expect(norms).toContain(shownValue(z, 2).replace('-', '−'))
      }
    }
    for (const words of [
      'Mean',
      'SD',
      'z',
      'Percentile (95 % interval)',
      'per cent of the norm group whose performance lies below',
    ]) {
      expect(norms).toContain(words)
    }
    expect(norms).toMatch(/(below the 1st|\d+(st|nd|rd|th)|above the 99th) \((below the 1st|\d+)/)
    expect(norms).toContain('Its 95 % interval shows the uncertainty from the size of the norm group')
    const error = under(text, 'Error of the measurement', 'Keep in mind')
    const intervals = input.result.scores
      .filter((score) => score.shown)
      .flatMap((score) =>
        score.error.map((one) => [shownValue((score.value ?? 0) + one.half, score.decimals), one.population]),
      )
    const none = 'No published figure for the error of a single value applies here.'
    for (const words of intervals.length ? intervals.flat() : [none]) expect(error).toContain(words)
  })

  test('STD-PROC-2 says on every page what it is for, its limits, and that it is no medical device', () => {
    const { pages } = readBack(input)
    for (const page of pages.map((one) => one.replace(/\s+/g, ' '))) {
      expect(page).toContain('It is for qualified examiners, who judge what it shows.')
      expect(page).toContain('makes no diagnosis, gives no advice on treatment, raises no alarm')
      expect(page).toContain('is not a certified medical device')
      expect(page).toContain('Norms and change figures hold only for the people and the procedure')
      expect(page).toMatch(new RegExp(`Page \\d of ${pages.length}`))
    }
  })

  test('STD-A11Y-6 is tagged, with title, language, headings and table headers, and embeds its fonts', () => {
    const { info, structure, fonts, bytes } = readBack(input)
    expect(info).toMatch(/Tagged:\s+yes/)
    expect(info).toMatch(new RegExp(`Title:\\s+${input.result.protocol.title}, 2 March 2026`))
    expect(bytes.toString('latin1')).toContain('/Lang (en)')
    expect(bytes.toString('latin1')).toContain('<pdfuaid:part>1</pdfuaid:part>')
    for (const tag of ['H1', 'H2', 'Table', 'THead', 'TH', 'Figure'])
      expect(structure).toMatch(new RegExp(`\\b${tag}\\b`))
    const embedded = fonts.split('\n').slice(2).filter(Boolean)
    expect(embedded.length).toBeGreaterThan(0)
    for (const font of embedded) expect(font).toMatch(/\byes yes yes\b/)
  })

  test('is the same bytes for the same input, and others at another moment', () => {
    const { bytes } = readBack(input)
    expect(renderReport(freshReportOf(id))).toEqual(bytes)
    expect(renderReport({ ...input, now: '2026-03-03T09:00:00.000+01:00' })).not.toEqual(bytes)
  })
})

describe('norms', () => {
  test('of a table that nobody here verified stand lower, under that heading, and never in the short text', () => {
    const input = reportOf('nine_hole_peg')
    const { text } = readBack(input)
    expect(input.result.scores.flatMap((score) => score.norms).map((norm) => norm.standing)).not.toContain(
      'verified',
    )
    const upper = text.slice(0, text.indexOf(UNVERIFIED))
    expect(upper).toContain('No table that a named person of this clinic has verified applies here.')
    for (const norm of input.result.scores.flatMap((score) => score.norms)) {
      expect(upper).not.toContain(norm.title)
      expect(shortText(input.result)).not.toContain(norm.title)
    }
    expect(upper).not.toMatch(/\d(st|nd|rd|th) \(/)
  })

  test('of a verified table stand above, with who verified it, and the others stay below', () => {
    const { text } = readBack(reportOf('nine_hole_peg', { verified: new Map([['adults_2003', 'Bo Quay']]) }))
    const upper = under(text, VERIFIED, 'Beside the last time')
    const lower = text.slice(text.indexOf(UNVERIFIED))
    expect(upper).toContain('Adults 2003, dish in the board')
    expect(upper).toContain('verified against its source by Bo Quay')
    expect(lower).not.toContain('Adults 2003, dish in the board')
    expect(lower).toContain('Adults 1985, separate box')
  })

  test('are said to be out of range, not made up, for a child of 7', () => {
    const child = facts({ sex: 'M', birth: { known: 'told', years: 7, on: '2026-03-02' } })
    const { text } = readBack(reportOf('grip_strength', { facts: child }))
    expect(text).toContain('7 years')
    expect(text).toContain('Outside the ages of this table: nothing is made up for it.')
  })

  test('are not guessed for a client of whom nothing is known', () => {
    const { text, pages } = readBack(reportOf('nine_hole_peg', { facts: NOTHING_KNOWN }))
    expect(text).toContain('The age is not known.')
    expect(text).toContain('More than one row may apply: none is chosen.')
    expect(text).toMatch(/any of 2\d rows of the table: from lowest to highest/)
    expect(pages.length).toBeLessThan(5)
  })

  test('list both sexes where the sex is not known, and both ages where it may be either', () => {
    const unsure = facts({ sex: 'unknown', birth: { known: 'year', year: 1971 } })
    const { text } = readBack(reportOf('nine_hole_peg', { facts: unsure }))
    expect(text).toContain('54 to 55 years, not known more exactly')
    for (const words of ['women, 50 to 54 years', 'women, 55 to 59 years', 'men, 50 to 54 years']) {
      expect(text).toContain(words)
    }
  })
})

/** A report whose result, view or person were altered as a test needs it. */
const altered = (change: (input: ReportInput) => Partial<ReportInput>): ReportInput => {
  const input = reportOf('nine_hole_peg')
  return { ...input, ...change(input) }
}

const SEEN = { other_hand: 'The other hand moves a peg.', dropped: 'A peg falls.' }

describe('what went otherwise', () => {
  test('STD-ADM-2: prints void trials with their reason, time and person, typed and corrected values with what stood there first', () => {
    const input = altered(({ result }) => {
      const [first, second, third, ...rest] = result.trials
      if (!first || !second || !third) throw new Error('too few trials')
      const time = second.readings['time']
      if (!time) throw new Error('no time')
      const by = { at: '2026-03-02T10:03:00.000+01:00', by: 'Ada Brook' }
      const gone = { happening: 'other_hand', remark: 'Twice.', valueSeen: true, cause: 'happening', ...by }
      const restarted = { happening: null, remark: '', valueSeen: false, cause: 'restart', ...by }
      const corrected = {
        ...time,
        value: 23.5,
        typed: true,
        confirmed: true,
        corrected: { first: 32.5, reason: 'Digits swapped.' },
      }
      return {
        result: {
          ...result,
          happenings: Object.entries(SEEN).map(([name, seen]) => ({ name, seen })),
          trials: [
            { ...first, status: 'void', void: gone, happenings: ['dropped', 'dropped'] },
            { ...second, input: 'typed', readings: { time: corrected } },
            { ...third, status: 'void', void: restarted },
            ...rest,
          ],
        },
      }
    })
    const trials = under(readBack(input).text, 'Every trial', 'Otherwise than the protocol says')
    expect(trials).toContain(
      'void: The other hand moves a peg, declared once the value was seen (10:03, Ada Brook); A peg falls (2 times); Twice.',
    )
    expect(trials).toContain('void: interrupted by a restart (10:03, Ada Brook)')
    expect(trials).toContain(
      '23.50 s (first 32.50 s; Digits swapped.), typed by hand, confirmed outside the plausible range',
    )
  })

  test('STD-ADM-2: prints deviations, corrections, stops and remarks, each with reason, time and person', () => {
    const by = { at: '2026-03-02T10:03:00.000+01:00', by: 'Ada Brook' }
    const input = altered(({ result, view }) => ({
      result: {
        ...result,
        deviations: [
          { code: 'told', what: 'The table was too high', reason: 'No other room', norms: 'withheld', ...by },
          { code: 'rest_cut', what: 'short_rest', reason: 'A call', norms: 'caution', ...by },
        ],
        corrections: [
          {
            code: 'examiner',
            trial: null,
            column: null,
            first: 'Bo',
            now: 'Ada Brook',
            reason: 'Wrong name',
            ...by,
          },
        ],
      },
      view: {
        ...view,
        stops: [{ ends: 'hand', reason: 'Pain in the thumb', pain: 6, done: 'Rested', ...by }],
        pauses: [
          { reason: 'Visitor', from: by.at, to: '2026-03-02T10:09:30.000+01:00', by: by.by },
          { reason: 'A call', from: by.at, to: null, by: by.by },
        ],
        remarks: [{ text: 'Came late.', ...by }],
      },
    }))
    const { text } = readBack(input)
    for (const words of [
      'The table was too high',
      'No other room',
      'withheld',
      'rest cut short: short rest',
      'with caution',
      'The first entry stays in the record.',
      'Wrong name',
      'the hand ended; Pain in the thumb; pain 6 of 10; done: Rested',
      'Ada Brook to 10:09; Visitor',
      'Ada Brook; A call',
      'Came late.',
      '2 March 2026, 10:03, Ada Brook',
    ]) {
      expect(text).toContain(words)
    }
  })

  test('says that a test was not given to its end, or was withdrawn', () => {
    const { text } = readBack(
      altered(({ result }) => ({ result: { ...result, complete: false, finishedAt: null } })),
    )
    expect(text).toContain('The test was not given to its end')
    expect(text).toContain('begun 10:00')
    const withdrawn = readBack(altered(({ view }) => ({ view: { ...view, phase: 'withdrawn' } })))
    expect(withdrawn.text).toContain('This administration was withdrawn as entered in error.')
  })
})

test.each([
  [
    'a rehearsal',
    (input: ReportInput) => ({ result: { ...input.result, rehearsal: true }, person: null }),
    'Rehearsal: no result of a client',
  ],
  ['the demo clinic', () => ({ demo: true }), 'Demo: an invented client'],
] as const)('%s is marked on every page and in the title', (_, change, mark) => {
  const { pages, info } = readBack(altered(change))
  expect(pages.length).toBeGreaterThan(1)
  for (const page of pages) expect(page).toContain(mark)
  expect(info).toContain(mark)
  for (const page of readBack(altered(() => ({}))).pages) expect(page).not.toContain(mark)
})

test('the course over time is drawn, and told in words for who cannot see it', () => {
  const input = reportOf('nine_hole_peg')
  const { structure, text } = readBack(input)
  const points = input.history[0]?.points ?? []
  expect(text).toContain('Over time')
  expect(points.length).toBeGreaterThan(2)
  expect(text).toContain('Time of the first run, s')
  expect(structure).toContain('Figure')
  expect(readBack({ ...input, history: [] }).text).not.toContain('Over time')
})

const named = (name: string, clinic = '') =>
  readBack(altered(({ person }) => ({ clinic, person: person && { ...person, name } })))

const squeezed = (words: string) => words.replace(/\s+/g, '')

describe('names and texts that people type', () => {
  test.each([
    'Łukasz Ångström-Öztürk',
    'Nguyễn Thị Ánh',
    'Σωκράτης Παπαδόπουλος',
    'Дмитрий Щербаков',
    'İpek Çağlar',
  ])('print as they are: %s', (name) => {
    expect(named(name).text.normalize('NFC')).toContain(name)
  })

  test('print from right to left', () => {
    const { text } = named('שרה לוי')
    expect(text.replace(/[\u200e\u200f\u202a-\u202e]/g, '')).toContain('שרה לוי')
  })

  test('print as Unicode numbers, and say so, where no font has the characters', () => {
    const { text } = named('\u{10380}\u{e123} Ann')
    expect(text).toContain('U+E123')
    expect(text).toContain('Ann')
    expect(text).toContain('Characters that no font on this machine can print stand as their Unicode numbers')
    expect(named('Ann').text).not.toContain('stand as their Unicode numbers')
  })

  test.each([
    '#panic("out")',
    '#read("/etc/passwd")',
    '*bold* _italic_ `raw` $x^2$ @ref <label> = Heading',
    '[#set page(width: 1pt)] // comment /* */',
    "{count, plural, one {x} other {y}} '{quoted}' \"",
    '\\ \\u{41} ~ -- --- ... #" "#',
    '<svg onload="x">&amp;</svg>',
  ])('are never markup: %s', (hostile) => {
    const { text } = named(hostile, hostile)
    expect(squeezed(text).split(squeezed(hostile)).length - 1).toBe(2)
  })

  test('control characters and half characters are left out, and nothing breaks', () => {
    const { text } = named('Ann\u0000\u0007\u001b[31m\ud800 Smith')
    expect(text).toMatch(/Ann +\[31m. Smith|Ann +\[31m\S* Smith/)
  })

  test('go over lines and pages when they are long, and nothing is cut off', () => {
    const long = Array.from({ length: 400 }, (_, index) => `word${index}`).join(' ')
    const input = altered(({ result, view }) => ({
      person: {
        name: `Ann ${'Verylongname'.repeat(16)}`,
        number: 'K',
        secondIdentifier: '',
        born: { known: 'no' },
      },
      view: { ...view, remarks: [{ text: long, at: '2026-03-02T10:03:00.000+01:00', by: 'Ada' }] },
      result: {
        ...result,
        deviations: Array.from({ length: 40 }, (_, index) => ({
          code: 'told' as const,
          what: `Departure ${index}`,
          reason: `Because of ${index}`,
          norms: 'kept' as const,
          at: '2026-03-02T10:03:00.000+01:00',
          by: 'Ada',
        })),
      },
    }))
    const { text, pages } = readBack(input)
    for (const words of ['word0', 'word399', 'Departure 0', 'Because of 39']) expect(text).toContain(words)
    expect(pages.length).toBeGreaterThan(3)
  })
})

test.each([
  [{ known: 'month', year: 1980, month: 2 }, 'February 1980, day not known'],
  [{ known: 'year', year: 1980 }, '1980, month and day not known'],
  [{ known: 'told', years: 71, on: '2026-01-05' }, '71 years old, as told on 5 January 2026'],
  [{ known: 'no' }, 'not known'],
] as const)('a birth that is known as %j is told as exactly as that', (born, words) => {
  expect(readBack(altered(({ person }) => ({ person: person && { ...person, born } }))).text).toContain(words)
})
