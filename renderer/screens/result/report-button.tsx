import { useRef } from 'react'
import type { Input } from '../../../main/contract/procedures.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useDoing, useHost } from '../../app/host.tsx'
import { Button } from '../../parts/button.tsx'
import { say } from '../../words/index.ts'

function save(fileName: string, base64: string): void {
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
  const address = URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' }))
  const link = document.createElement('a')
  link.href = address
  link.download = fileName
  link.click()
  URL.revokeObjectURL(address)
}

/** The written report as a PDF, made by the host and kept wherever the examiner's downloads go. */
export function ReportButton({ store, id }: { store: Input<'administrations.report'>['store']; id: string }) {
  const { call } = useHost()
  const making = useDoing()
  const stopping = useRef<AbortController | null>(null)
  const make = (): Promise<boolean> => {
    const stop = new AbortController()
    stopping.current = stop
    return making.run(async () => {
      const made = await call('administrations.report', { store, id }, { signal: stop.signal })
      save(made.fileName, made.pdfBase64)
    })
  }
  return (
    <>
      <Button isDisabled={making.isBusy} onPress={() => void make()}>
        {say('result.report_make')}
      </Button>
      {making.isBusy ? (
        <Button look="quiet" onPress={() => stopping.current?.abort()}>
          {say('result.report_stop')}
        </Button>
      ) : null}
      <output className="soft">{making.isBusy ? say('result.report_making') : ''}</output>
      {making.fault?.code === 'stopped' ? null : <FaultNotice fault={making.fault} />}
    </>
  )
}
