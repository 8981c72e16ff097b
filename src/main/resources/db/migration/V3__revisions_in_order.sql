-- INSERT OR REPLACE deletes the row in its way without asking the trigger on DELETE (SQLite asks it only with
-- `recursive_triggers` on). So an insert is refused too, unless it adds the next sequence and stands in nobody's place.
CREATE TRIGGER revisions_are_only_added
BEFORE INSERT ON revisions
WHEN NEW.sequence IS NOT (SELECT coalesce(max(sequence), 0) + 1 FROM revisions)
    OR EXISTS (SELECT 1 FROM revisions WHERE hash = NEW.hash)
    OR EXISTS (SELECT 1 FROM revisions WHERE kind = NEW.kind AND id = NEW.id AND version = NEW.version)
BEGIN
    SELECT RAISE(ABORT, 'A revision is only added after the last one, never put in the place of another');
END;
