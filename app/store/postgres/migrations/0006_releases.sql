-- What the board was given, as it was given.
CREATE TABLE board_release (
  club    text NOT NULL REFERENCES club,                         -- public
  number  bigint NOT NULL CHECK (number > 0),                    -- public
  shown   text NOT NULL,                                         -- club: JSON; small numbers are withheld
  counted bytea NOT NULL,                                        -- health: what was counted for it, sealed under the store's key
  PRIMARY KEY (club, number)
);
CREATE FUNCTION board_releases_stay() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'releases are never changed or deleted';
END $$;
CREATE TRIGGER board_release_stays BEFORE UPDATE OR DELETE ON board_release FOR EACH ROW EXECUTE FUNCTION board_releases_stay();
CREATE TRIGGER board_releases_stay BEFORE TRUNCATE ON board_release FOR EACH STATEMENT EXECUTE FUNCTION board_releases_stay();
