import type { Profile } from '../../../protocols/client.ts'
import { canonicalText } from '../canonical.ts'
import { event as clientAdded } from '../events/client-added.v1.ts'
import { event as clientChanged } from '../events/client-changed.v1.ts'
import { type Change, type Projection, when } from '../projection-kind.ts'
import { folded } from '../search-text.ts'

const columns = (profile: Profile) => ({
  name: profile.name,
  number: profile.number,
  search: folded(`${profile.name} ${profile.number}`),
  profile: canonicalText(profile),
})

const added = (id: string, profile: Profile): Change => ({
  put: 'client',
  row: { id, ...columns(profile) },
})

export const projection: Projection = {
  tables: ['client'],
  on: [
    when(clientAdded, (entry, body) => [added(entry.stream.id, body.profile)]),
    when(clientChanged, (entry, body) => [
      { set: 'client', to: columns(body.profile), where: { id: entry.stream.id } },
    ]),
  ],
}
