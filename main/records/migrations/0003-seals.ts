import type { Migration } from '../migration.ts'

/** What was sealed when, found by the administration or by the code that a report shows. */
export const migration: Migration = {
  rebuilds: false,
  sql: `
    CREATE TABLE seal (
      device TEXT NOT NULL,
      sequence INTEGER NOT NULL,
      administration TEXT NOT NULL,
      code TEXT NOT NULL,
      clock TEXT NOT NULL,
      at TEXT NOT NULL,
      PRIMARY KEY (device, sequence)
    ) STRICT;
    CREATE INDEX seal_administration ON seal (administration, clock);
    CREATE INDEX seal_code ON seal (code);
  `,
}
