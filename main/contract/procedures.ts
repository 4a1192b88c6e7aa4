/** Every call between a screen and its host. Adding one here makes both hosts fail to compile until it's there. */
import './jitless.ts'
import { z } from 'zod'
import { eventBody, kitPiece, visitConditions } from '../../protocols/runner/events.ts'
import { administrationView, refusal } from '../../protocols/runner/view.ts'
import { result } from '../../protocols/scoring/result.ts'
import { procedure } from './procedure.ts'
import {
  administrationLine,
  client,
  clientLine,
  historyPoint,
  id,
  normTable,
  profile,
  protocolCard,
  protocolLine,
  seal,
  settings,
  user,
  visit,
} from './shapes.ts'

const nothing = z.strictObject({})
/** A protocol as the screen names it: by where it lies and the name of its folder. */
const protocolKey = z.strictObject({ from: z.enum(['library', 'clinic']), key: z.string().min(1).max(100) })
/** Which store an administration is in: rehearsals never mix with records. */
const store = z.enum(['records', 'rehearsal'])

const acted = z.discriminatedUnion('taken', [
  z.strictObject({ taken: z.literal(true), view: administrationView, saved: z.boolean() }),
  z.strictObject({ taken: z.literal(false), refusal, view: administrationView, saved: z.boolean() }),
])

export const procedures = {
  /** Tells of the visit, and so of its client, only once somebody is at the desk. */
  'clinic.state': procedure({
    needs: 'nobody',
    showsClient: true,
    input: nothing,
    output: z.strictObject({
      program: z.strictObject({ name: z.string(), version: z.string() }),
      demo: z.boolean(),
      recordsFolder: z.string(),
      clinicProtocolsFolder: z.string(),
      users: z.array(user),
      user: user.nullable(),
      visit: visit.nullable(),
      today: z.string(),
      notice: z.array(z.string()),
    }),
  }),
  'users.add': procedure({
    needs: 'nobody',
    showsClient: false,
    input: z.strictObject({ name: z.string().trim().min(1).max(200) }),
    output: user,
  }),
  'users.choose': procedure({
    needs: 'nobody',
    showsClient: false,
    input: z.strictObject({ id }),
    output: user,
  }),
  'settings.read': procedure({ needs: 'user', showsClient: false, input: nothing, output: settings }),
  'settings.change': procedure({ needs: 'user', showsClient: false, input: settings, output: settings }),
  'desk.waiting': procedure({
    needs: 'user',
    showsClient: true,
    input: nothing,
    output: z.array(administrationLine),
  }),
  'clients.search': procedure({
    needs: 'user',
    showsClient: true,
    input: z.strictObject({ text: z.string().max(200) }),
    output: z.strictObject({ enough: z.boolean(), found: z.array(clientLine), more: z.boolean() }),
  }),
  'clients.add': procedure({
    needs: 'user',
    showsClient: true,
    input: z.strictObject({ profile }),
    output: client,
  }),
  'clients.read': procedure({
    needs: 'user',
    showsClient: true,
    input: z.strictObject({ id }),
    output: z.strictObject({ client, administrations: z.array(administrationLine) }),
  }),
  'clients.change': procedure({
    needs: 'user',
    showsClient: true,
    input: z.strictObject({ id, profile, reason: z.string().max(500) }),
    output: client,
  }),
  'visits.open': procedure({
    needs: 'user',
    showsClient: true,
    input: z.strictObject({ client: id }),
    output: visit,
  }),
  'visits.close': procedure({
    needs: 'user',
    showsClient: false,
    input: z.strictObject({ visit: id }),
    output: nothing,
  }),
  'protocols.list': procedure({
    needs: 'user',
    showsClient: false,
    input: nothing,
    output: z.array(protocolLine),
  }),
  'protocols.read': procedure({
    needs: 'user',
    showsClient: false,
    input: protocolKey,
    output: protocolCard,
  }),
  'kit.list': procedure({
    needs: 'user',
    showsClient: false,
    input: z.strictObject({ protocol: z.string() }),
    output: z.array(kitPiece),
  }),
  /** Registers a piece, or, with the id of one that is registered, says how it stands now. */
  'kit.register': procedure({
    needs: 'user',
    showsClient: false,
    input: z.strictObject({ protocol: z.string(), piece: kitPiece.partial({ id: true }) }),
    output: kitPiece,
  }),
  /** What the start screen proposes from this client's last administration of the test. */
  'administrations.proposal': procedure({
    needs: 'user',
    showsClient: true,
    input: z.strictObject({ protocol: protocolKey, client: id.nullable() }),
    output: z.strictObject({
      conditions: z.record(z.string(), z.string()),
      kit: z.array(kitPiece),
      visit: visitConditions.nullable(),
      lastGivenOn: z.string().nullable(),
    }),
  }),
  'administrations.open': procedure({
    needs: 'user',
    showsClient: true,
    input: z.strictObject({
      store,
      protocol: protocolKey,
      client: id.nullable(),
      wording: z.string().nullable(),
    }),
    output: administrationView,
  }),
  'administrations.view': procedure({
    needs: 'user',
    showsClient: true,
    input: z.strictObject({ store, id }),
    output: z.strictObject({ view: administrationView, saved: z.boolean() }),
  }),
  /** An examiner's act. It is on disk before the reply, unless `saved` is false. */
  'administrations.act': procedure({
    needs: 'user',
    showsClient: true,
    input: z.strictObject({ store, id, body: eventBody }),
    output: acted,
  }),
  'administrations.result': procedure({
    needs: 'user',
    showsClient: true,
    input: z.strictObject({ store, id }),
    output: z.strictObject({
      result,
      shortText: z.string(),
      noteTaken: z.boolean(),
      seal: seal.nullable(),
    }),
  }),
  'administrations.report': procedure({
    needs: 'user',
    showsClient: true,
    long: true,
    input: z.strictObject({ store, id }),
    output: z.strictObject({ fileName: z.string(), pdfBase64: z.string() }),
  }),
  /** The text for the record, as the examiner left it; `taken` once it was copied or marked so. */
  'administrations.note': procedure({
    needs: 'user',
    showsClient: true,
    input: z.strictObject({ store, id, text: z.string().max(5000) }),
    output: z.strictObject({ noteTaken: z.boolean() }),
  }),
  /** Moves an administration to the client it was really given to; the first keeps it as entered in error. */
  'administrations.move': procedure({
    needs: 'user',
    showsClient: true,
    input: z.strictObject({ id, client: id, reason: z.string().trim().min(1).max(1000) }),
    output: administrationView,
  }),
  'history.read': procedure({
    needs: 'user',
    showsClient: true,
    input: z.strictObject({ client: id, protocol: z.string() }),
    output: z.array(
      z.strictObject({
        score: z.string(),
        title: z.string(),
        unit: z.string(),
        decimals: z.int(),
        better: z.enum(['higher', 'lower', 'none']),
        points: z.array(historyPoint),
      }),
    ),
  }),
  'norms.read': procedure({
    needs: 'user',
    showsClient: false,
    input: protocolKey,
    output: z.array(normTable),
  }),
  /** Marks a norm table as verified against its source by a named person, or takes the mark back. */
  'norms.verify': procedure({
    needs: 'user',
    showsClient: false,
    input: z.strictObject({ protocol: protocolKey, norm: z.string(), verified: z.boolean() }),
    output: nothing,
  }),
  /** Stops a long call that is still running. */
  'calls.stop': procedure({
    needs: 'user',
    showsClient: false,
    input: z.strictObject({ call: id }),
    output: nothing,
  }),
} as const

export type Procedures = typeof procedures
export type Name = keyof Procedures
export type Input<N extends Name> = z.infer<Procedures[N]['input']>
export type Output<N extends Name> = z.infer<Procedures[N]['output']>
