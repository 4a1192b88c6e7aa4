/** Results for the tests of reports: library tests given by a made-up examiner, twice a client, through the real parts. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type ReportInput, renderReport } from '../../main/reports/index.ts'
import type { ClientFacts } from '../../protocols/client.ts'
import { simulate } from '../../protocols/rehearsal/simulate.ts'
import type { EventBody } from '../../protocols/runner/events.ts'
import { runnerFor } from '../../protocols/runner/index.ts'
import { buildResult, earlierOf } from '../../protocols/scoring/build-result.ts'
import { facts, libraryProtocol, uuid } from '../runner/giving.ts'

const ADMINISTRATION = uuid(500)

export interface Occasion {
  readonly seed: number
  readonly facts: ClientFacts
  readonly verified: ReadonlyMap<string, string>
  /** What is told right after the start, beside what a made-up examiner does. */
  readonly told: readonly EventBody[]
}

const WOMAN_OF_52 = facts({ sex: 'F', birth: { known: 'date', date: '1973-06-11' }, dominantBefore: 'right' })

function given(id: string, on: string, { seed, facts: client, told }: Omit<Occasion, 'verified'>) {
  const protocol = libraryProtocol(id)
  let ids = seed * 10_000
  const at = (ms: number) => {
    const minutes = String(Math.floor(ms / 60_000) % 60).padStart(2, '0')
    return `${on}T10:${minutes}:${String(Math.floor(ms / 1000) % 60).padStart(2, '0')}.000+01:00`
  }
  const course = simulate(protocol, {
    seed,
    facts: client,
    client: uuid(700),
    opened: {
      kind: 'opened',
      protocol: {
        id,
        version: protocol.version,
        hash: 'a'.repeat(64),
        language: 'en',
        wording: null,
        from: 'library',
      },
      program: 'test',
      rehearsal: false,
      visit: null,
      on,
      examiner: { id: uuid(900), name: 'Ada Brook' },
    },
    user: uuid(900),
    kit: [],
    conditions: {},
    nextId: () => uuid((ids += 1)),
    at,
  })
  const start = course.findIndex(({ body }) => body.kind === 'confirmed') + 1
  const inserted = told.map((body) => ({
    id: uuid((ids += 1)),
    at: course[start - 1]?.at ?? '',
    user: uuid(900),
    body,
  }))
  const log = course.toSpliced(start, 0, ...inserted)
  const runner = runnerFor(protocol)
  const { administration } = runner.replay(log)
  const view = runner.view(administration, ADMINISTRATION)
  const about = {
    id: uuid(500 + seed),
    protocol: {
      id,
      version: protocol.version,
      hash: 'a'.repeat(64),
      language: 'en',
      wording: null,
      from: 'library' as const,
    },
    on,
    startedAt: log[0]?.at ?? '',
    finishedAt: log.at(-1)?.at ?? null,
    examiner: 'Ada Brook',
    rehearsal: false,
    deviations: view.deviations,
    corrections: view.corrections,
    clock: { resolutionMs: 0.005, isolated: true },
  }
  return { protocol, view, about, standing: runner.standing(administration) }
}

const made = new Map<string, ReportInput>()

/** A test given on 2 March 2026, and before that on 12 January: made once for each occasion. */
export function reportOf(id: string, occasion: Partial<Occasion> = {}): ReportInput {
  const key = JSON.stringify([id, occasion, [...(occasion.verified ?? [])]])
  const known = made.get(key) ?? freshReportOf(id, occasion)
  made.set(key, known)
  return known
}

/** The same, given anew. */
export function freshReportOf(id: string, occasion: Partial<Occasion> = {}): ReportInput {
  const { seed = 3, facts: client = WOMAN_OF_52, verified = new Map(), told = [] } = occasion
  const before = given(id, '2026-01-12', { seed: seed + 20, facts: client, told: [] })
  const now = given(id, '2026-03-02', { seed, facts: client, told })
  const { protocol, view, about, standing } = now
  const earlier = [earlierOf(before.about, before.standing)]
  const result = buildResult({ protocol, administration: about, standing, earlier, verified })
  const first = buildResult({
    protocol,
    administration: before.about,
    standing: before.standing,
    earlier: [],
    verified,
  })
  const points = (score: string) =>
    [first, result].flatMap((one) =>
      one.scores
        .filter((value) => value.score === score)
        .map((value) => ({
          administration: one.administration,
          at: one.startedAt,
          on: one.on,
          place: Object.fromEntries(Object.entries(value.place).map(([loop, pass]) => [loop, String(pass)])),
          value: value.value,
          over: value.over,
          version: one.protocol.version,
          joins: true,
          deviations: 0,
        })),
    )
  const scores = new Map(result.scores.map((score) => [score.score, score]))
  return {
    result,
    protocol,
    view,
    person: {
      name: 'Ingrid Sørensen-Öztürk',
      number: 'K-1042',
      secondIdentifier: '11 June 1973',
      born: client.birth,
    },
    clinic: 'Harbour Hand Clinic',
    demo: false,
    seal: { code: '7K2M-04QX-9TZB-HC31', at: '2026-03-02T10:21:00.000+01:00' },
    history: [...scores.values()].map(({ score, title, unit, decimals, better }) => ({
      score,
      title,
      unit,
      decimals,
      better,
      points: points(score),
    })),
    now: '2026-03-02T11:30:00.000+01:00',
  }
}

export interface ReadBack {
  readonly text: string
  readonly pages: readonly string[]
  readonly info: string
  readonly structure: string
  readonly fonts: string
  readonly bytes: Buffer
}

/**
 * Runs one of the PDF tools; a missing one fails the test. What they mutter about attributes that are newer than
 * they are goes nowhere.
 */
const tool = (name: string, ...args: string[]) =>
  execFileSync(name, args, { encoding: 'utf8', maxBuffer: 1 << 24, stdio: ['ignore', 'pipe', 'ignore'] })

const read = new Map<ReportInput, ReadBack>()

/** A report made and read back by other programs, once for each input. */
export function readBack(input: ReportInput): ReadBack {
  const known = read.get(input) ?? readAnew(input)
  read.set(input, known)
  return known
}

/** Runs something on a file of these bytes, which is gone afterwards. */
function withFile<T>(bytes: Buffer, run: (file: string) => T): T {
  const at = mkdtempSync(join(tmpdir(), 'evenhand-report-'))
  try {
    const file = join(at, 'report.pdf')
    writeFileSync(file, bytes)
    return run(file)
  } finally {
    rmSync(at, { recursive: true, force: true })
  }
}

function readAnew(input: ReportInput): ReadBack {
  const bytes = renderReport(input)
  const told = withFile(bytes, (file) => ({
    text: tool('pdftotext', file, '-'),
    info: tool('pdfinfo', file),
    fonts: tool('pdffonts', file),
  }))
  let structure: string | null = null
  return {
    ...told,
    text: told.text.replace(/\s+/g, ' '),
    pages: told.text.split('\f').filter((page) => page.trim()),
    // Worked out when it is asked for: for many pages it takes long.
    get structure() {
      structure ??= withFile(bytes, (file) => tool('pdfinfo', '-struct-text', file))
      return structure
    },
    bytes,
  }
}
