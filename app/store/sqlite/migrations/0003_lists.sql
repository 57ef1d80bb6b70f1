-- Which entries are about which day, for reading a week without reading years; made again from the entries at any time.
CREATE TABLE evening (
  day     TEXT NOT NULL,                                         -- club
  squad   TEXT NOT NULL,                                         -- club
  receipt INTEGER NOT NULL REFERENCES entry (receipt),           -- club
  PRIMARY KEY (day, squad, receipt)
) STRICT, WITHOUT ROWID;
INSERT INTO evening (day, squad, receipt)
  SELECT json_extract(CAST(body AS TEXT), '$.day'), json_extract(CAST(body AS TEXT), '$.squad'), receipt FROM entry
  WHERE person IS NULL AND json_extract(CAST(body AS TEXT), '$.day') IS NOT NULL
    AND json_extract(CAST(body AS TEXT), '$.squad') IS NOT NULL;

-- The club's squads, and who is of which.
CREATE TABLE squad (
  club TEXT NOT NULL DEFAULT '' CHECK (club = ''),                          -- public
  id   TEXT NOT NULL CHECK (id <> ''),                           -- club
  name TEXT NOT NULL,                                            -- club
  PRIMARY KEY (club, id)
) STRICT, WITHOUT ROWID;
CREATE TABLE player (
  club TEXT NOT NULL DEFAULT '' CHECK (club = ''),                          -- public
  tag  BLOB NOT NULL REFERENCES person (tag),                    -- personal: a keyed digest
  body BLOB NOT NULL,                                            -- personal: id, squad, name and age group, sealed
  PRIMARY KEY (club, tag)
) STRICT, WITHOUT ROWID;
CREATE TABLE lists (
  club      TEXT DEFAULT '' PRIMARY KEY CHECK (club = ''),                  -- public
  version   INTEGER NOT NULL,                                    -- public
  name      TEXT NOT NULL,                                       -- public
  ledger_id TEXT NOT NULL CHECK (length(ledger_id) = 32)         -- public
) STRICT, WITHOUT ROWID;
INSERT INTO lists (club, version, name, ledger_id) VALUES ('', 0, '', lower(hex(randomblob(16))));

-- People as PostgreSQL has them, each with a club.
CREATE VIEW club_person AS SELECT '' AS club, tag, sealed_key, made, erased FROM person;
CREATE TRIGGER club_person_added INSTEAD OF INSERT ON club_person BEGIN
  INSERT INTO person (tag, sealed_key, made) VALUES (NEW.tag, NEW.sealed_key, NEW.made);
END;

-- The same thing kept aside once, however often it is sent.
ALTER TABLE quarantine ADD COLUMN digest BLOB;                   -- club: a keyed digest
CREATE UNIQUE INDEX quarantine_once ON quarantine (digest);
