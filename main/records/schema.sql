CREATE TABLE administration (
  id TEXT PRIMARY KEY,
  protocol TEXT NOT NULL,
  version TEXT NOT NULL,
  title TEXT NOT NULL,
  hash TEXT NOT NULL,
  source TEXT NOT NULL,
  wording TEXT,
  rehearsal INTEGER NOT NULL,
  client TEXT,
  visit TEXT,
  examiner TEXT NOT NULL,
  examiner_name TEXT NOT NULL,
  given_on TEXT NOT NULL,
  started_at TEXT NOT NULL,
  finished_at TEXT,
  phase TEXT NOT NULL,
  withdrawn INTEGER NOT NULL,
  note TEXT,
  deviations INTEGER NOT NULL,
  basis TEXT NOT NULL
) STRICT;

CREATE TABLE administration_client (
  administration TEXT NOT NULL REFERENCES administration (id) ON DELETE CASCADE,
  client TEXT NOT NULL,
  current INTEGER NOT NULL,
  PRIMARY KEY (client, administration)
) STRICT;

CREATE INDEX administration_client_of ON administration_client (administration);

CREATE INDEX administration_visit ON administration (visit);

CREATE INDEX administration_waiting ON administration (examiner, started_at)
  WHERE note IS NULL AND withdrawn = 0;

CREATE TABLE client (
  row INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  name TEXT NOT NULL,
  number TEXT NOT NULL,
  search TEXT NOT NULL,
  profile TEXT NOT NULL
) STRICT;

CREATE TRIGGER client_anew AFTER UPDATE OF search ON client BEGIN
  INSERT INTO client_search (client_search, rowid, search) VALUES ('delete', OLD.row, OLD.search);
  INSERT INTO client_search (rowid, search) VALUES (NEW.row, NEW.search);
END;

CREATE TRIGGER client_in AFTER INSERT ON client BEGIN
  INSERT INTO client_search (rowid, search) VALUES (NEW.row, NEW.search);
END;

CREATE TRIGGER client_out AFTER DELETE ON client BEGIN
  INSERT INTO client_search (client_search, rowid, search) VALUES ('delete', OLD.row, OLD.search);
END;

CREATE VIRTUAL TABLE client_search USING fts5 (
  search, content = 'client', content_rowid = 'row', tokenize = 'trigram case_sensitive 1'
);

CREATE TABLE device (id TEXT PRIMARY KEY, public_key TEXT NOT NULL, since TEXT NOT NULL) STRICT;

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

CREATE TRIGGER event_is_final BEFORE UPDATE ON event
WHEN NEW.body IS NOT NULL OR NEW.salt IS NOT NULL
  OR NEW.id IS NOT OLD.id OR NEW.device IS NOT OLD.device OR NEW.sequence IS NOT OLD.sequence
  OR NEW.clock IS NOT OLD.clock OR NEW.user IS NOT OLD.user OR NEW.stream_kind IS NOT OLD.stream_kind
  OR NEW.stream IS NOT OLD.stream OR NEW.kind IS NOT OLD.kind OR NEW.version IS NOT OLD.version
  OR NEW.at IS NOT OLD.at OR NEW.digest IS NOT OLD.digest OR NEW.hash IS NOT OLD.hash
BEGIN
  SELECT RAISE(ABORT, 'an event is never changed');
END;

CREATE INDEX event_order ON event (clock, device, sequence);

CREATE TRIGGER event_stays BEFORE DELETE ON event
BEGIN
  SELECT RAISE(ABORT, 'an event is never deleted');
END;

CREATE INDEX event_stream ON event (stream_kind, stream, clock, device, sequence);

CREATE TABLE kit (id TEXT PRIMARY KEY, protocol TEXT NOT NULL, piece TEXT NOT NULL) STRICT;

CREATE TABLE protocol_file (
  hash TEXT NOT NULL,
  path TEXT NOT NULL,
  text TEXT NOT NULL,
  PRIMARY KEY (hash, path)
) STRICT;

CREATE TABLE score (
  administration TEXT NOT NULL REFERENCES administration (id) ON DELETE CASCADE,
  score TEXT NOT NULL,
  place TEXT NOT NULL,
  title TEXT NOT NULL,
  value REAL,
  over INTEGER NOT NULL,
  unit TEXT NOT NULL,
  decimals INTEGER NOT NULL,
  better TEXT NOT NULL,
  missing TEXT,
  PRIMARY KEY (administration, score, place)
) STRICT;

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

CREATE TABLE settings (user TEXT PRIMARY KEY, settings TEXT NOT NULL) STRICT;

CREATE TABLE store (kind TEXT PRIMARY KEY) STRICT;

CREATE TABLE user (id TEXT PRIMARY KEY, name TEXT NOT NULL, since TEXT NOT NULL) STRICT;

CREATE TABLE verified_norm (
  protocol TEXT NOT NULL,
  norm TEXT NOT NULL,
  table_hash TEXT NOT NULL,
  user TEXT NOT NULL,
  at TEXT NOT NULL,
  PRIMARY KEY (protocol, norm, table_hash)
) STRICT;

CREATE TABLE visit (
  id TEXT PRIMARY KEY,
  client TEXT NOT NULL,
  user TEXT NOT NULL,
  opened_at TEXT NOT NULL,
  closed_at TEXT
) STRICT;

CREATE INDEX visit_open ON visit (opened_at) WHERE closed_at IS NULL;
