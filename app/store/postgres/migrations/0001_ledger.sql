-- The ledgers of many clubs: rows spread by club, each club with its own numbers and its own chain. The same as SQLite's
-- but for the club.

CREATE TABLE club (
  club         text PRIMARY KEY,                                 -- public
  last_receipt bigint NOT NULL DEFAULT 0 CHECK (last_receipt >= 0), -- club
  last_link    bytea NOT NULL DEFAULT decode(repeat('00', 32), 'hex') CHECK (octet_length(last_link) = 32) -- club
);

CREATE TABLE person (
  club       text NOT NULL REFERENCES club,                      -- public
  tag        bytea NOT NULL CHECK (octet_length(tag) = 16),      -- personal
  sealed_key bytea,                                              -- secret
  made       text NOT NULL,                                      -- club
  erased     text,                                               -- club
  PRIMARY KEY (club, tag),
  CHECK ((sealed_key IS NULL) = (erased IS NOT NULL))
) PARTITION BY HASH (club);

CREATE TABLE entry (
  club     text NOT NULL REFERENCES club,                        -- public
  receipt  bigint NOT NULL CHECK (receipt > 0),                  -- club
  id       bytea NOT NULL CHECK (octet_length(id) = 16),         -- club
  device   text NOT NULL,                                        -- club
  sequence bigint NOT NULL CHECK (sequence > 0),                 -- club
  author   text NOT NULL,                                        -- club
  role     text NOT NULL CHECK (role IN ('lead', 'coach', 'recorder', 'board', 'operator')), -- club
  received text NOT NULL,                                        -- club
  person   bytea,                                                -- personal
  body     bytea NOT NULL,                                       -- health
  link     bytea NOT NULL CHECK (octet_length(link) = 32),       -- club
  PRIMARY KEY (club, receipt),
  UNIQUE (club, id),
  FOREIGN KEY (club, person) REFERENCES person (club, tag)
) PARTITION BY HASH (club);

CREATE TABLE quarantine (
  club     text NOT NULL REFERENCES club,                        -- public
  number   bigint GENERATED ALWAYS AS IDENTITY,                  -- club
  received text NOT NULL,                                        -- club
  device   text NOT NULL,                                        -- club
  author   text NOT NULL,                                        -- club
  why      text NOT NULL,                                        -- club
  body     bytea NOT NULL,                                       -- health
  PRIMARY KEY (club, number)
);

DO $$
BEGIN
  FOR part IN 0..7 LOOP
    EXECUTE format('CREATE TABLE person_%s PARTITION OF person FOR VALUES WITH (MODULUS 8, REMAINDER %s)', part, part);
    EXECUTE format('CREATE TABLE entry_%s PARTITION OF entry FOR VALUES WITH (MODULUS 8, REMAINDER %s)', part, part);
  END LOOP;
END $$;

CREATE INDEX entry_by_device ON entry (club, device, sequence);
CREATE INDEX entry_by_person ON entry (club, person, receipt) WHERE person IS NOT NULL;

CREATE FUNCTION entries_stay() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'entries are never changed or deleted';
END $$;
CREATE TRIGGER entry_stays BEFORE UPDATE OR DELETE ON entry FOR EACH ROW EXECUTE FUNCTION entries_stay();
CREATE TRIGGER entries_stay BEFORE TRUNCATE ON entry FOR EACH STATEMENT EXECUTE FUNCTION entries_stay();
