-- Which entries are about which day, for reading a week without reading years; made again from the entries at any time.
CREATE TABLE evening (
  day     TEXT NOT NULL,                                  -- class: club
  squad   TEXT NOT NULL,                                  -- class: club
  receipt INTEGER NOT NULL REFERENCES entry (receipt),    -- class: public
  PRIMARY KEY (day, squad, receipt)
) STRICT, WITHOUT ROWID;
INSERT INTO evening (day, squad, receipt)
  SELECT json_extract(CAST(body AS TEXT), '$.day'), json_extract(CAST(body AS TEXT), '$.squad'), receipt FROM entry
  WHERE person IS NULL AND json_extract(CAST(body AS TEXT), '$.day') IS NOT NULL
    AND json_extract(CAST(body AS TEXT), '$.squad') IS NOT NULL;

-- The club's squads, and who is of which.
CREATE TABLE squad (
  id   TEXT PRIMARY KEY,                                  -- class: club
  name TEXT NOT NULL                                      -- class: club
) STRICT, WITHOUT ROWID;
CREATE TABLE player (
  tag   BLOB PRIMARY KEY REFERENCES person (tag),         -- class: personal (a keyed digest)
  body  BLOB NOT NULL                                     -- class: personal; id, squad, name and age group, sealed
) STRICT, WITHOUT ROWID;
CREATE TABLE lists (
  one       INTEGER PRIMARY KEY CHECK (one = 1),          -- class: public
  version   INTEGER NOT NULL,                             -- class: public
  club      TEXT NOT NULL,                                -- class: public
  ledger_id TEXT NOT NULL CHECK (length(ledger_id) = 32)  -- class: public
) STRICT;
INSERT INTO lists (one, version, club, ledger_id) VALUES (1, 0, '', lower(hex(randomblob(16))));

-- The same thing kept aside once, however often it is sent.
ALTER TABLE quarantine ADD COLUMN digest BLOB;            -- class: public (a keyed digest)
CREATE UNIQUE INDEX quarantine_once ON quarantine (digest);
