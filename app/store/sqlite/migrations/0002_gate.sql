-- The gate: accounts, sessions, devices, failures, and the book of who read what. The same as PostgreSQL's; the whole
-- file is one club's, so the club is always '', and it stands last in every key: looked for first it would find all.

CREATE TABLE account (
  club          TEXT NOT NULL DEFAULT '' CHECK (club = ''),                 -- public
  id            TEXT NOT NULL CHECK (id LIKE 'a-________________'), -- club
  sign_in       TEXT NOT NULL CHECK (sign_in <> ''),             -- personal
  name          TEXT NOT NULL,                                   -- personal
  role          TEXT NOT NULL CHECK (role IN ('lead', 'coach', 'recorder', 'board', 'operator')), -- club
  password      TEXT NOT NULL,                                   -- secret: a hash; empty: none yet
  sealed_second BLOB,                                            -- secret: under the store's key; null: none yet
  second_used   INTEGER NOT NULL CHECK (second_used >= 0),       -- club: the last time step that was accepted
  made          INTEGER NOT NULL,                                -- club
  ended         INTEGER NOT NULL DEFAULT 0 CHECK (ended >= 0),   -- club: 0: not
  PRIMARY KEY (id, club),
  UNIQUE (sign_in, club)
) STRICT, WITHOUT ROWID;

CREATE TABLE squad_grant (
  club       TEXT NOT NULL DEFAULT '',                                      -- public
  account    TEXT NOT NULL,                                      -- club
  position   INTEGER NOT NULL CHECK (position >= 0),             -- club
  squad      TEXT NOT NULL CHECK (squad <> ''),                  -- club
  from_day   TEXT NOT NULL CHECK (from_day LIKE '____-__-__'),   -- club
  until_day  TEXT CHECK (until_day LIKE '____-__-__'),           -- club: null: no end
  substitute INTEGER NOT NULL CHECK (substitute IN (0, 1)),      -- club
  PRIMARY KEY (account, position, club),
  FOREIGN KEY (account, club) REFERENCES account (id, club)
) STRICT, WITHOUT ROWID;

CREATE TABLE recovery_code (
  club    TEXT NOT NULL DEFAULT '',                                         -- public
  account TEXT NOT NULL,                                         -- club
  code    BLOB NOT NULL CHECK (length(code) = 32),               -- secret: a digest
  used    INTEGER NOT NULL DEFAULT 0 CHECK (used >= 0),          -- club: 0: not
  PRIMARY KEY (account, code, club),
  FOREIGN KEY (account, club) REFERENCES account (id, club)
) STRICT, WITHOUT ROWID;

CREATE TABLE web_session (
  club         TEXT NOT NULL DEFAULT '',                                    -- public
  secret       BLOB NOT NULL CHECK (length(secret) = 32),        -- secret: a digest
  account      TEXT NOT NULL,                                    -- club
  made         INTEGER NOT NULL,                                 -- personal
  seen         INTEGER NOT NULL,                                 -- personal
  stepped_up   INTEGER NOT NULL,                                 -- personal
  second_shown INTEGER NOT NULL CHECK (second_shown IN (0, 1)),  -- club
  PRIMARY KEY (secret, club),
  FOREIGN KEY (account, club) REFERENCES account (id, club)
) STRICT, WITHOUT ROWID;
CREATE INDEX web_session_by_account ON web_session (account, made, club);
CREATE INDEX web_session_by_made ON web_session (made, club);
CREATE INDEX web_session_by_seen ON web_session (seen, club);

CREATE TABLE pairing (
  club    TEXT NOT NULL DEFAULT '',                                         -- public
  id      TEXT NOT NULL CHECK (id LIKE 'p-________________'),    -- club
  account TEXT NOT NULL,                                         -- club
  secret  BLOB NOT NULL CHECK (length(secret) = 32),             -- secret: a digest, of the link
  device  BLOB CHECK (length(device) = 32),                      -- secret: a digest, of the device's key; null: open
  label   TEXT NOT NULL,                                         -- personal
  code    TEXT NOT NULL,                                         -- club
  made    INTEGER NOT NULL,                                      -- club
  until   INTEGER NOT NULL,                                      -- club
  state   TEXT NOT NULL CHECK (state IN ('open', 'claimed', 'confirmed', 'suspended')), -- club
  PRIMARY KEY (id, club),
  UNIQUE (secret, club),
  UNIQUE (device, club),
  FOREIGN KEY (account, club) REFERENCES account (id, club),
  CHECK ((state = 'open') = (device IS NULL))
) STRICT, WITHOUT ROWID;
CREATE INDEX pairing_by_account ON pairing (account, made, club);
CREATE INDEX pairing_by_until ON pairing (until, club);

CREATE TABLE device (
  club     TEXT NOT NULL DEFAULT '',                                        -- public
  id       TEXT NOT NULL CHECK (id LIKE 'd-________________'),   -- club
  account  TEXT NOT NULL,                                        -- club
  secret   BLOB NOT NULL CHECK (length(secret) = 32),            -- secret: a digest
  label    TEXT NOT NULL,                                        -- personal
  paired   INTEGER NOT NULL,                                     -- club
  seen     INTEGER NOT NULL,                                     -- personal
  sequence INTEGER NOT NULL DEFAULT 0 CHECK (sequence >= 0),     -- club
  revoked  INTEGER NOT NULL DEFAULT 0 CHECK (revoked >= 0),      -- club: 0: not
  PRIMARY KEY (id, club),
  UNIQUE (secret, club),
  FOREIGN KEY (account, club) REFERENCES account (id, club)
) STRICT, WITHOUT ROWID;
CREATE INDEX device_by_account ON device (account, club);

CREATE TABLE attempt (
  club     TEXT NOT NULL DEFAULT '' CHECK (club = ''),                      -- public
  name     TEXT NOT NULL,                                        -- personal: may be an address
  failures INTEGER NOT NULL CHECK (failures > 0),                -- club
  latest   INTEGER NOT NULL,                                     -- personal
  PRIMARY KEY (name, club)
) STRICT, WITHOUT ROWID;
CREATE INDEX attempt_by_latest ON attempt (latest, club);

-- How many read notes there are, and the chain's last link, so that a last one that was cut off is missed.
CREATE TABLE read_head (
  club        TEXT NOT NULL PRIMARY KEY CHECK (club = ''),       -- public
  last_number INTEGER NOT NULL CHECK (last_number > 0),          -- club
  last_link   BLOB NOT NULL CHECK (length(last_link) = 32)       -- club
) STRICT, WITHOUT ROWID;

CREATE TABLE read_note (
  club    TEXT NOT NULL DEFAULT '' CHECK (club = ''),                       -- public
  number  INTEGER NOT NULL CHECK (number > 0),                   -- club
  noted   INTEGER NOT NULL,                                      -- personal: when
  account TEXT NOT NULL,                                         -- club
  device  TEXT,                                                  -- club: null: by a browser
  route   TEXT NOT NULL,                                         -- club
  squad   TEXT,                                                  -- club: null: none in particular
  player  BLOB CHECK (length(player) = 16),                      -- personal: a keyed digest; null: none in particular
  people  INTEGER NOT NULL CHECK (people >= 0),                  -- club
  link    BLOB NOT NULL CHECK (length(link) = 32),               -- club
  PRIMARY KEY (number, club),
  FOREIGN KEY (account, club) REFERENCES account (id, club),
  FOREIGN KEY (device, club) REFERENCES device (id, club)
) STRICT, WITHOUT ROWID;
CREATE INDEX read_note_by_player ON read_note (player, number, club) WHERE player IS NOT NULL;

CREATE TRIGGER read_note_is_not_changed BEFORE UPDATE ON read_note
BEGIN SELECT RAISE(ABORT, 'read notes are never changed'); END;
CREATE TRIGGER read_note_is_not_deleted BEFORE DELETE ON read_note
BEGIN SELECT RAISE(ABORT, 'read notes are never deleted'); END;
-- An INSERT OR REPLACE would delete without that trigger.
CREATE TRIGGER read_note_is_the_next BEFORE INSERT ON read_note
WHEN NEW.number <> (SELECT coalesce(max(number), 0) + 1 FROM read_note)
BEGIN SELECT RAISE(ABORT, 'read notes are never replaced'); END;
