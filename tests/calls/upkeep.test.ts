import { rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test, vi } from 'vitest'
import { backupFolder } from '../../main/calls/upkeep.ts'
import { backupsIn } from '../../main/records/index.ts'
import { addClient, openDesk } from './desk.ts'

const noticesOf = async (desk: Awaited<ReturnType<typeof openDesk>>) =>
  (await desk.client.call('clinic.state', {})).notice

test('a visit that is closed is backed up; a folder that takes none is said, and said no more once it does', async () => {
  const desk = await openDesk()
  const into = backupFolder(desk.clinic.folder)
  const client = await addClient(desk, 'Ada Marsh')
  const giveVisit = async () => {
    const visit = await desk.client.call('visits.open', { client })
    await desk.client.call('visits.close', { visit: visit.id })
  }
  rmSync(into, { recursive: true, force: true })
  writeFileSync(into, 'a file where the folder should be')
  await giveVisit()
  await vi.waitFor(async () => expect(await noticesOf(desk)).toContain('backup_failed'), 10_000)
  rmSync(into)
  await giveVisit()
  await vi.waitFor(async () => expect(backupsIn(into)).toHaveLength(1), 10_000)
  await vi.waitFor(async () => expect(await noticesOf(desk)).not.toContain('backup_failed'), 10_000)
  desk.clinic.close()
  rmSync(join(into), { recursive: true, force: true })
})
