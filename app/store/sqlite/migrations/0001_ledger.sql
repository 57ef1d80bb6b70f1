-- The ledger: entries by the receiver's number, never changed. What is about a person is sealed under the person's key.

CREATE TABLE person (
  tag        BLOB PRIMARY KEY CHECK (length(tag) = 16),   -- keyed digest of the player's id
  sealed_key BLOB,                                        -- the person's key under the store's; null: destroyed
  made       TEXT NOT NULL,
  erased     TEXT,
  CHECK ((sealed_key IS NULL) = (erased IS NOT NULL))
) STRICT, WITHOUT ROWID;

CREATE TABLE entry (
  receipt  INTEGER PRIMARY KEY CHECK (receipt > 0),
  id       BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  device   TEXT NOT NULL,
  sequence INTEGER NOT NULL CHECK (sequence > 0),
  author   TEXT NOT NULL,
  role     TEXT NOT NULL CHECK (role IN ('lead', 'coach', 'recorder', 'board', 'operator')),
  received TEXT NOT NULL,
  person   BLOB REFERENCES person (tag),                  -- null: about nobody in particular
  body     BLOB NOT NULL,                                 -- canonical JSON; sealed where there is a person
  link     BLOB NOT NULL CHECK (length(link) = 32)        -- of the chain over all before
) STRICT;
CREATE INDEX entry_by_device ON entry (device, sequence);
CREATE INDEX entry_by_person ON entry (person, receipt) WHERE person IS NOT NULL;

CREATE TRIGGER entry_is_not_changed BEFORE UPDATE ON entry BEGIN SELECT RAISE(ABORT, 'entries are never changed'); END;
CREATE TRIGGER entry_is_not_deleted BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'entries are never deleted'); END;

CREATE TABLE quarantine (
  number   INTEGER PRIMARY KEY CHECK (number > 0),
  received TEXT NOT NULL,
  device   TEXT NOT NULL,
  author   TEXT NOT NULL,
  why      TEXT NOT NULL,
  body     BLOB NOT NULL                                  -- sealed under the store's key
) STRICT;
