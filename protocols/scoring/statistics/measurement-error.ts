/** The error of a measurement as published reliability gives it: SEM and detectable change. */
import { normalQuantile } from './normal.ts'
import { because, type Undefined } from './undefined.ts'

/**
 * Standard error of measurement of one value, SD sqrt(1 - r), in the unit of the SD (de Vet et al. 2006, J Clin
 * Epidemiol 59:1033). Undefined for a reliability outside 0 to 1 or a negative SD.
 */
export function standardErrorOfMeasurement(sd: number, reliability: number): number | Undefined {
  if (!Number.isFinite(sd) || !Number.isFinite(reliability)) return because('not_finite')
  if (sd < 0 || reliability < 0 || reliability > 1) return because('out_of_range')
  return sd * Math.sqrt(1 - reliability)
}

/**
 * The smallest difference between two values of one person that measuring error alone exceeds only in a share
 * 1 - `confidence` of pairs, z sqrt(2) SEM: MDC90 with .9, MDC95 with .95. Undefined for a negative SEM or a
 * confidence that isn't between 0 and 1.
 */
export function detectableChange(sem: number, confidence: number): number | Undefined {
  if (!Number.isFinite(sem)) return because('not_finite')
  const z = normalQuantile((1 + confidence) / 2)
  return sem < 0 || z === null || z <= 0 ? because('out_of_range') : z * Math.SQRT2 * sem
}
