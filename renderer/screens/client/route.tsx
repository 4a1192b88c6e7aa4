import type { Route } from '../../app/route.ts'
import { ClientScreen } from './index.tsx'

export default {
  path: 'client/:client',
  title: 'client.title',
  Screen: ({ params }) => <ClientScreen client={params.client ?? ''} />,
  client: 'client',
} satisfies Route
