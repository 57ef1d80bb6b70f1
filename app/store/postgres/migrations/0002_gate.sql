-- The gate: accounts, sessions, devices, failures, and the book of who read what. The same as SQLite's, for many clubs.

CREATE TABLE account (
  club          text NOT NULL REFERENCES club,                   -- public
  id            text NOT NULL CHECK (id LIKE 'a-________________'), -- club
  sign_in       text COLLATE "C" NOT NULL CHECK (sign_in <> ''), -- personal
  name          text NOT NULL,                                   -- personal
  role          text NOT NULL CHECK (role IN ('lead', 'coach', 'recorder', 'board', 'operator')), -- club
  password      text NOT NULL,                                   -- secret: a hash; empty: none yet
  sealed_second bytea,                                           -- secret: under the store's key; null: none yet
  second_used   bigint NOT NULL CHECK (second_used >= 0),        -- club: the last time step that was accepted
  made          bigint NOT NULL,                                 -- club
  ended         bigint NOT NULL DEFAULT 0 CHECK (ended >= 0),    -- club: 0: not
  PRIMARY KEY (club, id),
  UNIQUE (club, sign_in)
);

CREATE TABLE squad_grant (
  club       text NOT NULL REFERENCES club,                      -- public
  account    text NOT NULL,                                      -- club
  position   bigint NOT NULL CHECK (position >= 0),              -- club
  squad      text NOT NULL CHECK (squad <> ''),                  -- club
  from_day   text NOT NULL CHECK (from_day LIKE '____-__-__'),   -- club
  until_day  text CHECK (until_day LIKE '____-__-__'),           -- club: null: no end
  substitute bigint NOT NULL CHECK (substitute IN (0, 1)),       -- club
  PRIMARY KEY (club, account, position),
  FOREIGN KEY (club, account) REFERENCES account (club, id)
);

CREATE TABLE recovery_code (
  club    text NOT NULL REFERENCES club,                         -- public
  account text NOT NULL,                                         -- club
  code    bytea NOT NULL CHECK (octet_length(code) = 32),        -- secret: a digest
  used    bigint NOT NULL DEFAULT 0 CHECK (used >= 0),           -- club: 0: not
  PRIMARY KEY (club, account, code),
  FOREIGN KEY (club, account) REFERENCES account (club, id)
);

CREATE TABLE web_session (
  club         text NOT NULL REFERENCES club,                    -- public
  secret       bytea NOT NULL CHECK (octet_length(secret) = 32), -- secret: a digest
  account      text NOT NULL,                                    -- club
  made         bigint NOT NULL,                                  -- personal
  seen         bigint NOT NULL,                                  -- personal
  stepped_up   bigint NOT NULL,                                  -- personal
  second_shown bigint NOT NULL CHECK (second_shown IN (0, 1)),   -- club
  PRIMARY KEY (club, secret),
  FOREIGN KEY (club, account) REFERENCES account (club, id)
);
CREATE INDEX web_session_by_account ON web_session (club, account, made);
CREATE INDEX web_session_by_made ON web_session (club, made);
CREATE INDEX web_session_by_seen ON web_session (club, seen);

CREATE TABLE pairing (
  club    text NOT NULL REFERENCES club,                         -- public
  id      text NOT NULL CHECK (id LIKE 'p-________________'),    -- club
  account text NOT NULL,                                         -- club
  secret  bytea NOT NULL CHECK (octet_length(secret) = 32),      -- secret: a digest, of the link
  device  bytea CHECK (octet_length(device) = 32),               -- secret: a digest, of the device's key; null: open
  label   text NOT NULL,                                         -- personal
  code    text NOT NULL,                                         -- club
  made    bigint NOT NULL,                                       -- club
  until   bigint NOT NULL,                                       -- club
  state   text NOT NULL CHECK (state IN ('open', 'claimed', 'confirmed', 'suspended')), -- club
  PRIMARY KEY (club, id),
  UNIQUE (club, secret),
  UNIQUE (club, device),
  FOREIGN KEY (club, account) REFERENCES account (club, id),
  CHECK ((state = 'open') = (device IS NULL))
);
CREATE INDEX pairing_by_account ON pairing (club, account, made);
CREATE INDEX pairing_by_until ON pairing (club, until);

CREATE TABLE device (
  club     text NOT NULL REFERENCES club,                        -- public
  id       text NOT NULL CHECK (id LIKE 'd-________________'),   -- club
  account  text NOT NULL,                                        -- club
  secret   bytea NOT NULL CHECK (octet_length(secret) = 32),     -- secret: a digest
  label    text NOT NULL,                                        -- personal
  paired   bigint NOT NULL,                                      -- club
  seen     bigint NOT NULL,                                      -- personal
  sequence bigint NOT NULL DEFAULT 0 CHECK (sequence >= 0),      -- club
  revoked  bigint NOT NULL DEFAULT 0 CHECK (revoked >= 0),       -- club: 0: not
  PRIMARY KEY (club, id),
  UNIQUE (club, secret),
  FOREIGN KEY (club, account) REFERENCES account (club, id)
);
CREATE INDEX device_by_account ON device (club, account);

CREATE TABLE attempt (
  club     text NOT NULL REFERENCES club,                        -- public
  name     text NOT NULL,                                        -- personal: may be an address
  failures bigint NOT NULL CHECK (failures > 0),                 -- club
  latest   bigint NOT NULL,                                      -- personal
  PRIMARY KEY (club, name)
);
CREATE INDEX attempt_by_latest ON attempt (club, latest);

-- How many read notes there are, and the chain's last link, so that a last one that was cut off is missed.
CREATE TABLE read_head (
  club        text NOT NULL PRIMARY KEY REFERENCES club,         -- public
  last_number bigint NOT NULL CHECK (last_number > 0),           -- club
  last_link   bytea NOT NULL CHECK (octet_length(last_link) = 32) -- club
);

CREATE TABLE read_note (
  club    text NOT NULL REFERENCES club,                         -- public
  number  bigint NOT NULL CHECK (number > 0),                    -- club
  noted   bigint NOT NULL,                                       -- personal: when
  account text NOT NULL,                                         -- club
  device  text,                                                  -- club: null: by a browser
  route   text NOT NULL,                                         -- club
  squad   text,                                                  -- club: null: none in particular
  player  bytea CHECK (octet_length(player) = 16),               -- personal: a keyed digest; null: none in particular
  people  bigint NOT NULL CHECK (people >= 0),                   -- club
  link    bytea NOT NULL CHECK (octet_length(link) = 32),        -- club
  PRIMARY KEY (club, number),
  FOREIGN KEY (club, account) REFERENCES account (club, id),
  FOREIGN KEY (club, device) REFERENCES device (club, id)
);
CREATE INDEX read_note_by_player ON read_note (club, player, number) WHERE player IS NOT NULL;

CREATE FUNCTION read_notes_stay() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'read notes are never changed or deleted';
END $$;
CREATE TRIGGER read_note_stays BEFORE UPDATE OR DELETE ON read_note FOR EACH ROW EXECUTE FUNCTION read_notes_stay();
CREATE TRIGGER read_notes_stay BEFORE TRUNCATE ON read_note FOR EACH STATEMENT EXECUTE FUNCTION read_notes_stay();
