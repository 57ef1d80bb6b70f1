-- The ledger: entries by the receiver's number, never changed. What is about a person is sealed under the person's key.

CREATE TABLE person (
  tag        BLOB PRIMARY KEY CHECK (length(tag) = 16),          -- personal: keyed digest of the player's id
  sealed_key BLOB,                                               -- secret: under the store's key; null: destroyed
  made       TEXT NOT NULL,                                      -- club
  erased     TEXT,                                               -- club
  CHECK ((sealed_key IS NULL) = (erased IS NOT NULL))
) STRICT, WITHOUT ROWID;

CREATE TABLE entry (
  receipt  INTEGER PRIMARY KEY CHECK (receipt > 0),              -- club
  id       BLOB NOT NULL UNIQUE CHECK (length(id) = 16),         -- club
  device   TEXT NOT NULL,                                        -- club
  sequence INTEGER NOT NULL CHECK (sequence > 0),                -- club
  author   TEXT NOT NULL,                                        -- club
  role     TEXT NOT NULL CHECK (role IN ('lead', 'coach', 'recorder', 'board', 'operator')), -- club
  received TEXT NOT NULL,                                        -- club
  person   BLOB REFERENCES person (tag),                         -- personal: null: about nobody in particular
  body     BLOB NOT NULL,                                        -- health: canonical JSON; sealed where about a person
  link     BLOB NOT NULL CHECK (length(link) = 32)               -- club: of the chain over all before
) STRICT;
CREATE INDEX entry_by_device ON entry (device, sequence);
CREATE INDEX entry_by_person ON entry (person, receipt) WHERE person IS NOT NULL;

CREATE TRIGGER entry_is_not_changed BEFORE UPDATE ON entry BEGIN SELECT RAISE(ABORT, 'entries are never changed'); END;
CREATE TRIGGER entry_is_not_deleted BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'entries are never deleted'); END;

CREATE TABLE quarantine (
  number   INTEGER PRIMARY KEY CHECK (number > 0),               -- club
  received TEXT NOT NULL,                                        -- club
  device   TEXT NOT NULL,                                        -- club
  author   TEXT NOT NULL,                                        -- club
  why      TEXT NOT NULL,                                        -- club
  body     BLOB NOT NULL                                         -- health: sealed under the store's key
) STRICT;
