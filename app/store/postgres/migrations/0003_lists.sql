-- Which entries are about which day, for reading a week without reading years; made again from the entries at any time.
CREATE TABLE evening (
  club    text NOT NULL,                                  -- class: public
  day     text NOT NULL,                                  -- class: club
  squad   text NOT NULL,                                  -- class: club
  receipt bigint NOT NULL,                                -- class: public
  PRIMARY KEY (club, day, squad, receipt),
  FOREIGN KEY (club, receipt) REFERENCES entry (club, receipt)
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

-- The clubs' squads, and who is of which.
CREATE TABLE squad (
  club text NOT NULL REFERENCES club,                     -- class: public
  id   text NOT NULL,                                     -- class: club
  name text NOT NULL,                                     -- class: club
  PRIMARY KEY (club, id)
);
CREATE TABLE player (
  club text NOT NULL REFERENCES club,                     -- class: public
  tag  bytea NOT NULL,                                    -- class: personal (a keyed digest)
  body bytea NOT NULL,                                    -- class: personal; id, squad, name and age group, sealed
  PRIMARY KEY (club, tag),
  FOREIGN KEY (club, tag) REFERENCES person (club, tag)
);
CREATE TABLE lists (
  club      text PRIMARY KEY REFERENCES club (club),      -- class: public
  version   bigint NOT NULL DEFAULT 0,                    -- class: public
  name      text NOT NULL DEFAULT '',                     -- class: public
  ledger_id text NOT NULL DEFAULT replace(gen_random_uuid()::text, '-', '')  -- class: public
);

-- The same thing kept aside once, however often it is sent.
ALTER TABLE quarantine ADD COLUMN digest bytea;           -- class: public (a keyed digest)
CREATE UNIQUE INDEX quarantine_once ON quarantine (club, digest);
