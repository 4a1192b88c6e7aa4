import { type Fault, Refused } from '../../main/contract/procedure.ts'

/** The fault that an act is refused with. Fails where it isn't refused or where something else is thrown. */
export function faultOf(act: () => unknown): Fault {
  try {
    act()
  } catch (error) {
    if (error instanceof Refused) return error.fault
    throw error
  }
  throw new Error('It was not refused.')
}
