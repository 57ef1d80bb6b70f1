-- What is kept aside about a person is sealed under that person's key, and says in which role it came, so that it can
-- still become part of the books.
ALTER TABLE quarantine ADD COLUMN role TEXT;                     -- club: null: kept aside by an older version
ALTER TABLE quarantine ADD COLUMN person BLOB;                   -- personal: null: about nobody in particular
CREATE INDEX quarantine_by_person ON quarantine (person) WHERE person IS NOT NULL;

-- What the lead decided about it.
CREATE TABLE looked_at (
  club    TEXT NOT NULL DEFAULT '' CHECK (club = ''),                       -- public
  number  INTEGER NOT NULL CHECK (number > 0),                   -- club: it had there
  receipt INTEGER REFERENCES entry (receipt),                    -- club: null: dropped
  account TEXT NOT NULL,                                         -- club: who
  decided TEXT NOT NULL,                                         -- club: when
  why     TEXT NOT NULL,                                         -- club: a word of ours
  PRIMARY KEY (number, club)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER looked_at_is_not_changed BEFORE UPDATE ON looked_at
BEGIN SELECT RAISE(ABORT, 'decisions are never changed'); END;
CREATE TRIGGER looked_at_is_not_deleted BEFORE DELETE ON looked_at
BEGIN SELECT RAISE(ABORT, 'decisions are never deleted'); END;

-- Opens under the store's key and no other.
CREATE TABLE key_check (
  club   TEXT NOT NULL DEFAULT '' PRIMARY KEY CHECK (club = ''),            -- public
  sealed BLOB NOT NULL                                           -- secret
) STRICT, WITHOUT ROWID;
