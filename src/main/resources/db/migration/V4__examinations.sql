-- Ordinary columns for examinations and for what was seen in them, for people with an SQLite shell.
CREATE VIEW examinations AS
SELECT
    id,
    record ->> '$.piece'        AS number,
    record ->> '$.when.entered' AS examined_on,
    record ->> '$.reason'       AS reason,
    record ->> '$.examiner'     AS examiner,
    record ->> '$.party'        AS party,
    record ->> '$.overall'      AS overall,
    record ->> '$.summary'      AS summary,
    record ->> '$.earlier'      AS earlier,
    json_array_length(record, '$.observations') AS observations,
    written_at
FROM newest
WHERE kind = 'examination';

CREATE VIEW examination_observations AS
SELECT
    n.id                               AS examination,
    n.record ->> '$.piece'             AS number,
    seen.value ->> '$.number'          AS observation,
    seen.value ->> '$.what'            AS what,
    seen.value ->> '$.zone'            AS zone,
    seen.value ->> '$.extent.entered'  AS extent,
    seen.value ->> '$.severity'        AS severity,
    seen.value ->> '$.stability'       AS stability,
    seen.value ->> '$.standing'        AS standing,
    seen.value ->> '$.note'            AS note
FROM newest AS n, json_each(n.record, '$.observations') AS seen
WHERE n.kind = 'examination';
