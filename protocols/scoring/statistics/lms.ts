/**
 * LMS (Cole & Green 1992, Stat Med 11:1305): a skewed distribution by its power L, median M and coefficient of
 * variation S. Worked out with expm1 and log1p: the textbook form ((x/M)^L - 1)/(LS) loses its digits for L near 0.
 */
export interface Lms {
  readonly l: number
  readonly m: number
  readonly s: number
}

/** Nearer to 0 than this, L changes no digit, and its products may vanish. */
const NO_POWER = 1e-100

/** z of a value in the unit of M; null where it has none: for x of 0 or less. */
export function lmsScore(x: number, { l, m, s }: Lms): number | null {
  if (!(x > 0 && m > 0 && s > 0)) return null
  const log = Math.log(x / m)
  const z = Math.abs(l) < NO_POWER ? log / s : Math.expm1(l * log) / (l * s)
  return Number.isFinite(z) ? z : null
}

/** The value at z, in the unit of M; null where 1 + LSz is 0 or less: no value lies so far out. */
export function lmsValue(z: number, { l, m, s }: Lms): number | null {
  if (!(m > 0 && s > 0)) return null
  if (Math.abs(l) < NO_POWER) return m * Math.exp(s * z)
  if (!(1 + l * s * z > 0)) return null
  return m * Math.exp(Math.log1p(l * s * z) / l)
}
