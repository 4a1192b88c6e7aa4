import { Refused } from '../../contract/procedure.ts'
import { CLINIC, settingsChanged, userAdded } from '../../records/index.ts'
import type { Group } from '../group.ts'

/** What somebody works with who has changed nothing yet. */
const USUAL = { mainKey: 'Space', pedalKey: null, bounceMs: 150, sound: true, showClock: true }

const plain = (name: string) => name.normalize('NFC').trim().replace(/\s+/g, ' ').toLocaleLowerCase('en')

export const userCalls: Group<'users.add' | 'users.choose' | 'settings.read' | 'settings.change'> = ({
  stores: { records },
  push,
}) => ({
  'users.add'({ name }, { session }) {
    if (records.read.users().some((user) => plain(user.name) === plain(name)))
      throw new Refused('user_exists', { name })
    const added = { id: records.newId(), name }
    records.append(CLINIC, [userAdded.make({ user: added.id, name })], session.user?.id ?? added.id)
    push({ push: 'clinic' })
    return added
  },
  'users.choose'({ id }, { session }) {
    const user = records.read.user(id)
    if (!user) throw new Refused('no_such_user')
    session.user = { id: user.id, name: user.name }
    return session.user
  },
  'settings.read': (_, { user }) => records.read.settings(user.id) ?? USUAL,
  'settings.change'(settings, { user }) {
    records.append(CLINIC, [settingsChanged.make({ settings })], user.id)
    return settings
  },
})
