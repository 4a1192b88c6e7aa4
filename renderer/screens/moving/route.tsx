import type { Route } from '../../app/route.ts'
import { MovingScreen } from './index.tsx'

export default {
  path: 'move/:client/:administration',
  title: 'moving.title',
  Screen: ({ params }) => (
    <MovingScreen client={params.client ?? ''} administration={params.administration ?? ''} />
  ),
  client: 'client',
} satisfies Route
