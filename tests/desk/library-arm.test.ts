import { givenWhole } from './given-whole.ts'

givenWhole(['functional_dexterity', 'action_research_arm', 'fugl_meyer_upper', 'finger_tapping'])
