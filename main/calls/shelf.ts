/**
 * The protocols on offer: the library's and those in the clinic's own folder. They are looked at again at every
 * asking, so that a protocol dropped into the folder is there at once; reading one anew happens only when its
 * text has changed. A faulty one is on the shelf too, with its problems.
 */
import { join } from 'node:path'
import type { Diagnostic } from '../../protocols/language/diagnostics.ts'
import type { Protocol } from '../../protocols/language/model.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { Refused } from '../contract/procedure.ts'
import { type FolderOnDisk, folderNames, MAIN_FILE, readFolder, withWords } from '../protocol-folders.ts'

type Origin = 'library' | 'clinic'
interface ProtocolKey {
  readonly from: Origin
  readonly key: string
}

export interface Shelved extends ProtocolKey {
  readonly hash: string
  readonly files: ReadonlyMap<string, string>
  /** Null where an error keeps it from being given. */
  readonly protocol: Protocol | null
  readonly problems: readonly Diagnostic[]
}

export interface Shelf {
  /** Everything on offer, the library first, each by name. */
  list(): readonly Shelved[]
  /** @throws Refused `no_such_protocol` */
  find(key: ProtocolKey): Shelved
  /** @throws Refused `no_such_protocol`, `protocol_faulty` */
  sound(key: ProtocolKey): Shelved & { readonly protocol: Protocol }
  /** The sound protocols with this id: more than one where the clinic has one of the same name. */
  named(id: string): readonly (Shelved & { readonly protocol: Protocol })[]
}

/** Where protocols lie; in `words`, a folder for each of the library's that the clinic has words of its own for. */
type Roots = Readonly<Record<Origin | 'words', string>>
type Read = Pick<Shelved, 'protocol' | 'problems'>

export function createShelf(roots: Roots): Shelf {
  const known = new Map<string, { readonly hash: string; readonly shelved: Shelved }>()

  function shelve(from: Origin, key: string): Shelved {
    const path = join(roots[from], key)
    const bare = readFolder(path, key)
    const found = from === 'library' ? withWords(bare, join(roots.words, key)) : bare
    const { hash } = found
    const before = known.get(path)
    if (before?.hash === hash) return before.shelved
    const shelved = { from, key, ...shelvedFrom(bare, found) }
    known.set(path, { hash, shelved })
    return shelved
  }

  const listed = (from: Origin) => folderNames(roots[from]).map((key) => shelve(from, key))
  const list: Shelf['list'] = () => {
    const library = listed('library')
    const taken = new Set(library.map((one) => one.protocol?.id))
    return [...library, ...listed('clinic').map((one) => withNameWarning(one, taken))]
  }
  const find: Shelf['find'] = ({ from, key }) => {
    if (!folderNames(roots[from]).includes(key)) throw new Refused('no_such_protocol', { key })
    return shelve(from, key)
  }
  return {
    list,
    find,
    sound(key) {
      const found = find(key)
      const { protocol, problems } = found
      if (!protocol) throw new Refused('protocol_faulty', { key: key.key, problems: problems.length })
      return { ...found, protocol }
    },
    named: (id) =>
      list().flatMap((one) => (one.protocol?.id === id ? [{ ...one, protocol: one.protocol }] : [])),
  }
}

/**
 * A protocol with the clinic's own words beside it. Words that can't be used keep nobody from giving the test in its
 * own; what is wrong with them is told.
 */
function shelvedFrom(bare: FolderOnDisk, found: FolderOnDisk): Omit<Shelved, keyof ProtocolKey> {
  const read = readThrough(found)
  const { hash, folder } = found
  if (read.protocol || bare.hash === hash) return { hash, files: folder.files, ...read }
  const { protocol } = readThrough(bare)
  return { hash: bare.hash, files: bare.folder.files, protocol, problems: read.problems }
}

/** Reads a folder's protocol; what the disk would not give is an error before anything that is read. */
export function readThrough({ folder, problems }: FolderOnDisk): Read {
  // Where the disk would not give the file itself, that it's missing says nothing more.
  if (problems.length > 0 && !folder.files.has(MAIN_FILE)) return { protocol: null, problems }
  const { protocol, diagnostics } = readProtocol(folder)
  return { protocol: problems.length ? null : protocol, problems: [...problems, ...diagnostics] }
}

function withNameWarning(one: Shelved, taken: ReadonlySet<string | undefined>): Shelved {
  if (!one.protocol || !taken.has(one.protocol.id)) return one
  const warning: Diagnostic = {
    code: 'id_in_library',
    severity: 'warning',
    file: `${one.key}/${MAIN_FILE}`,
    line: 1,
    column: 1,
    endLine: 1,
    endColumn: 1,
    message: `The library has a test with the id '${one.protocol.id}' too: their results stand in one history.`,
    mend: 'Give this one an id of its own unless its scores are meant to be compared with the library’s.',
  }
  return { ...one, problems: [...one.problems, warning] }
}
