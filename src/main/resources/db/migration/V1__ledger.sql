-- The ledger: every save is a new revision, chained to the one before it by SHA-256, and never changed.
-- What `hash` covers, and how a stranger can recompute it, is told in DEVELOPERS.md, "The chain".
CREATE TABLE revisions (
    sequence      INTEGER PRIMARY KEY,
    kind          TEXT    NOT NULL CHECK (kind <> ''),
    id            TEXT    NOT NULL CHECK (id <> ''),
    version       INTEGER NOT NULL CHECK (version >= 1),
    act           TEXT    NOT NULL CHECK (act IN ('save', 'withdraw')),
    record        TEXT    NOT NULL CHECK (json_valid(record)),
    written_at    TEXT    NOT NULL CHECK (written_at GLOB '????-??-??T??:??:??*Z'),
    author        TEXT    NOT NULL,
    note          TEXT    NOT NULL,
    previous_hash TEXT    NOT NULL CHECK (length(previous_hash) = 64),
    hash          TEXT    NOT NULL UNIQUE CHECK (length(hash) = 64),
    UNIQUE (kind, id, version)
) STRICT;

CREATE TRIGGER revisions_are_never_changed
BEFORE UPDATE ON revisions
BEGIN
    SELECT RAISE(ABORT, 'A revision is never changed; save a new one');
END;

CREATE TRIGGER revisions_are_never_deleted
BEFORE DELETE ON revisions
BEGIN
    SELECT RAISE(ABORT, 'A revision is never deleted');
END;

-- The newest revision of each thing. Can be rebuilt from `revisions`; `check` compares the two.
CREATE TABLE current (
    kind     TEXT    NOT NULL,
    id       TEXT    NOT NULL,
    sequence INTEGER NOT NULL UNIQUE REFERENCES revisions (sequence),
    PRIMARY KEY (kind, id)
) STRICT, WITHOUT ROWID;

-- Which record names which, from current records only: a board in use cannot vanish.
CREATE TABLE reference (
    from_kind TEXT NOT NULL,
    from_id   TEXT NOT NULL,
    to_kind   TEXT NOT NULL,
    to_id     TEXT NOT NULL,
    PRIMARY KEY (from_kind, from_id, to_kind, to_id),
    FOREIGN KEY (from_kind, from_id) REFERENCES current (kind, id) DEFERRABLE INITIALLY DEFERRED,
    FOREIGN KEY (to_kind, to_id) REFERENCES current (kind, id) DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

CREATE INDEX reference_by_target ON reference (to_kind, to_id);

-- What a person has typed and not yet saved. No part of the ledger: changed and deleted freely.
CREATE TABLE drafts (
    name     TEXT NOT NULL PRIMARY KEY,
    body     TEXT NOT NULL,
    saved_at TEXT NOT NULL
) STRICT;
