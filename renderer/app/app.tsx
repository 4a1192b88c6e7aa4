import { useEffect } from 'react'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { Page } from '../parts/page.tsx'
import { ExaminerScreen } from '../screens/examiner/index.tsx'
import { say } from '../words/index.ts'
import { Boundary } from './boundary.tsx'
import { useHost } from './host.tsx'
import { go, type Here, routeFor, usePlace } from './route.ts'
import { SessionProvider, SettingsProvider, useClinic } from './session.tsx'
import { TopBar } from './top-bar.tsx'
import './app.css'

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

function Screen({ place }: { readonly place: string }) {
  const { user, program } = useClinic()
  const here = routeFor(place)
  const title = user ? here?.route.title : 'examiner.title'
  useEffect(() => {
    if (title) document.title = say('app.window', { screen: say(title), program: program.name })
  }, [title, program.name])
  if (!user) return <ExaminerScreen />
  if (!here) throw new Error('There is no first screen')
  return (
    <SettingsProvider key={user.id}>
      {here.route.isBare ? null : <TopBar />}
      <Guarded key={here.place} here={here} />
    </SettingsProvider>
  )
}

/** While a visit is open, nobody else's record comes on screen, whatever the address says. */
function Guarded({ here }: { readonly here: Here }) {
  const { visit } = useClinic()
  const asked = here.route.client === undefined ? null : here.params[here.route.client]
  if (visit && asked && asked !== visit.client) {
    return (
      <Page title={say('app.other.title')}>
        <Notice tone="caution" title={say('app.other.said')}>
          <p>{say('app.other.mend')}</p>
        </Notice>
        <div className="row">
          <Button look="strong" onPress={() => go(`client/${visit.client}`)}>
            {say('app.other.back')}
          </Button>
        </div>
      </Page>
    )
  }
  const { Screen: Found } = here.route
  return <Found params={here.params} />
}
