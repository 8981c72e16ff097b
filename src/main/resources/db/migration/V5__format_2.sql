-- Format 2 of a revision: its public and its private part stand apart, each under a salted digest, and the chain covers
-- the digests. So one piece's history can be proven without anybody else's particulars, and a person's particulars can be
-- erased (Regulation (EU) 2016/679 Art. 17) while the chain stays whole. What is hashed stands in `tenterbook.ledger.Chain`
-- and in DEVELOPERS.md, "The chain". Revisions of format 1 stay as they are and are read for ever.
-- In a row of format 2, `record` is the public part, and `id` is an opaque handle where the id names a person.
ALTER TABLE revisions ADD COLUMN format INTEGER NOT NULL DEFAULT 1
    CHECK (format = 1 OR format = 2 AND author = '' AND note = '');
-- Only a row of format 1 is ever redacted in place; the private part of one of format 2 stands in `private_parts`.
ALTER TABLE revisions ADD COLUMN redacted INTEGER NOT NULL DEFAULT 0
    CHECK (redacted = 0 OR redacted = 1 AND format = 1);
ALTER TABLE revisions ADD COLUMN public_salt TEXT CHECK ((format = 2) = (public_salt IS NOT NULL));
ALTER TABLE revisions ADD COLUMN public_digest TEXT
    CHECK ((format = 2) = (public_digest IS NOT NULL) AND length(public_digest) = 64);
ALTER TABLE revisions ADD COLUMN private_digest TEXT
    CHECK ((format = 2) = (private_digest IS NOT NULL) AND length(private_digest) = 64);
-- Only in the first revision of format 2 of a ledger that has revisions of format 1 before it.
ALTER TABLE revisions ADD COLUMN before_digest TEXT
    CHECK (before_digest IS NULL OR format = 2 AND length(before_digest) = 64);

-- Private parts of revisions of format 2. A redacted one has lost values and its salt: with the salt left, the values
-- could be guessed from the digest.
CREATE TABLE private_parts (
    sequence INTEGER PRIMARY KEY REFERENCES revisions (sequence),
    salt     TEXT    NOT NULL,
    author   TEXT    NOT NULL,
    note     TEXT    NOT NULL,
    id       TEXT,
    fields   TEXT    NOT NULL CHECK (json_valid(fields)),
    redacted INTEGER NOT NULL DEFAULT 0 CHECK (redacted = 0 OR redacted = 1 AND salt = '')
) STRICT;

-- What the first revision of format 2 commits to: one row for each revision of format 1 before it. `pointers` says which
-- members (RFC 6901) are its private part; the values stand in the revision's row.
CREATE TABLE earlier_parts (
    sequence       INTEGER PRIMARY KEY REFERENCES revisions (sequence),
    public_salt    TEXT NOT NULL,
    public_digest  TEXT NOT NULL CHECK (length(public_digest) = 64),
    private_salt   TEXT NOT NULL,
    private_digest TEXT NOT NULL CHECK (length(private_digest) = 64),
    pointers       TEXT NOT NULL CHECK (json_valid(pointers))
) STRICT;

-- The handle under which the revisions of a person stand. No part of the chain; goes when the person is erased.
CREATE TABLE handles (
    kind   TEXT NOT NULL,
    id     TEXT NOT NULL,
    handle TEXT NOT NULL UNIQUE,
    PRIMARY KEY (kind, id)
) STRICT, WITHOUT ROWID;

-- The newest revision of a record as one text, where it has a private part, so that reading stays one look-up. Derived.
CREATE TABLE current_texts (
    sequence INTEGER PRIMARY KEY REFERENCES revisions (sequence),
    record   TEXT NOT NULL CHECK (json_valid(record))
) STRICT;

-- Which revisions an erasure names, and whether it has been carried out. Taken from the records of kind 'erasure'.
CREATE TABLE erased (
    sequence INTEGER NOT NULL REFERENCES revisions (sequence),
    erasure  INTEGER NOT NULL REFERENCES revisions (sequence),
    done     INTEGER NOT NULL DEFAULT 0 CHECK (done IN (0, 1)),
    PRIMARY KEY (sequence, erasure)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER erasures_stand_in_the_ledger
BEFORE INSERT ON erased
WHEN NEW.done <> 0
    OR NOT EXISTS (
        SELECT 1
        FROM revisions AS r, json_each(r.record, '$.sequences') AS named
        WHERE r.sequence = NEW.erasure AND r.kind = 'erasure' AND named.value = NEW.sequence)
    OR EXISTS (SELECT 1 FROM erased WHERE sequence = NEW.sequence AND erasure = NEW.erasure)
BEGIN
    SELECT RAISE(ABORT, 'Nothing is erased that no erasure in the ledger names');
END;

CREATE TRIGGER erasures_are_never_changed
BEFORE UPDATE ON erased
WHEN NOT (NEW.sequence = OLD.sequence AND NEW.erasure = OLD.erasure AND OLD.done = 0 AND NEW.done = 1)
BEGIN
    SELECT RAISE(ABORT, 'An erasure is carried out once and never changed');
END;

CREATE TRIGGER erasures_are_never_deleted
BEFORE DELETE ON erased
BEGIN
    SELECT RAISE(ABORT, 'An erasure is never deleted');
END;

-- The one way past this trigger: the text of a revision of format 1 that an erasure not yet carried out names.
DROP TRIGGER revisions_are_never_changed;
CREATE TRIGGER revisions_are_never_changed
BEFORE UPDATE ON revisions
WHEN NOT (
    OLD.format = 1
    AND NEW.format = 1
    AND NEW.redacted = 1
    AND NEW.sequence = OLD.sequence
    AND NEW.kind = OLD.kind
    AND NEW.version = OLD.version
    AND NEW.act = OLD.act
    AND NEW.written_at = OLD.written_at
    AND NEW.previous_hash = OLD.previous_hash
    AND NEW.hash = OLD.hash
    AND EXISTS (SELECT 1 FROM erased WHERE sequence = OLD.sequence AND done = 0))
BEGIN
    SELECT RAISE(ABORT, 'A revision is never changed; save a new one');
END;

-- The format never goes back.
CREATE TRIGGER revisions_keep_to_format_2
BEFORE INSERT ON revisions
WHEN NEW.format < (SELECT format FROM revisions ORDER BY sequence DESC LIMIT 1)
    OR NEW.redacted <> 0
BEGIN
    SELECT RAISE(ABORT, 'After a revision of format 2 none of format 1 is added');
END;

CREATE TRIGGER private_parts_are_only_added
BEFORE INSERT ON private_parts
WHEN NEW.sequence IS NOT (SELECT max(sequence) FROM revisions)
    OR NEW.redacted <> 0
    OR EXISTS (SELECT 1 FROM private_parts WHERE sequence = NEW.sequence)
BEGIN
    SELECT RAISE(ABORT, 'A private part is only added with its revision');
END;

CREATE TRIGGER private_parts_are_only_redacted
BEFORE UPDATE ON private_parts
WHEN NEW.sequence <> OLD.sequence
    OR NEW.redacted <> 1
    OR NOT EXISTS (SELECT 1 FROM erased WHERE sequence = OLD.sequence AND done = 0)
BEGIN
    SELECT RAISE(ABORT, 'A private part is changed only by an erasure that names its revision');
END;

CREATE TRIGGER private_parts_are_only_erased
BEFORE DELETE ON private_parts
WHEN NOT EXISTS (SELECT 1 FROM erased WHERE sequence = OLD.sequence AND done = 0)
BEGIN
    SELECT RAISE(ABORT, 'A private part is deleted only by an erasure that names its revision');
END;

CREATE TRIGGER earlier_parts_are_only_added
BEFORE INSERT ON earlier_parts
WHEN EXISTS (SELECT 1 FROM earlier_parts WHERE sequence = NEW.sequence)
    OR (SELECT format FROM revisions ORDER BY sequence DESC LIMIT 1) <> 1
BEGIN
    SELECT RAISE(ABORT, 'Revisions of format 1 are committed to once, before the first of format 2');
END;

CREATE TRIGGER earlier_parts_only_lose_a_salt
BEFORE UPDATE ON earlier_parts
WHEN NOT (
    NEW.sequence = OLD.sequence
    AND NEW.public_salt = OLD.public_salt
    AND NEW.public_digest = OLD.public_digest
    AND NEW.private_digest = OLD.private_digest
    AND NEW.pointers = OLD.pointers
    AND NEW.private_salt = ''
    AND EXISTS (SELECT 1 FROM erased WHERE sequence = OLD.sequence AND done = 0))
BEGIN
    SELECT RAISE(ABORT, 'What a revision of format 1 is committed to is never changed');
END;

CREATE TRIGGER earlier_parts_are_never_deleted
BEFORE DELETE ON earlier_parts
BEGIN
    SELECT RAISE(ABORT, 'What a revision of format 1 is committed to is never deleted');
END;

-- As before for people with an SQLite shell; the record's two parts as one.
DROP VIEW newest;
CREATE VIEW newest AS
SELECT
    c.kind,
    c.id,
    r.version,
    r.sequence,
    r.written_at,
    coalesce(p.author, r.author) AS author,
    coalesce(t.record, r.record) AS record
FROM current AS c
JOIN revisions AS r ON r.sequence = c.sequence
LEFT JOIN private_parts AS p ON p.sequence = c.sequence
LEFT JOIN current_texts AS t ON t.sequence = c.sequence
WHERE r.act = 'save';
