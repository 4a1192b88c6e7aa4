/** How raters agree, in words, as the command line prints it. */
import { shownValue } from '../../../protocols/scoring/rounding.ts'
import type { Why } from '../../../protocols/scoring/statistics/undefined.ts'
import { say } from '../words.ts'
import type { Agreed } from './commands/agree.ts'

type Numbers = NonNullable<Agreed['numbers']>
type Grades = NonNullable<Agreed['grades']>
type Ends = readonly [number | null, number | null]

const minus = (text: string): string => text.replace('-', '−')

/** An ICC, a kappa: to two digits after the point. */
const share = (value: number | null): string => (value === null ? 'none' : minus(shownValue(value, 2)))

const probability = (p: number | null): string =>
  p === null ? 'none' : p < 0.001 ? say('agree.p_small') : say('agree.p', { p: shownValue(p, 3) })

/** How many digits a number of the table's unit is shown to: three of the error, which all else is held against. */
const digitsFor = (size: number): number =>
  size > 0 ? Math.min(9, Math.max(0, 2 - Math.floor(Math.log10(size)))) : 2

const whyOf = (why: Why | null): string => say(`undefined.${why ?? 'too_few'}`)

function between([low, high]: Ends, shown: (value: number | null) => string): string {
  return low === null && high === null ? 'none' : say('agree.between', { low: shown(low), high: shown(high) })
}

export function numbersLines({ intraclass, errors, limits }: Numbers): readonly string[] {
  const digits = digitsFor(Math.max(0, ...errors.map(({ sem }) => sem), ...limits.map(({ sd }) => sd / 10)))
  const shown = (value: number | null): string => (value === null ? 'none' : minus(shownValue(value, digits)))
  return [
    say('agree.intraclass'),
    ...intraclass.map(({ form, value, why, interval, p }) =>
      value === null
        ? say('agree.form_none', { form, why: whyOf(why) })
        : say('agree.form', {
            form,
            variant: form.charAt(0),
            value: share(value),
            interval: between(interval, share),
            p: probability(p),
            negative: value < 0 ? 'yes' : 'no',
          }),
    ),
    ...errors.map(({ kind, sem, mdc90, mdc95 }) =>
      say('agree.error', { kind, sem: shown(sem), mdc90: shown(mdc90), mdc95: shown(mdc95) }),
    ),
    ...limits.flatMap(({ raters: [first, second], bias, biasInterval, lower, upper, proportional }) => [
      say('agree.bias', { first, second, bias: shown(bias), interval: between(biasInterval, shown) }),
      say('agree.limits', {
        low: shown(lower.value),
        high: shown(upper.value),
        lowInterval: between(lower.interval, shown),
        highInterval: between(upper.interval, shown),
      }),
      ...(proportional?.p != null && proportional.p < 0.05
        ? [say('agree.proportional', { slope: share(proportional.slope), p: probability(proportional.p) })]
        : []),
    ]),
  ]
}

export function gradesLines({ pairs, together }: Grades): readonly string[] {
  return [
    ...pairs.flatMap(({ raters: [first, second], same, kappas }) => [
      say('agree.same', { first, second, percent: shownValue(100 * same, 1) }),
      ...kappas.map(({ weights, value, why, interval, p }) =>
        value === null
          ? say('agree.kappa_none', { weights, why: whyOf(why) })
          : say('agree.kappa', {
              weights,
              value: share(value),
              interval: between(interval, share),
              p: probability(p),
            }),
      ),
    ]),
    ...(together === null
      ? []
      : [
          together.value === null
            ? say('agree.together_none', { why: whyOf(together.why) })
            : say('agree.together', { value: share(together.value), p: probability(together.p) }),
        ]),
  ]
}
