/** The protocol's own words, and the files in `words/` that give them in another language. */
import type { Problem } from '../diagnostics.ts'
import type { Wording } from '../model.ts'
import { childOf, plain, type MapNode } from '../reader/tree.ts'
import { readYaml } from '../reader/yaml.ts'
import { shapeProblems } from '../schema/issues.ts'
import { wordingFile } from '../schema/top.ts'
import type { Draft } from './draft.ts'
import { writtenOf } from './values.ts'

const WORDS_FILE = /^words\/([A-Za-z0-9_-]+)\.ya?ml$/

/** A wording file as it was read; `tree` is null where it couldn't be. */
export interface WordingFile {
  readonly file: string
  readonly name: string
  readonly tree: MapNode | null
}

/** Reads all wording files; whatever is wrong with them as files is a problem. */
export function readWordingFiles(draft: Draft): {
  readonly files: readonly WordingFile[]
  readonly problems: readonly Problem[]
} {
  const files: WordingFile[] = []
  const problems: Problem[] = []
  for (const [file, text] of draft.folder.files) {
    const name = WORDS_FILE.exec(file)?.[1]
    if (name === undefined) continue
    const reading = readYaml(file, text)
    problems.push(...reading.problems)
    const tree = reading.tree?.is === 'map' ? reading.tree : null
    const shape = tree ? shapeProblems(wordingFile, tree, plain(tree)) : []
    problems.push(...shape)
    files.push({ file, name, tree: shape.length === 0 ? tree : null })
  }
  return { files, problems }
}

/** The protocol's own words first, then each wording file's. */
export function wordingsOf(draft: Draft, files: readonly WordingFile[]): readonly Wording[] {
  const language = writtenOf(childOf(draft.tree, 'language')) ?? ''
  const own = Object.fromEntries([...draft.texts.values()].map(({ key, words }) => [key, words]))
  const others = files.flatMap(({ name, tree }): readonly Wording[] => {
    const texts = childOf(tree, 'texts')
    if (texts?.is !== 'map') return []
    const words = texts.entries.map(({ key, value }) => [key, (writtenOf(value) ?? '').trim()] as const)
    return [
      { file: name, language: writtenOf(childOf(tree, 'language')) ?? '', texts: Object.fromEntries(words) },
    ]
  })
  return [{ file: null, language, texts: own }, ...others]
}
