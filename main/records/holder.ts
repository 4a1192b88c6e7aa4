/**
 * Who holds the records. The hold itself is SQLite's own exclusive lock on the file, which the operating system
 * lets go of when a process ends however it ends: nothing stale can stay behind. This small file only tells a
 * second instance whom it has met.
 */
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { hostname, userInfo } from 'node:os'
import { join } from 'node:path'
import { z } from 'zod'
import { Refused } from '../contract/procedure.ts'
import { writeWhole } from './whole-file.ts'

const holder = z.strictObject({ pid: z.int(), host: z.string(), user: z.string(), since: z.string() })

const pathIn = (folder: string) => join(folder, 'in-use.json')

const loginName = () => {
  try {
    return userInfo().username
  } catch {
    return ''
  }
}

/** Whether whoever held the records before never came to let go of them. Asked while nobody else can hold them. */
export const wasHeld = (folder: string): boolean => existsSync(pathIn(folder))

export function writeHolder(folder: string, since: string): void {
  const mine: z.infer<typeof holder> = { pid: process.pid, host: hostname(), user: loginName(), since }
  writeWhole(pathIn(folder), `${JSON.stringify(mine)}\n`)
}

export function removeHolder(folder: string): void {
  rmSync(pathIn(folder), { force: true })
}

/** The fault that a second instance reports: who has the records open, since when, in which process. */
export function heldFault(folder: string): Refused {
  try {
    return new Refused('records.in-use', {
      folder,
      ...holder.parse(JSON.parse(readFileSync(pathIn(folder), 'utf8'))),
    })
  } catch {
    return new Refused('records.in-use', { folder, pid: 0, host: '', user: '', since: '' })
  }
}
