-- Addresses by which a phone's calendar follows a squad's evenings, one at a time a squad; what was taken back stays, so
-- that who made it, and who took it back, can be told.
CREATE TABLE calendar_link (
  club     text NOT NULL REFERENCES club,                        -- public
  secret   bytea NOT NULL CHECK (octet_length(secret) = 32),     -- secret: a digest
  squad    text NOT NULL CHECK (squad <> ''),                    -- club
  made     bigint NOT NULL,                                      -- club
  made_by  text NOT NULL,                                        -- club: an account
  until    bigint NOT NULL,                                      -- club: the last moment at which it answers
  asked    bigint NOT NULL DEFAULT 0 CHECK (asked >= 0),         -- personal: the day it was asked for last, no hour; 0: never
  ended    bigint NOT NULL DEFAULT 0 CHECK (ended >= 0),         -- club: 0: not
  ended_by text NOT NULL DEFAULT '',                             -- club: an account; empty: nobody
  PRIMARY KEY (club, secret),
  FOREIGN KEY (club, made_by) REFERENCES account (club, id)
);
CREATE UNIQUE INDEX calendar_link_once ON calendar_link (club, squad) WHERE ended = 0;
CREATE FUNCTION calendar_links_stay() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'UPDATE' AND OLD.ended = 0 THEN RETURN NEW; END IF;
  RAISE EXCEPTION 'what was taken back does not come again, and who made a link stays';
END $$;
CREATE TRIGGER calendar_link_stays BEFORE UPDATE OR DELETE ON calendar_link FOR EACH ROW EXECUTE FUNCTION calendar_links_stay();

-- What such calendars were told last.
CREATE TABLE told_evenings (
  club    text NOT NULL REFERENCES club,                         -- public
  squad   text NOT NULL CHECK (squad <> ''),                     -- club
  version bigint NOT NULL CHECK (version > 0),                   -- club
  told    bigint NOT NULL,                                       -- club: when
  body    bytea NOT NULL,                                        -- club: sealed under the store's key
  PRIMARY KEY (club, squad)
);
