/** Result and PDF of an administration beside a bare compile of the same page from data that lies ready. */
import { rmSync } from 'node:fs'
import { dirname } from 'node:path'
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler'
import { test } from 'vitest'
import { historyOf } from '../../main/calls/history-of.ts'
import { inSight } from '../../main/calls/in-sight.ts'
import { resultOf } from '../../main/calls/result-of.ts'
import { pageOf } from '../../main/reports/content.ts'
import template from '../../main/reports/report.typ?raw'
import { addClient, type Desk, give, newFolder, openDesk, PEGS } from '../calls/desk.ts'
import { figure, turnAbout } from './measure.ts'

/** The data of the page, as the report's own template takes them. */
function pageData({ clinic }: Desk, id: string): string {
  const row = inSight(clinic, 'records', id)
  const { kept, administration } = clinic.live.read('records', id)
  const page = pageOf({
    result: resultOf(clinic, 'records', row),
    protocol: kept.protocol,
    view: kept.runner.view(administration, id),
    person: { name: 'Orla Fenwick', number: '', secondIdentifier: '', born: { known: 'no' } },
    clinic: '',
    demo: false,
    history: historyOf(clinic.stores.records, row.client ?? '', row.protocol),
    seal: clinic.stores.records.read.sealOf(id),
    now: clinic.stores.records.now(),
  })
  return JSON.stringify({ ...page, unprintable: false })
}

test('result and PDF', async () => {
  const folder = newFolder()
  const desk = await openDesk({ folder })
  const { id } = await give(desk, PEGS, await addClient(desk, 'Orla Fenwick'))
  const data = pageData(desk, id)
  const compiler = NodeCompiler.create({ workspace: import.meta.dirname })
  const bare = (): number => {
    const began = performance.now()
    const compiled = compiler.compile({ mainFileContent: template, inputs: { data }, resetRead: true })
    if (!compiled.result) throw new Error('the bare page does not compile')
    compiler.pdf(compiled.result, { pdfStandard: 'ua-1', creationTimestamp: 0 })
    compiler.evictCache(0)
    return performance.now() - began
  }
  const report = async (): Promise<number> => {
    const began = performance.now()
    await desk.client.call('administrations.report', { store: 'records', id })
    return performance.now() - began
  }
  const { ours, baseline } = await turnAbout(41, report, bare)
  desk.clinic.close()
  rmSync(dirname(folder), { recursive: true, force: true })
  figure('result and PDF / bare compile of the same page', ours / baseline, { most: 1.5 })
})
