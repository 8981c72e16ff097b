-- The maker's own words for what is recorded, which questions are read by. No fact about a piece and no part of the ledger: changed and
-- deleted freely, and packed with the archive.
CREATE TABLE own_words (
    place INTEGER NOT NULL,
    word  TEXT    NOT NULL PRIMARY KEY CHECK (word <> ''),
    means TEXT    NOT NULL CHECK (means <> '')
) STRICT;
