-- What is kept aside about a person is sealed under that person's key, and says in which role it came, so that it can
-- still become part of the books.
ALTER TABLE quarantine ADD COLUMN role text;                     -- club: null: kept aside by an older version
ALTER TABLE quarantine ADD COLUMN person bytea;                  -- personal: null: about nobody in particular
CREATE INDEX quarantine_by_person ON quarantine (club, person) WHERE person IS NOT NULL;

-- What the lead decided about it.
CREATE TABLE looked_at (
  club    text NOT NULL REFERENCES club,                         -- public
  number  bigint NOT NULL CHECK (number > 0),                    -- club: it had there
  receipt bigint,                                                -- club: null: dropped
  account text NOT NULL,                                         -- club: who
  decided text NOT NULL,                                         -- club: when
  why     text NOT NULL,                                         -- club: a word of ours
  PRIMARY KEY (club, number)
);
CREATE TRIGGER looked_at_stays BEFORE UPDATE OR DELETE ON looked_at FOR EACH ROW EXECUTE FUNCTION entries_stay();

-- Opens under the store's key and no other.
CREATE TABLE key_check (
  club   text PRIMARY KEY REFERENCES club,                       -- public
  sealed bytea NOT NULL                                          -- secret
);
