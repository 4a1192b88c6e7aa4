/** The three kinds of store: real records, invented ones to look at, and what was given without a client. */
export const STORES = ['clinic', 'demo', 'rehearsal'] as const
export type StoreKind = (typeof STORES)[number]
