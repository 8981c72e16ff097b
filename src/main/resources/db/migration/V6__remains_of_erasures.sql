-- An erasure's own record commits to what it left of each private part that it touched, so that this cannot be changed unseen
-- (`Erasure.remains`). The salts of those digests stand here and not in that record, which is never changed: a later erasure
-- that takes more out of a revision puts a new salt in the old one's place, so that what it took out cannot be tried against the
-- older digest. A revision whose private part is gone altogether has none.
CREATE TABLE remains (
    sequence INTEGER PRIMARY KEY REFERENCES revisions (sequence),
    salt     TEXT    NOT NULL CHECK (length(salt) >= 32)
) STRICT;

CREATE TRIGGER remains_are_only_added
BEFORE INSERT ON remains
WHEN NOT EXISTS (SELECT 1 FROM erased WHERE sequence = NEW.sequence AND done = 0)
BEGIN
    SELECT RAISE(ABORT, 'What remains is salted only by an erasure that names its revision');
END;

CREATE TRIGGER remains_are_never_changed
BEFORE UPDATE ON remains
BEGIN
    SELECT RAISE(ABORT, 'The salt of what remains is never changed');
END;

CREATE TRIGGER remains_are_only_deleted
BEFORE DELETE ON remains
WHEN NOT EXISTS (SELECT 1 FROM erased WHERE sequence = OLD.sequence AND done = 0)
BEGIN
    SELECT RAISE(ABORT, 'The salt of what remains is deleted only by an erasure that names its revision');
END;
