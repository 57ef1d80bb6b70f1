-- Grows with every change of who may do what: accounts, their charges, devices. Who remembers somebody asks this first; a
-- new account is nobody whom anybody remembers.
ALTER TABLE lists ADD COLUMN people_version bigint NOT NULL DEFAULT 0; -- public
CREATE FUNCTION who_may_changed() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE lists SET people_version = people_version + 1 WHERE club = CASE TG_OP WHEN 'DELETE' THEN OLD.club ELSE NEW.club END;
  RETURN NULL;
END $$;
CREATE TRIGGER account_changed AFTER UPDATE OF sign_in, name, role, password, sealed_second, ended ON account
  FOR EACH ROW EXECUTE FUNCTION who_may_changed();
CREATE TRIGGER squad_grant_changed AFTER INSERT OR UPDATE OR DELETE ON squad_grant
  FOR EACH ROW EXECUTE FUNCTION who_may_changed();
CREATE TRIGGER device_changed AFTER INSERT OR DELETE OR UPDATE OF account, secret, label, revoked ON device
  FOR EACH ROW EXECUTE FUNCTION who_may_changed();
