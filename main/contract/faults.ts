/**
 * Every code by which a call can fail. The screen's words have a sentence and a mend for each; the values in
 * braces are what comes with it in `detail`. Codes of the records and the reports (`records.…`, `reports.…`)
 * belong to those folders.
 */
export const FAULT_CODES = [
  // The contract's own.
  'unknown_call', // { name }
  'bad_input', // { name, at, problem }: `at` is a JSON pointer into the input
  'bad_output', // { name, at, problem }
  'bad_reply', // { name }
  'user_needed', // { name }
  'call_id_taken', // { name }
  'stopped',
  'defect', // { name }
  'host_gone', // { name }: no answer; the host has ended or hangs
  // The browser host's door.
  'foreign_request',
  'session_over',
  'body_too_large', // { limit }
  'not_json',
  // Users, clients, visits.
  'no_such_user',
  'user_exists', // { name }
  'no_such_client',
  'profile_empty',
  'birth_in_future', // { given }
  'birth_too_early', // { given }
  'date_impossible', // { field, given }
  'date_in_future', // { field, given }
  'visit_open',
  'no_such_visit',
  'visit_closed',
  // Protocols and kit.
  'no_such_protocol', // { key }
  'protocol_faulty', // { key, problems }
  'no_such_wording', // { wording }
  'no_such_kit', // { item }
  'no_such_norm', // { norm }
  // Administrations.
  'no_such_administration',
  'client_needed',
  'rehearsal_has_no_client',
  'host_only_event', // { event }: a body that only the host itself may write
  'wrong_client', // the administration belongs to a client other than the visit's
  'same_client',
  'not_movable', // { refused }: the runner's reason
  'not_saved', // what has been done is still only in memory
  'not_finished',
] as const
export type FaultCode = (typeof FAULT_CODES)[number]
