import { scaleLinear } from 'd3-scale'
import { useId } from 'react'
import './charts.css'

interface Props {
  readonly value: number
  readonly over: boolean
  readonly mean: number
  readonly sd: number
  readonly title: string
  readonly description: string
  readonly showValue: (value: number) => string
  /** The word at a mark: so many standard deviations from the mean, 0 for the mean itself. */
  readonly showStep: (step: number) => string
}

const WIDTH = 560
const HEIGHT = 92
const EDGE = 34
const BAND = { top: 34, height: 22 }

/**
 * One value beside the norm group it is compared with: the mean, one and two standard deviations on either
 * side, and the value where it lies, however far that is.
 */
export function NormStrip({ value, over, mean, sd, title, description, showValue, showStep }: Props) {
  const id = useId()
  const low = Math.min(mean - 3 * sd, value - sd / 2)
  const high = Math.max(mean + 3 * sd, value + sd / 2)
  const x = scaleLinear([low, high], [EDGE, WIDTH - EDGE])
  const steps = [-2, -1, 0, 1, 2]
  return (
    <svg
      className="chart chart-strip"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-description`}
    >
      <title id={`${id}-title`}>{title}</title>
      <desc id={`${id}-description`}>{description}</desc>
      <line
        className="strip-axis"
        x1={EDGE}
        x2={WIDTH - EDGE}
        y1={BAND.top + BAND.height / 2}
        y2={BAND.top + BAND.height / 2}
      />
      <rect
        className="strip-two"
        x={x(mean - 2 * sd)}
        width={x(mean + 2 * sd) - x(mean - 2 * sd)}
        y={BAND.top + 4}
        height={BAND.height - 8}
      />
      <rect
        className="strip-one"
        x={x(mean - sd)}
        width={x(mean + sd) - x(mean - sd)}
        y={BAND.top}
        height={BAND.height}
      />
      {steps.map((step) => (
        <g key={step} className={step === 0 ? 'strip-mean' : 'strip-step'}>
          <line
            x1={x(mean + step * sd)}
            x2={x(mean + step * sd)}
            y1={BAND.top}
            y2={BAND.top + BAND.height + 5}
          />
          <text x={x(mean + step * sd)} y={BAND.top + BAND.height + 20} textAnchor="middle">
            {showStep(step)}
          </text>
        </g>
      ))}
      <g className="strip-value">
        <path d={`M${x(value) - 8} ${BAND.top - 12}h16l-8 12Z`} />
        <text x={x(value)} y={BAND.top - 17} textAnchor="middle">
          {over ? '≥ ' : ''}
          {showValue(value)}
        </text>
      </g>
    </svg>
  )
}
