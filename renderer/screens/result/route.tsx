import { go, type Params, type Route } from '../../app/route.ts'
import { useClinic } from '../../app/session.tsx'
import ResultScreen from './index.tsx'

/** The way out of a result leads back to where it was opened: the visit, the tests to rehearse, the first screen. */
function ResultRoute({ params }: { readonly params: Params }) {
  const { visit } = useClinic()
  const store = params.store === 'rehearsal' ? 'rehearsal' : 'records'
  const leave = () => {
    if (store === 'rehearsal') go('rehearsal')
    else go(visit ? `client/${visit.client}` : '')
  }
  return <ResultScreen store={store} id={params.id ?? ''} onLeave={leave} />
}

export default { path: 'result/:store/:id', title: 'app.window.result', Screen: ResultRoute } satisfies Route
