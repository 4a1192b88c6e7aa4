import type { Route } from '../../app/route.ts'
import { ChoosingScreen } from './index.tsx'

export default {
  path: 'client/:client/choose',
  title: 'choosing.title',
  Screen: ({ params }) => <ChoosingScreen client={params.client ?? ''} />,
  client: 'client',
} satisfies Route
