-- Ordinary columns for people with an SQLite shell: one view per kind of record.
CREATE VIEW newest AS
SELECT r.kind, r.id, r.version, r.sequence, r.written_at, r.author, r.record
FROM current AS c
JOIN revisions AS r ON r.sequence = c.sequence
WHERE r.act = 'save';

CREATE VIEW board_pairs AS
SELECT
    id,
    record ->> '$.image'            AS image,
    record ->> '$.wood'             AS wood,
    record ->> '$.length.entered'   AS length,
    record ->> '$.width.entered'    AS width,
    json_array_length(record, '$.states') AS states,
    record ->> '$.kept'             AS kept,
    record ->> '$.notes'            AS notes,
    written_at
FROM newest
WHERE kind = 'board-pair';

CREATE VIEW cloths AS
SELECT
    id,
    record ->> '$.name'                AS name,
    record ->  '$.content'             AS content,
    record ->> '$.arealWeight.entered' AS areal_weight,
    record ->> '$.width.entered'       AS width,
    record ->> '$.lot'                 AS lot,
    record ->> '$.supplier'            AS supplier,
    record ->> '$.notes'               AS notes,
    written_at
FROM newest
WHERE kind = 'cloth';

CREATE VIEW lots AS
SELECT
    id,
    record ->> '$.role'     AS role,
    record ->> '$.name'     AS name,
    record ->> '$.source'   AS source,
    record ->> '$.organism' AS organism,
    record ->> '$.lot'      AS lot,
    record ->> '$.supplier' AS supplier,
    record ->> '$.notes'    AS notes,
    written_at
FROM newest
WHERE kind = 'lot';

CREATE VIEW parties AS
SELECT id, record ->> '$.name' AS name, record ->> '$.kind' AS kind, record ->> '$.contact' AS contact, written_at
FROM newest
WHERE kind = 'party';

CREATE VIEW clampings AS
SELECT
    id,
    record ->> '$.title'        AS title,
    record ->> '$.when.entered' AS clamped_on,
    record ->  '$.boards'       AS boards,
    record ->  '$.cuts'         AS cuts,
    json_array_length(record, '$.steps') AS steps,
    record ->> '$.lesson'       AS lesson,
    record ->> '$.notes'        AS notes,
    written_at
FROM newest
WHERE kind = 'clamping';

CREATE VIEW pieces AS
SELECT
    id                              AS number,
    record ->> '$.title'            AS title,
    record ->> '$.category'         AS category,
    record ->> '$.length.entered'   AS length,
    record ->> '$.width.entered'    AS width,
    record ->> '$.finished.entered' AS finished,
    record ->> '$.edition'          AS edition,
    record ->> '$.status'           AS status,
    record ->> '$.holder'           AS holder,
    record ->> '$.place'            AS place,
    record ->> '$.price.amount'     AS price,
    record ->> '$.price.currency'   AS currency,
    json_array_length(record, '$.photos') AS photographs,
    record ->> '$.notes'            AS notes,
    written_at
FROM newest
WHERE kind = 'piece';

CREATE VIEW piece_clampings AS
SELECT
    n.id                             AS number,
    made.key + 1                     AS state,
    made.value ->> '$.clamping'      AS clamping,
    made.value ->> '$.layers.entered' AS layers
FROM newest AS n, json_each(n.record, '$.made') AS made
WHERE n.kind = 'piece';

CREATE VIEW photographs AS
SELECT
    id                            AS sha256,
    record ->> '$.originalName'   AS original_name,
    record ->> '$.mediaType'      AS media_type,
    record ->> '$.width'          AS width,
    record ->> '$.height'         AS height,
    record ->> '$.taken'          AS taken,
    record ->> '$.camera'         AS camera,
    record ->> '$.gps'            AS gps,
    written_at
FROM newest
WHERE kind = 'photo';
