import { scaleLinear, scaleTime } from 'd3-scale'
import { line } from 'd3-shape'
import { useId } from 'react'
import { apart, type DrawnPoint, drawn, extent, runs, type Series, span } from './series.ts'
import './charts.css'

interface Props {
  readonly series: readonly Series[]
  readonly title: string
  /** What the chart shows, in sentences, for whoever can't see it. */
  readonly description: string
  readonly unit: string
  readonly showValue: (value: number) => string
  readonly showDate: (date: Date) => string
}

const WIDTH = 760
const HEIGHT = 340
const MARGIN = { top: 34, right: 150, bottom: 44, left: 64 }
const RIGHT = WIDTH - MARGIN.right
const BOTTOM = HEIGHT - MARGIN.bottom
const LABEL_HEIGHT = 20
const DAY = 86_400_000

type Scale = (value: number) => number
type TimeScale = (value: Date) => number

/** Each series has its own shape and its own line, so that neither needs its colour to be told. */
const MARKS = ['circle', 'square', 'diamond'] as const

function Mark({ mark, x, y, over }: { mark: (typeof MARKS)[number]; x: number; y: number; over: boolean }) {
  const shape =
    mark === 'circle' ? (
      <circle cx={x} cy={y} r={6} />
    ) : mark === 'square' ? (
      <rect x={x - 5.5} y={y - 5.5} width={11} height={11} />
    ) : (
      <path d={`M${x} ${y - 7}L${x + 7} ${y}L${x} ${y + 7}L${x - 7} ${y}Z`} />
    )
  return (
    <g className={`chart-mark chart-mark-${mark}`}>
      {shape}
      {over ? <path className="chart-over" d={`M${x} ${y - 10}v-12m-5 5l5-6l5 6`} /> : null}
    </g>
  )
}

interface Scales {
  readonly x: TimeScale & { ticks(count: number): Date[] }
  readonly y: Scale & { ticks(count: number): number[] }
}

function scalesFor(all: readonly Series[]): Scales | null {
  const values = extent(all)
  const times = span(all)
  if (values === null || times === null) return null
  const [least, greatest] = values
  // Values that are the same but for the last digits of a double are drawn as the same.
  const finest = Math.max(Math.abs(least), Math.abs(greatest), 1) * 1e-6
  const room = greatest - least < finest ? Math.max(Math.abs(greatest), 1) * 0.15 : (greatest - least) * 0.15
  const low = least >= 0 ? Math.max(0, least - room) : least - room
  const [first, last] = times
  const edge = Math.max((last.getTime() - first.getTime()) * 0.03, DAY / 2)
  const x = scaleTime(
    [new Date(first.getTime() - edge), new Date(last.getTime() + edge)],
    [MARGIN.left, RIGHT],
  )
  const y = scaleLinear([low, greatest + room], [BOTTOM, MARGIN.top]).nice(5)
  return { x: Object.assign((at: Date) => x(at), x), y: Object.assign((at: number) => y(at), y) }
}

function Axes({
  scales,
  unit,
  showValue,
  showDate,
}: { scales: Scales } & Omit<Props, 'series' | 'title' | 'description'>) {
  const dates = scales.x.ticks(5)
  const named = dates.map(showDate)
  return (
    <g className="chart-axes">
      <text x={MARGIN.left} y={16} className="chart-unit">
        {unit}
      </text>
      {scales.y.ticks(5).map((value) => (
        <g key={value}>
          <line x1={MARGIN.left} x2={RIGHT} y1={scales.y(value)} y2={scales.y(value)} />
          <text x={MARGIN.left - 10} y={scales.y(value)} textAnchor="end" dominantBaseline="central">
            {showValue(value)}
          </text>
        </g>
      ))}
      {dates.map((date, index) => (
        <g key={date.getTime()}>
          <line x1={scales.x(date)} x2={scales.x(date)} y1={BOTTOM} y2={BOTTOM + 6} />
          {named[index] === named[index - 1] ? null : (
            <text x={scales.x(date)} y={BOTTOM + 24} textAnchor="middle">
              {named[index]}
            </text>
          )}
        </g>
      ))}
    </g>
  )
}

function Line({ series, index, scales }: { series: Series; index: number; scales: Scales }) {
  const mark = MARKS[index % MARKS.length] ?? 'circle'
  const path = line<DrawnPoint>(
    (point) => scales.x(point.at),
    (point) => scales.y(point.value),
  )
  return (
    <g className={`chart-series chart-series-${index % MARKS.length}`}>
      {runs(series).map((run) => (
        <path key={run[0]?.id} className="chart-line" d={path([...run]) ?? ''} />
      ))}
      {drawn(series).map((point) => (
        <Mark key={point.id} mark={mark} x={scales.x(point.at)} y={scales.y(point.value)} over={point.over} />
      ))}
    </g>
  )
}

function Labels({ all, scales }: { all: readonly Series[]; scales: Scales }) {
  const labelled = all.flatMap((series, index) => {
    const last = drawn(series).at(-1)
    return last === undefined ? [] : [{ series, index, y: scales.y(last.value) }]
  })
  const places = apart(
    labelled.map((each) => each.y),
    LABEL_HEIGHT,
    MARGIN.top,
    BOTTOM,
  )
  return labelled.map(({ series, index }, at) => (
    <g key={series.id} className={`chart-series chart-series-${index % MARKS.length} chart-label`}>
      <Mark mark={MARKS[index % MARKS.length] ?? 'circle'} x={RIGHT + 18} y={places[at] ?? 0} over={false} />
      <text x={RIGHT + 32} y={places[at]} dominantBaseline="central">
        {series.label}
      </text>
    </g>
  ))
}

/** Values over time, true to scale in both directions. Draws nothing where there is nothing to draw. */
export function TimeChart(props: Props) {
  const id = useId()
  const scales = scalesFor(props.series)
  if (scales === null) return null
  const { unit, showValue, showDate } = props
  return (
    <svg
      className="chart"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-description`}
    >
      <title id={`${id}-title`}>{props.title}</title>
      <desc id={`${id}-description`}>{props.description}</desc>
      <Axes scales={scales} unit={unit} showValue={showValue} showDate={showDate} />
      {props.series.map((series, index) => (
        <Line key={series.id} series={series} index={index} scales={scales} />
      ))}
      <Labels all={props.series} scales={scales} />
    </svg>
  )
}
