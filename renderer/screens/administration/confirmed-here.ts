/** Which administrations were confirmed on this page: client, hand and examiner were looked at where it is given now. */
const confirmed = new Set<string>()

export const noteConfirmed = (administration: string): void => void confirmed.add(administration)

export const isConfirmedHere = (administration: string): boolean => confirmed.has(administration)
