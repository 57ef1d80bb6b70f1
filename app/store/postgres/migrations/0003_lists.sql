-- Which entries are about which day, for reading a week without reading years; made again from the entries at any time.
CREATE TABLE evening (
  club    text NOT NULL,                                         -- public
  day     text NOT NULL,                                         -- club
  squad   text NOT NULL,                                         -- club
  receipt bigint NOT NULL,                                       -- club
  PRIMARY KEY (club, day, squad, receipt)
) PARTITION BY HASH (club);
DO $$
BEGIN
  FOR part IN 0..7 LOOP
    EXECUTE format('CREATE TABLE evening_%s PARTITION OF evening FOR VALUES WITH (MODULUS 8, REMAINDER %s)', part, part);
  END LOOP;
END $$;
INSERT INTO evening (club, day, squad, receipt)
  SELECT club, told ->> 'day', told ->> 'squad', receipt
  FROM (SELECT club, receipt, convert_from(body, 'UTF8')::jsonb AS told FROM entry WHERE person IS NULL) AS plain
  WHERE told ->> 'day' IS NOT NULL AND told ->> 'squad' IS NOT NULL;

-- Whoever takes in holds the club's row anyway; looking it up again for every entry costs as much as the entry.
ALTER TABLE entry DROP CONSTRAINT entry_club_fkey;

-- The clubs' squads, and who is of which.
CREATE TABLE squad (
  club text NOT NULL REFERENCES club,                            -- public
  id   text NOT NULL CHECK (id <> ''),                           -- club
  name text NOT NULL,                                            -- club
  PRIMARY KEY (club, id)
);
CREATE TABLE player (
  club text NOT NULL REFERENCES club,                            -- public
  tag  bytea NOT NULL,                                           -- personal: a keyed digest
  body bytea NOT NULL,                                           -- personal: id, squad, name and age group, sealed
  PRIMARY KEY (club, tag),
  FOREIGN KEY (club, tag) REFERENCES person (club, tag)
);
CREATE TABLE lists (
  club      text PRIMARY KEY REFERENCES club,                    -- public
  version   bigint NOT NULL,                                     -- public
  name      text NOT NULL,                                       -- public
  ledger_id text NOT NULL CHECK (length(ledger_id) = 32)         -- public
);
INSERT INTO lists (club, version, name, ledger_id) SELECT club, 0, '', replace(gen_random_uuid()::text, '-', '') FROM club;
CREATE FUNCTION lists_of_a_new_club() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  INSERT INTO lists (club, version, name, ledger_id) VALUES (NEW.club, 0, '', replace(gen_random_uuid()::text, '-', ''));
  RETURN NEW;
END $$;
CREATE TRIGGER lists_made AFTER INSERT ON club FOR EACH ROW EXECUTE FUNCTION lists_of_a_new_club();

CREATE VIEW club_person AS SELECT club, tag, sealed_key, made, erased FROM person;

-- The same thing kept aside once, however often it is sent.
ALTER TABLE quarantine ADD COLUMN digest bytea;                  -- club: a keyed digest
CREATE UNIQUE INDEX quarantine_once ON quarantine (club, digest);
