-- Addresses by which a phone's calendar follows a squad's evenings, one at a time a squad; what was taken back stays, so
-- that who made it, and who took it back, can be told.
CREATE TABLE calendar_link (
  club     TEXT NOT NULL DEFAULT '' CHECK (club = ''),           -- public
  secret   BLOB NOT NULL CHECK (length(secret) = 32),            -- secret: a digest
  squad    TEXT NOT NULL CHECK (squad <> ''),                    -- club
  made     INTEGER NOT NULL,                                     -- club
  made_by  TEXT NOT NULL,                                        -- club: an account
  until    INTEGER NOT NULL,                                     -- club: the last moment at which it answers
  asked    INTEGER NOT NULL DEFAULT 0 CHECK (asked >= 0),        -- personal: the day it was asked for last, no hour; 0: never
  ended    INTEGER NOT NULL DEFAULT 0 CHECK (ended >= 0),        -- club: 0: not
  ended_by TEXT NOT NULL DEFAULT '',                             -- club: an account; empty: nobody
  PRIMARY KEY (secret, club),
  FOREIGN KEY (made_by, club) REFERENCES account (id, club)
) STRICT, WITHOUT ROWID;
CREATE UNIQUE INDEX calendar_link_once ON calendar_link (squad, club) WHERE ended = 0;
CREATE TRIGGER calendar_link_ends_once BEFORE UPDATE ON calendar_link WHEN OLD.ended <> 0
BEGIN SELECT RAISE(ABORT, 'what was taken back does not come again'); END;
CREATE TRIGGER calendar_link_is_not_deleted BEFORE DELETE ON calendar_link
BEGIN SELECT RAISE(ABORT, 'who made a link stays'); END;

-- What such calendars were told last.
CREATE TABLE told_evenings (
  club    TEXT NOT NULL DEFAULT '' CHECK (club = ''),            -- public
  squad   TEXT NOT NULL CHECK (squad <> ''),                     -- club
  version INTEGER NOT NULL CHECK (version > 0),                  -- club
  told    INTEGER NOT NULL,                                      -- club: when
  body    BLOB NOT NULL,                                         -- club: sealed under the store's key
  PRIMARY KEY (squad, club)
) STRICT, WITHOUT ROWID;
