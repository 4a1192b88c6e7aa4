/** Things of a household, for the tasks with them. */
import { box, curve, ellipse, line, path, type Point, type Shape } from './pen.ts'

/** The table top of a drawing from the client’s side. */
export const TABLE_TOP = 250
/** The stand is 90 cm wide; its rail, line and shelf are 45 cm above the table, the hooks 35 cm. */
const CM = 4.2
/** So many centimetres above the table. */
export const above = (cm: number): number => TABLE_TOP - cm * CM
/** An open hook that hangs from the bar. */
export const hook = (x: number): Shape =>
  curve([
    [x, above(45)],
    [x, above(38)],
    [x + 6, above(35.4)],
    [x + 12, above(38)],
  ])
export const fork = ([x, y]: Point): Shape =>
  line([
    [x, y - 8],
    [x, y + 30],
  ]) +
  [-5, 0, 5]
    .map((dx) =>
      line(
        [
          [x + dx, y - 26],
          [x + dx, y - 12],
        ],
        { line: 'thin' },
      ),
    )
    .join('') +
  line([
    [x - 5, y - 12],
    [x + 5, y - 12],
  ])
export const knife = ([x, y]: Point): Shape =>
  line([
    [x, y - 4],
    [x, y + 30],
  ]) + path(`M${x} ${y - 26}c7 4 7 16 5 22h-5z`, { fill: 'mid' })
/** The outline of a piece of cutlery on its mat. */
export const outline = ([x, y]: Point): Shape =>
  box(x - 9, y - 32, 18, 68, { line: 'thin', dashed: true, round: 8 })
export const egg = (at: Point): Shape => ellipse(at, 11, 15, { fill: 'paper' })
/** A clothes peg on the line. */
export const clothes = ([x, y]: Point): Shape => path(`M${x - 4} ${y - 12}l4 28l4 -28`, { fill: 'mid' })
/** A cloth that hangs over the line by half. */
export const cloth = (x: number, width: number, hang: number): Shape =>
  box(x, above(45), width, hang, { fill: 'light' })
/** A folded towel, seen from the fold. */
export const towel = ([x, y]: Point): Shape =>
  box(x - 62, y - 20, 124, 20, { fill: 'light', round: 9 }) +
  line(
    [
      [x - 62, y - 10],
      [x + 54, y - 10],
    ],
    { line: 'thin' },
  )
