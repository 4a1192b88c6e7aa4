import type { Client } from '../../../main/contract/client.ts'
import type { Output } from '../../../main/contract/procedures.ts'
import type { Profile } from '../../../protocols/client.ts'
import { bornLine } from '../../app/person.ts'
import { Button } from '../../parts/button.tsx'
import { Notice } from '../../parts/notice.tsx'
import { say } from '../../words/index.ts'

export type Found = Output<'clients.search'>['found'][number]

const plain = (text: string) => text.normalize('NFC').trim().replaceAll(/\s+/g, ' ').toLocaleLowerCase()

/** Clients who are in the records by this name or number already: one person in two records is a hazard. */
export async function findAlike(call: Client['call'], { name, number }: Profile): Promise<readonly Found[]> {
  const found = new Map<string, Found>()
  for (const text of [number, name].filter(Boolean)) {
    const answer = await call('clients.search', { text })
    for (const each of answer.found) {
      const isSame =
        (number && plain(each.number) === plain(number)) || (name && plain(each.name) === plain(name))
      if (isSame) found.set(each.id, each)
    }
  }
  return [...found.values()]
}

export interface AlikeProps {
  readonly found: readonly Found[]
  readonly onOpen: (client: string) => void
  readonly onAdd: () => void
}

export function Alike({ found, onOpen, onAdd }: AlikeProps) {
  return (
    <Notice tone="caution" isLive title={say('profile.alike.title', { count: found.length })}>
      <p>{say('profile.alike.text')}</p>
      <div className="row">
        {found.map((each) => (
          <Button key={each.id} onPress={() => onOpen(each.id)}>
            {say('profile.alike.open', {
              client: [each.name, each.number, bornLine(each.born)].filter(Boolean).join(' · '),
            })}
          </Button>
        ))}
        <Button onPress={onAdd}>{say('profile.alike.add')}</Button>
      </div>
    </Notice>
  )
}
