-- What the board was given, as it was given.
CREATE TABLE board_release (
  club    TEXT NOT NULL DEFAULT '' CHECK (club = ''),            -- public
  number  INTEGER NOT NULL CHECK (number > 0),                   -- public
  shown   TEXT NOT NULL,                                         -- club: JSON; small numbers are withheld
  counted BLOB NOT NULL,                                         -- health: what was counted for it, sealed under the store's key
  PRIMARY KEY (club, number)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER board_release_is_not_changed BEFORE UPDATE ON board_release BEGIN SELECT RAISE(ABORT, 'releases are never changed'); END;
CREATE TRIGGER board_release_is_not_deleted BEFORE DELETE ON board_release BEGIN SELECT RAISE(ABORT, 'releases are never deleted'); END;
