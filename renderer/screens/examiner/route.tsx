import type { Route } from '../../app/route.ts'
import { ExaminerScreen } from './index.tsx'

export default { path: 'examiner', title: 'examiner.title', Screen: ExaminerScreen } satisfies Route
