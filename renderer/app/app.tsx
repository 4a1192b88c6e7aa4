import { lazy, Suspense, useEffect } from 'react'
import { Notice } from '../parts/notice.tsx'
import { Waiting } from '../parts/waiting.tsx'
import { ExaminerScreen } from '../screens/examiner/index.tsx'
import { say } from '../words/index.ts'
import { Boundary } from './boundary.tsx'
import { useHost } from './host.tsx'
import { usePlace } from './route.ts'
import { SessionProvider, useClinic } from './session.tsx'
import { useWindowTitle } from './window-title.ts'
import './app.css'

const seated = () => import('./seated.tsx')
const Seated = lazy(seated)

export function App() {
  const place = usePlace()
  return (
    <Boundary place={place}>
      <ConnectionStrip />
      <SessionProvider>
        <DemoStrip />
        <Screen place={place} />
      </SessionProvider>
    </Boundary>
  )
}

/** Seen while nobody answers: what is wrong, what is safe, what happens next. */
function ConnectionStrip() {
  const { isGone } = useHost()
  if (!isGone) return null
  return (
    <aside className="app-strip" aria-label={say('app.gone.label')}>
      <Notice tone="fault" isLive title={say('app.gone.said')}>
        <p>{say('app.gone.mend')}</p>
      </Notice>
    </aside>
  )
}

function DemoStrip() {
  const { demo } = useClinic()
  if (!demo) return null
  return (
    <aside className="app-demo" aria-label={say('app.demo.label')}>
      {say('app.demo')}
    </aside>
  )
}

/** Who sits here is asked first; all other screens are fetched while that is read. */
function Screen({ place }: { readonly place: string }) {
  const { user } = useClinic()
  if (!user) return <Unseated />
  return (
    <Suspense fallback={<Waiting />}>
      <Seated place={place} examiner={user.id} />
    </Suspense>
  )
}

function Unseated() {
  useWindowTitle('examiner.title')
  useEffect(() => {
    // Where they can't be had now, going there asks again and says what is wrong.
    const idle = requestIdleCallback(() => seated().catch(() => undefined))
    return () => cancelIdleCallback(idle)
  }, [])
  return <ExaminerScreen />
}
