-- What is past its time goes: an entry's row is emptied, and only that; its link stays, so that the chain goes on over it.
ALTER TABLE person ADD COLUMN club TEXT NOT NULL DEFAULT '' CHECK (club = '');                     -- public
ALTER TABLE entry ADD COLUMN club TEXT NOT NULL DEFAULT '' CHECK (club = '');                      -- public
ALTER TABLE quarantine ADD COLUMN club TEXT NOT NULL DEFAULT '' CHECK (club = '');                 -- public
ALTER TABLE evening ADD COLUMN club TEXT NOT NULL DEFAULT '' CHECK (club = '');                    -- public
ALTER TABLE entry ADD COLUMN past INTEGER CHECK (past > 0);      -- club: the number of the compaction; null: it is there
CREATE INDEX entry_about_nobody ON entry (receipt) WHERE person IS NULL AND past IS NULL;

CREATE TABLE compaction (
  club      TEXT NOT NULL DEFAULT '' CHECK (club = ''),          -- public
  number    INTEGER NOT NULL CHECK (number > 0),                 -- club
  made      TEXT NOT NULL,                                       -- club
  why       TEXT NOT NULL CHECK (why IN ('evenings', 'erased')), -- club
  until_day TEXT NOT NULL,                                       -- club: evenings of days before that one; empty: of no day
  first     INTEGER NOT NULL CHECK (first > 0),                  -- club: the lowest receipt
  entries   INTEGER NOT NULL CHECK (entries > 0),                -- club
  seal      BLOB NOT NULL CHECK (length(seal) = 32),             -- club: over all of it and its rows' links, under the store's key
  PRIMARY KEY (number, club)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER compaction_is_not_changed BEFORE UPDATE ON compaction BEGIN SELECT RAISE(ABORT, 'compactions are never changed'); END;
CREATE TRIGGER compaction_is_not_deleted BEFORE DELETE ON compaction BEGIN SELECT RAISE(ABORT, 'compactions are never deleted'); END;

DROP TRIGGER entry_is_not_changed;
CREATE TRIGGER entry_is_not_changed BEFORE UPDATE ON entry
WHEN NOT coalesce(
  OLD.past IS NULL AND NEW.past IS NOT NULL AND NEW.author = '' AND NEW.received = '' AND NEW.person IS NULL
  AND length(NEW.body) = 0 AND hex(NEW.id) = printf('%032X', OLD.receipt) AND NEW.receipt = OLD.receipt
  AND NEW.link = OLD.link AND NEW.device = OLD.device AND NEW.sequence = OLD.sequence AND NEW.role = OLD.role
  AND OLD.receipt < (SELECT max(receipt) FROM entry), 0)
BEGIN SELECT RAISE(ABORT, 'entries are never changed'); END;

-- Where the book of reads begins, once notes went from its front.
CREATE TABLE read_past (
  club        TEXT NOT NULL PRIMARY KEY CHECK (club = ''),       -- public
  last_number INTEGER NOT NULL CHECK (last_number > 0),          -- club: of those that went
  last_link   BLOB NOT NULL CHECK (length(last_link) = 32),      -- club
  made        TEXT NOT NULL,                                     -- club
  seal        BLOB NOT NULL CHECK (length(seal) = 32)            -- club: under the store's key
) STRICT, WITHOUT ROWID;
DROP TRIGGER read_note_is_not_deleted;
CREATE TRIGGER read_note_is_not_deleted BEFORE DELETE ON read_note
WHEN OLD.number > coalesce((SELECT last_number FROM read_past), 0)
BEGIN SELECT RAISE(ABORT, 'read notes are never deleted'); END;
-- A restored book begins after what went.
DROP TRIGGER read_note_is_the_next;
CREATE TRIGGER read_note_is_the_next BEFORE INSERT ON read_note
WHEN NEW.number <> (SELECT coalesce(max(number), (SELECT last_number FROM read_past), 0) + 1 FROM read_note)
BEGIN SELECT RAISE(ABORT, 'read notes are never replaced'); END;
