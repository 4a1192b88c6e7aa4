/** What is seen once an examiner sits here: the screen of a place, with what stands around it. */
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { Page } from '../parts/page.tsx'
import { say } from '../words/index.ts'
import { go } from './route.ts'
import { type Here, routeFor } from './routes.ts'
import { SettingsProvider, useClinic } from './session.tsx'
import { TopBar } from './top-bar.tsx'
import { useWindowTitle } from './window-title.ts'

/** @param examiner id of who sits here: another examiner has other settings */
export default function Seated({ place, examiner }: { readonly place: string; readonly examiner: string }) {
  const here = routeFor(place)
  if (!here) throw new Error('There is no first screen')
  useWindowTitle(here.route.title)
  return (
    <SettingsProvider key={examiner}>
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
