-- Ordinary columns for loans and consignments and for their pieces, for people with an SQLite shell.
CREATE VIEW agreements AS
SELECT
    id,
    record ->> '$.kind'               AS kind,
    record ->> '$.party'              AS party,
    record ->> '$.purpose'            AS purpose,
    record ->> '$.agreed.entered'     AS agreed_on,
    record ->> '$.from.entered'       AS begins,
    record ->> '$.until.entered'      AS ends,
    record ->> '$.insurer'            AS insurer,
    record ->> '$.commission.entered' AS commission,
    coalesce(json_array_length(record, '$.pieces'), 0) AS pieces,
    record ->> '$.terms'              AS terms,
    record ->> '$.notes'              AS notes,
    written_at
FROM newest
WHERE kind = 'agreement';

CREATE VIEW agreement_pieces AS
SELECT
    n.id                                AS agreement,
    agreed.value ->> '$.piece'          AS number,
    agreed.value ->> '$.value.amount'   AS value,
    agreed.value ->> '$.value.currency' AS currency,
    agreed.value ->> '$.theirNumber'    AS their_number,
    agreed.value ->> '$.note'           AS note
FROM newest AS n, json_each(n.record, '$.pieces') AS agreed
WHERE n.kind = 'agreement';
