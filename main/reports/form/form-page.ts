/** A protocol on paper: a readable script, then a blank form. */
import { languageAtLarge } from '../../../protocols/language/words.ts'
import { PROGRAM } from '../../program.ts'
import { clockTime, day, listed, offset } from '../figures.ts'
import type { Page } from '../page.ts'
import { say } from '../words.ts'
import {
  allowedOf,
  cautionsOfForm,
  happeningsOf,
  kitOf,
  precautionsOfForm,
  purposeOf,
  scoresOf,
  sourcesOfForm,
} from './about.ts'
import { blankOf } from './blank.ts'
import type { FormInput } from './form-input.ts'
import { groundOf } from './ground.ts'
import { scriptOf } from './script.ts'

/** Letters of a fingerprint that are enough to tell two texts of a protocol apart. */
const TELLING = 12

export function formPage({ protocol, hash, now }: FormInput): Page {
  const ground = groundOf(protocol)
  const title = ground.words(protocol.title)
  const [least, most] = protocol.about.minutes
  const [before = '', between = '', after = ''] = say('page', { page: '\n', pages: '\n' }).split('\n')
  return {
    language: languageAtLarge(protocol.language),
    title: say('form.title', { test: title }),
    author: say('author', { program: PROGRAM.name, version: PROGRAM.version }),
    mark: null,
    lead: say('form.lead'),
    heading: title,
    facts: [
      [say('fact.protocol'), say('form.protocol', { id: protocol.id, version: protocol.version })],
      [say('form.minutes'), say('form.minutes_between', { least, most })],
      [say('form.measures'), listed(protocol.about.measures)],
      [say('form.text'), hash.slice(0, TELLING)],
    ],
    blocks: [
      ...purposeOf(ground),
      ...precautionsOfForm(ground),
      ...kitOf(ground),
      ...scriptOf(ground),
      ...happeningsOf(ground),
      ...allowedOf(ground),
      ...scoresOf(ground),
      ...cautionsOfForm(ground),
      ...sourcesOfForm(ground),
      ...blankOf(ground),
    ],
    made: say('form.made', { day: day(now), time: clockTime(now), offset: offset(now) }),
    footer: say('footer', { program: PROGRAM.name, version: PROGRAM.version }),
    pageWords: [before, between, after],
    unprintableWords: say('unprintable'),
  }
}
