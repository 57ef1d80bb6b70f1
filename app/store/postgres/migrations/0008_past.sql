-- What is past its time goes: an entry's row is emptied, and only that; its link stays, so that the chain goes on over it.
ALTER TABLE entry ADD COLUMN past bigint CHECK (past > 0);       -- club: the number of the compaction; null: it is there
CREATE INDEX entry_about_nobody ON entry (club, receipt) WHERE person IS NULL AND past IS NULL;

CREATE TABLE compaction (
  club      text NOT NULL REFERENCES club,                       -- public
  number    bigint NOT NULL CHECK (number > 0),                  -- club
  made      text NOT NULL,                                       -- club
  why       text NOT NULL CHECK (why IN ('evenings', 'erased')), -- club
  until_day text NOT NULL,                                       -- club: evenings of days before that one; empty: of no day
  first     bigint NOT NULL CHECK (first > 0),                   -- club: the lowest receipt
  entries   bigint NOT NULL CHECK (entries > 0),                 -- club
  seal      bytea NOT NULL CHECK (octet_length(seal) = 32),      -- club: over all of it and its rows' links, under the store's key
  PRIMARY KEY (club, number)
);
CREATE FUNCTION compactions_stay() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'compactions are never changed or deleted';
END $$;
CREATE TRIGGER compaction_stays BEFORE UPDATE OR DELETE ON compaction FOR EACH ROW EXECUTE FUNCTION compactions_stay();
CREATE TRIGGER compactions_stay BEFORE TRUNCATE ON compaction FOR EACH STATEMENT EXECUTE FUNCTION compactions_stay();

CREATE FUNCTION entry_is_only_emptied() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'UPDATE' AND coalesce(
      OLD.past IS NULL AND NEW.past IS NOT NULL AND NEW.author = '' AND NEW.received = '' AND NEW.person IS NULL
      AND octet_length(NEW.body) = 0 AND NEW.id = decode(lpad(to_hex(OLD.receipt), 32, '0'), 'hex')
      AND NEW.club = OLD.club AND NEW.receipt = OLD.receipt AND NEW.link = OLD.link AND NEW.device = OLD.device
      AND NEW.sequence = OLD.sequence AND NEW.role = OLD.role
      AND OLD.receipt < (SELECT last_receipt FROM club WHERE club = OLD.club), false) THEN
    RETURN NEW;
  END IF;
  RAISE EXCEPTION 'entries are never changed or deleted';
END $$;
DROP TRIGGER entry_stays ON entry;
CREATE TRIGGER entry_stays BEFORE UPDATE OR DELETE ON entry FOR EACH ROW EXECUTE FUNCTION entry_is_only_emptied();

-- Where the book of reads begins, once notes went from its front.
CREATE TABLE read_past (
  club        text NOT NULL PRIMARY KEY REFERENCES club,         -- public
  last_number bigint NOT NULL CHECK (last_number > 0),           -- club: of those that went
  last_link   bytea NOT NULL CHECK (octet_length(last_link) = 32), -- club
  made        text NOT NULL,                                     -- club
  seal        bytea NOT NULL CHECK (octet_length(seal) = 32)     -- club: under the store's key
);
CREATE FUNCTION read_note_stays() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' AND OLD.number <= coalesce((SELECT last_number FROM read_past WHERE club = OLD.club), 0) THEN
    RETURN OLD;
  END IF;
  RAISE EXCEPTION 'read notes are never changed or deleted';
END $$;
DROP TRIGGER read_note_stays ON read_note;
CREATE TRIGGER read_note_stays BEFORE UPDATE OR DELETE ON read_note FOR EACH ROW EXECUTE FUNCTION read_note_stays();
