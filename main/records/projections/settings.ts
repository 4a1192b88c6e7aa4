import { canonicalText } from '../canonical.ts'
import { event as settingsChanged } from '../events/settings-changed.v1.ts'
import { type Projection, when } from '../projection-kind.ts'

export const projection: Projection = {
  tables: ['settings'],
  on: [
    when(settingsChanged, (entry, body) => [
      { put: 'settings', row: { user: entry.user, settings: canonicalText(body.settings) } },
    ]),
  ],
}
