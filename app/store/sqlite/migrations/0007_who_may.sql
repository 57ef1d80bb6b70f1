-- Grows with every change of who may do what: accounts, their charges, devices. Who remembers somebody asks this first; a
-- new account is nobody whom anybody remembers.
ALTER TABLE lists ADD COLUMN people_version INTEGER NOT NULL DEFAULT 0; -- public
CREATE TRIGGER account_is_another AFTER UPDATE OF sign_in, name, role, password, sealed_second, ended ON account
BEGIN UPDATE lists SET people_version = people_version + 1 WHERE club = NEW.club; END;
CREATE TRIGGER squad_grant_is_new AFTER INSERT ON squad_grant
BEGIN UPDATE lists SET people_version = people_version + 1 WHERE club = NEW.club; END;
CREATE TRIGGER squad_grant_is_another AFTER UPDATE ON squad_grant
BEGIN UPDATE lists SET people_version = people_version + 1 WHERE club = NEW.club; END;
CREATE TRIGGER squad_grant_is_gone AFTER DELETE ON squad_grant
BEGIN UPDATE lists SET people_version = people_version + 1 WHERE club = OLD.club; END;
CREATE TRIGGER device_is_new AFTER INSERT ON device
BEGIN UPDATE lists SET people_version = people_version + 1 WHERE club = NEW.club; END;
CREATE TRIGGER device_is_another AFTER UPDATE OF account, secret, label, revoked ON device
BEGIN UPDATE lists SET people_version = people_version + 1 WHERE club = NEW.club; END;
CREATE TRIGGER device_is_gone AFTER DELETE ON device
BEGIN UPDATE lists SET people_version = people_version + 1 WHERE club = OLD.club; END;
