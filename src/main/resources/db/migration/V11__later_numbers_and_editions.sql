-- A piece may be given another number; every number it had leads to it and is never given again. Looked up among all revisions
-- ever written, of which few have any, so the index is small. Nothing here is stored twice, and the chain is as before.
CREATE INDEX revisions_with_later_numbers ON revisions (kind) WHERE record ->> '$.laterNumbers' IS NOT NULL;
-- Likewise the pieces that belong to an edition or a set.
CREATE INDEX revisions_with_edition_name ON revisions (kind) WHERE record ->> '$.editionName' IS NOT NULL;
