import type { Route } from '../../app/route.ts'
import { ProfileScreen } from './index.tsx'

export default {
  path: 'client/:client/profile',
  title: 'profile.title',
  Screen: ({ params }) => <ProfileScreen client={params.client ?? ''} />,
  client: 'client',
} satisfies Route
