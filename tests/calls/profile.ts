import { NOTHING_KNOWN, type Profile } from '../../protocols/client.ts'

interface Given extends Partial<Omit<Profile, 'facts'>> {
  readonly facts?: Partial<Profile['facts']>
}

/** A profile in which nothing is known but what is given. */
export const profileOf = ({ facts = {}, ...given }: Given): Profile => ({
  name: '',
  number: '',
  secondIdentifier: '',
  language: '',
  interpreter: '',
  sight: '',
  hearing: '',
  speech: '',
  neglect: '',
  agreement: { given: 'unknown', by: '', on: null },
  ...given,
  facts: { ...NOTHING_KNOWN, ...facts },
})
