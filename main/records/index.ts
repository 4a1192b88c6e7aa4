/** The door to a clinic's records: everything the rest of the program may use of this folder. */
export type { Projected, ProjectedScore, Projector } from './administration.ts'
export type { Stamped, Stream } from './entry.ts'
export { event as clientAdded } from './events/client-added.v1.ts'
export { event as clientChanged } from './events/client-changed.v1.ts'
export { event as kitRegistered } from './events/kit-registered.v1.ts'
export { event as normVerified } from './events/norm-verified.v1.ts'
export { event as protocolKept } from './events/protocol-kept.v1.ts'
export { event as settingsChanged } from './events/settings-changed.v1.ts'
export { event as userAdded } from './events/user-added.v1.ts'
export { event as visitClosed } from './events/visit-closed.v1.ts'
export { event as visitOpened } from './events/visit-opened.v1.ts'
export { openRecords, type OpenOptions, type Records } from './open.ts'
export { protocolHash, textHash } from './protocol-hash.ts'
export type {
  AdministrationRow,
  ClientRow,
  ScoreRow,
  VisitRow,
} from './rows.ts'
export { backupsIn } from './backup.ts'
export { restore } from './restore.ts'
export { salvage, type SalvageReport } from './salvage.ts'
export { readSealCode } from './seal.ts'
export type { StoreKind } from './stores.ts'
export { CLINIC } from './streams.ts'
export type { VerifyReport } from './verify.ts'
export { localTime, systemClock, type WallClock } from './wall-clock.ts'
