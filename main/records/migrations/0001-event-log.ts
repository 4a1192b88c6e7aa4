import type { Migration } from '../migration.ts'

/**
 * The log. It only grows: the file itself refuses to delete an event or to change one, except that what an
 * event says may be erased together with its salt, both for ever.
 */
export const migration: Migration = {
  rebuilds: false,
  sql: `
    CREATE TABLE event (
      id TEXT PRIMARY KEY,
      device TEXT NOT NULL,
      sequence INTEGER NOT NULL,
      clock TEXT NOT NULL,
      user TEXT NOT NULL,
      stream_kind TEXT NOT NULL,
      stream TEXT NOT NULL,
      kind TEXT NOT NULL,
      version INTEGER NOT NULL,
      at TEXT NOT NULL,
      salt BLOB,
      body BLOB,
      digest BLOB NOT NULL,
      hash BLOB NOT NULL,
      UNIQUE (device, sequence)
    ) STRICT;

    CREATE INDEX event_order ON event (clock, device, sequence);
    CREATE INDEX event_stream ON event (stream_kind, stream, clock, device, sequence);

    CREATE TRIGGER event_stays BEFORE DELETE ON event
    BEGIN
      SELECT RAISE(ABORT, 'an event is never deleted');
    END;

    CREATE TRIGGER event_is_final BEFORE UPDATE ON event
    WHEN NEW.body IS NOT NULL OR NEW.salt IS NOT NULL
      OR NEW.id IS NOT OLD.id OR NEW.device IS NOT OLD.device OR NEW.sequence IS NOT OLD.sequence
      OR NEW.clock IS NOT OLD.clock OR NEW.user IS NOT OLD.user OR NEW.stream_kind IS NOT OLD.stream_kind
      OR NEW.stream IS NOT OLD.stream OR NEW.kind IS NOT OLD.kind OR NEW.version IS NOT OLD.version
      OR NEW.at IS NOT OLD.at OR NEW.digest IS NOT OLD.digest OR NEW.hash IS NOT OLD.hash
    BEGIN
      SELECT RAISE(ABORT, 'an event is never changed');
    END;
  `,
}
