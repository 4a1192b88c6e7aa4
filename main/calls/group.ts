import type { Handlers } from '../contract/dispatch.ts'
import type { Name } from '../contract/procedures.ts'
import type { Clinic } from './clinic.ts'

/** The handlers of the named calls, made for one clinic. */
export type Group<N extends Name> = (clinic: Clinic) => Pick<Handlers, N>
