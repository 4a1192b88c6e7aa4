/** The bare template's page: one call, one button, nothing else. */
import { StrictMode, useEffect, useState } from 'react'
import { Button } from 'react-aria-components'
import { createRoot } from 'react-dom/client'
import { z } from 'zod'

z.config({ jitless: true })
const answer = z.strictObject({ count: z.int() })

async function call(name: string): Promise<z.infer<typeof answer>> {
  const reply = await fetch(`/call/${name}`, {
    method: 'POST',
    body: '{}',
    headers: { 'content-type': 'application/json' },
  })
  return answer.parse(await reply.json())
}

function Page() {
  const [count, setCount] = useState<number | null>(null)
  useEffect(() => {
    void call('read').then((read) => setCount(read.count))
    const pressed = (): void => void call('add').then((read) => setCount(read.count))
    addEventListener('keydown', pressed)
    return () => removeEventListener('keydown', pressed)
  }, [])
  return count === null ? null : <Button data-count={count}>{count}</Button>
}

const root = document.getElementById('root')
if (root)
  createRoot(root).render(
    <StrictMode>
      <Page />
    </StrictMode>,
  )
