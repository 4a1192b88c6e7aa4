import type { Route } from '../../app/route.ts'
import { ChoosingScreen } from '../choosing/index.tsx'

export default {
  path: 'rehearsal',
  title: 'choosing.title.rehearsal',
  Screen: () => <ChoosingScreen client={null} />,
} satisfies Route
