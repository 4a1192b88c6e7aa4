/**
 * A protocol on its way from tree to model: pieces that could be made, where each was written, and what has to
 * be looked at together once all pieces are there (expressions, texts, units). Checks read this.
 */
import type { Problem, Range } from '../diagnostics.ts'
import type { Expression, ValueType } from '../expressions/types.ts'
import type { ProtocolFolder } from '../folder.ts'
import type {
  About,
  ChangeFigure,
  Condition,
  Draw,
  Happening,
  Item,
  KitItem,
  Node,
  Norm,
  Precaution,
  Raters,
  Score,
  Section,
  Source,
  Text,
  Wording,
} from '../model.ts'
import type { Choosers } from '../norms/columns.ts'
import { type NormTable, readNormTable } from '../norms/table.ts'
import { childOf, type MapNode, nodeAt, type Path, type ScalarNode, type Tree } from '../reader/tree.ts'

/** Words by their key, with where they stand and the sections around them. */
export interface PlacedText {
  readonly key: string
  readonly words: string
  readonly at: Range
  readonly node: ScalarNode | null
  readonly around: readonly Section[]
}

/** What the value of an expression must be where it stands. */
export type Wanted =
  | { readonly is: 'bool' | 'text' | 'any' }
  | { readonly is: 'list'; readonly of: ValueType }
  /** `unit` null: a bare number; a unit: a value that converts to it; undefined: any unit. */
  | { readonly is: 'number'; readonly unit?: string | null }

/** An expression in the file; `hole` is the model's object, filled once types are known. */
export interface PlacedExpression {
  readonly hole: { -readonly [Key in keyof Expression]: Expression[Key] }
  readonly node: ScalarNode
  readonly around: readonly Section[]
  /** Loops that a score is worked out for, in place of the sections around. */
  readonly each: readonly string[]
  readonly wanted: Wanted
  /** The key under which it stands, such as `when`. */
  readonly key: string
  /** The step, section, rule, score or change figure that it belongs to. */
  readonly owner: Tree
}

/** A unit in the file, of a quantity or by itself. */
export interface PlacedUnit {
  readonly unit: string
  readonly at: Range
}

export class Draft {
  readonly folder: ProtocolFolder
  readonly tree: MapNode
  readonly problems: Problem[]
  readonly places = new Map<object, Tree>()
  readonly texts = new Map<string, PlacedText>()
  readonly expressions: PlacedExpression[] = []
  readonly units: PlacedUnit[] = []

  about: About | null = null
  precautions: readonly Precaution[] = []
  sources: readonly Source[] = []
  kit: readonly KitItem[] = []
  conditions: readonly Condition[] = []
  lists: Readonly<Record<string, readonly Item[]>> = {}
  draws: Readonly<Record<string, Draw>> = {}
  raters: Raters | null = null
  happenings: readonly Happening[] = []
  accommodations: readonly { readonly id: string; readonly text: Text }[] = []
  cautions: readonly Text[] = []
  steps: readonly Node[] = []
  scores: readonly Score[] = []
  norms: readonly Norm[] = []
  change: readonly ChangeFigure[] = []
  wordings: readonly Wording[] = []
  /** Names that a column of a norm table may have to choose the row. */
  choosers: Choosers = new Map()
  readonly normTables = new Map<string, NormTable>()

  constructor(folder: ProtocolFolder, tree: MapNode, problems: readonly Problem[]) {
    this.folder = folder
    this.tree = tree
    this.problems = [...problems]
  }

  /** Remembers where a piece of the model was written. */
  place<Piece extends object>(piece: Piece, tree: Tree): Piece {
    this.places.set(piece, tree)
    return piece
  }

  /** Range of the value at `path` inside a placed piece; the piece itself where there is none. */
  at(piece: object, ...path: Path): Range {
    const tree = this.places.get(piece) ?? this.tree
    const node = nodeAt(tree, path)
    if (node) return node.at
    return this.headAt(piece)
  }

  /** Range of a piece's first key, or of the piece: where to point for what is missing in it. */
  headAt(piece: object): Range {
    const tree = this.places.get(piece) ?? this.tree
    return tree.is === 'map' ? (tree.entries[0]?.keyAt ?? tree.at) : tree.at
  }

  /** Range of a piece's name: the value of its first key. */
  nameAt(piece: object): Range {
    const tree = this.places.get(piece)
    const first = tree?.is === 'map' ? tree.entries[0] : undefined
    return first ? first.value.at : this.headAt(piece)
  }

  /** The node at `path` inside a placed piece. */
  node(piece: object, ...path: Path): Tree | null {
    const tree = this.places.get(piece)
    return tree ? nodeAt(tree, path) : null
  }

  /** The table of a norm, read once for each way in which norms use it. */
  normTable({ file, as }: Pick<Norm, 'file' | 'as'>): NormTable {
    const key = `${as} ${file}`
    const form = { kind: as, choosers: this.choosers }
    const known = this.normTables.get(key) ?? readNormTable(file, this.folder.files.get(file), form)
    this.normTables.set(key, known)
    return known
  }

  /** Whether an error was reported inside `tree`; what lies inside one of `except` doesn't count. */
  isBroken(tree: Tree, except: readonly Tree[] = []): boolean {
    return this.problems.some(
      ({ at, severity }) =>
        severity === 'error' && inside(tree.at, at) && !except.some((each) => inside(each.at, at)),
    )
  }

  /** Whether an error was reported anywhere under one of these top-level keys. */
  isBrokenIn(...keys: readonly string[]): boolean {
    return keys.some((key) => {
      const tree = childOf(this.tree, key)
      return tree !== null && this.isBroken(tree)
    })
  }
}

function inside({ file, start, end }: Range, at: Range): boolean {
  return at.file === file && at.start >= start && at.start <= end
}
