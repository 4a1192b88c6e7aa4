import { givenWhole } from './given-whole.ts'

givenWhole(['touch_threshold', 'two_point_discrimination', 'range_of_motion', 'stereognosis'])
