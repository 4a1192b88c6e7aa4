/**
 * Reads a protocol: text to tree, tree against the shapes, tree to model, types of expressions, then the
 * checks. Each stage works on what the one before could make sense of, so that one mistake doesn't hide the
 * rest, and nothing is reported that is only a consequence of something reported already.
 */
import { Draft } from './convert/draft.ts'
import { itemWordsFrom } from './convert/item-words.ts'
import { linkExpressions } from './convert/link.ts'
import { protocolFrom } from './convert/protocol.ts'
import { scoresFrom } from './convert/scores.ts'
import { stepsFrom } from './convert/steps.ts'
import { topFrom } from './convert/top.ts'
import { readWordingFiles, wordingsOf } from './convert/wordings.ts'
import { crashed, runChecks } from './run-checks.ts'
import type { Diagnostic, Problem } from './diagnostics.ts'
import type { ProtocolFolder } from './folder.ts'
import type { Protocol } from './model.ts'
import { diagnosticsOf } from './positions.ts'
import { suspectCharacters } from './reader/characters.ts'
import { MOST_CHARACTERS, MOST_FIGURE_CHARACTERS } from './reader/limits.ts'
import { readerProblem } from './reader/problems.ts'
import { readYaml } from './reader/yaml.ts'
import { protocolShape } from './schema/check.ts'

const PROTOCOL_FILE = 'protocol.yaml'

export interface ReadProtocol {
  /** Null when any diagnostic is an error. */
  readonly protocol: Protocol | null
  /** By file (`protocol.yaml` first) and place. */
  readonly diagnostics: readonly Diagnostic[]
}

/** Reads and checks a protocol's folder. Whatever is wrong comes back as diagnostics; nothing is thrown. */
export function readProtocol(folder: ProtocolFolder): ReadProtocol {
  const { draft, problems } = readSafely(folder)
  const protocol =
    draft && !problems.some(({ severity }) => severity === 'error') ? protocolFrom(draft) : null
  return { protocol, diagnostics: diagnosticsOf(folder.files, folder.label, problems) }
}

interface Reading {
  readonly draft: Draft | null
  readonly problems: readonly Problem[]
}

/** A clinic's file must not be able to stop the program, also not by a fault of ours. */
function readSafely(folder: ProtocolFolder): Reading {
  try {
    return read(folder)
  } catch (error) {
    const at = { file: PROTOCOL_FILE, start: 0, end: 0 }
    return { draft: null, problems: [crashed('Reading', error, at)] }
  }
}

function read(folder: ProtocolFolder): Reading {
  const text = folder.files.get(PROTOCOL_FILE)
  if (text === undefined) {
    return {
      draft: null,
      problems: [readerProblem('protocol_missing', { file: PROTOCOL_FILE, start: 0, end: 0 })],
    }
  }
  const reading = readYaml(PROTOCOL_FILE, text)
  if (reading.tree?.is !== 'map') return { draft: null, problems: reading.problems }
  const shape = protocolShape(reading.tree)
  const draft = new Draft(folder, reading.tree, [...reading.problems, ...shape])
  if (shape.some(({ code }) => code === 'language_version')) return { draft: null, problems: draft.problems }
  topFrom(draft)
  draft.steps = stepsFrom(draft)
  scoresFrom(draft)
  itemWordsFrom(draft)
  const wordings = readWordingFiles(draft)
  draft.wordings = wordingsOf(draft, wordings.files)
  draft.problems.push(...linkExpressions(draft))
  draft.problems.push(...wordings.problems, ...besidesProblems(folder))
  return { draft, problems: [...draft.problems, ...runChecks(draft, wordings.files)] }
}

/** Tables and figures: too large to be read, or with characters that hide what they say. */
function besidesProblems({ files }: ProtocolFolder): readonly Problem[] {
  return [...files].flatMap(([file, text]) => {
    if (!/^(?:norms|figures)\//.test(file)) return []
    const most = file.startsWith('norms/') ? MOST_CHARACTERS : MOST_FIGURE_CHARACTERS
    if (text.length > most) {
      return [readerProblem('file_too_large', { file, start: 0, end: 0 }, text.length, most)]
    }
    // CSV and SVG say themselves how their lines end and which mark may come first.
    return [...suspectCharacters(file, text)].filter(({ severity }) => severity !== 'advice')
  })
}
