-- Searches that a person keeps under a name. No fact about a piece, so no part of the chain; renamed and removed freely.
-- Unlike drafts they are packed: a draft is half a sentence, a saved search was meant to be kept.
-- The question is stored as it stands in the address, words and parameters, and is read anew whenever it is shown.
-- At most one removed search is kept, so that it can be brought back.
CREATE TABLE saved_searches (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    name       TEXT NOT NULL CHECK (name <> ''),
    question   TEXT NOT NULL,
    saved_at   TEXT NOT NULL,
    removed_at TEXT
) STRICT;

CREATE UNIQUE INDEX saved_searches_by_name ON saved_searches (name) WHERE removed_at IS NULL;
