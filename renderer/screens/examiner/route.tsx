import type { Route } from '../../app/route.ts'
import { ExaminerScreen } from './index.tsx'

export default { path: 'examiner', Screen: ExaminerScreen } satisfies Route
