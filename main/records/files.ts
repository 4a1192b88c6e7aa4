/** The files of a folder of records: setting them aside and putting others in their place. */
import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'

export const DATABASE = 'records.db'
/** What SQLite keeps beside its file while it is open, or was when it was cut short. */
const BESIDE = [`${DATABASE}-wal`, `${DATABASE}-shm`]
const ALL = [DATABASE, ...BESIDE, 'keys.json', 'sealed.json', 'damage-found.json']

/** A moment as part of a file name: `2026-03-02T10-21-07`. */
export const momentName = (at: string): string => at.slice(0, 19).replaceAll(':', '-')

/** A path that is free: the given one, or with a number behind it. */
export function freePath(path: string): string {
  for (let number = 1; ; number += 1) {
    const tried = number === 1 ? path : `${path}-${number}`
    if (!existsSync(tried)) return tried
  }
}

/** Copies the files of records into a folder of their own beside them; they stay where they are. @returns that folder */
export function setAside(folder: string, at: string): string {
  const aside = freePath(join(folder, `set-aside-${momentName(at)}`))
  mkdirSync(aside)
  for (const name of ALL) {
    if (existsSync(join(folder, name))) copyFileSync(join(folder, name), join(aside, name))
  }
  return aside
}

/** Puts a whole, closed database file in the place of the one that was set aside. */
export function swapIn(folder: string, whole: string): void {
  for (const name of BESIDE) rmSync(join(folder, name), { force: true })
  renameSync(whole, join(folder, DATABASE))
  for (const name of ['sealed.json', 'damage-found.json', 'in-use.json'])
    rmSync(join(folder, name), { force: true })
}

/** Removes what an attempt that was cut short has left of a database file. */
export function removeDatabase(path: string): void {
  for (const end of ['', '-wal', '-shm']) rmSync(`${path}${end}`, { force: true })
}
