CREATE TABLE person_facts (
    participant TEXT NOT NULL REFERENCES participants (code),
    variable    TEXT NOT NULL,
    value       TEXT NOT NULL,
    PRIMARY KEY (participant, variable)
) STRICT;

CREATE TABLE consents_signed (
    id          INTEGER PRIMARY KEY,
    participant TEXT NOT NULL REFERENCES participants (code),
    scope       TEXT NOT NULL,
    given       INTEGER NOT NULL,
    signer      TEXT NOT NULL CHECK (signer IN ('participant', 'guardian', 'assent')),
    at          TEXT NOT NULL,
    version     TEXT,
    language    TEXT,
    signed_on   TEXT,
    taken_by    TEXT,
    note        TEXT
) STRICT;
INSERT INTO consents_signed (id, participant, scope, given, signer, at, note)
SELECT id, participant, CASE scope WHEN 'study' THEN 'research' WHEN 'reuse' THEN 'sharing' ELSE scope END, given,
       CASE by_guardian WHEN 1 THEN 'guardian' ELSE 'participant' END, at, note
FROM consents WHERE scope IN ('study', 'reuse', 'coaching', 'research', 'sharing', 'video', 're-contact');
DROP TABLE consents;
ALTER TABLE consents_signed RENAME TO consents;

CREATE TABLE withdrawals (
    participant TEXT PRIMARY KEY REFERENCES participants (code),
    earlier     TEXT NOT NULL CHECK (earlier IN ('keep', 'leave-out')),
    at          TEXT NOT NULL,
    actor       TEXT NOT NULL,
    note        TEXT
) STRICT;

-- What the ledger holds of a person are keyed hashes. Key and text stand here, and erasing the person takes both away.
CREATE TABLE person_keys (
    participant TEXT PRIMARY KEY,
    key         BLOB NOT NULL
) STRICT;
CREATE TABLE sealed_texts (
    hash        TEXT NOT NULL,
    participant TEXT NOT NULL,
    text        TEXT NOT NULL,
    PRIMARY KEY (hash, participant)
) STRICT;

CREATE TABLE session_entries (
    id          INTEGER PRIMARY KEY,
    session     TEXT NOT NULL,
    participant TEXT NOT NULL REFERENCES participants (code),
    kind        TEXT NOT NULL CHECK (kind IN ('note', 'ratings', 'asked', 'incident', 'follow-up')),
    at          TEXT NOT NULL,
    actor       TEXT NOT NULL,
    document    TEXT NOT NULL
) STRICT;
CREATE INDEX session_entries_by_session ON session_entries (session, at);

CREATE TABLE stops (
    id             INTEGER PRIMARY KEY,
    session        TEXT NOT NULL,
    participant    TEXT NOT NULL REFERENCES participants (code),
    evidence       TEXT NOT NULL,
    rule           TEXT NOT NULL,
    detail         TEXT NOT NULL,
    at             TEXT NOT NULL,
    resumed_at     TEXT,
    resumed_by     TEXT,
    resumed_reason TEXT,
    UNIQUE (session, evidence)
) STRICT;

CREATE TABLE erasures (
    id          TEXT PRIMARY KEY,
    started_at  TEXT NOT NULL,
    finished_at TEXT,
    document    TEXT NOT NULL
) STRICT;
CREATE TABLE erased_originals (
    sha256  TEXT PRIMARY KEY,
    stored  TEXT,
    erasure TEXT NOT NULL REFERENCES erasures (id)
) STRICT;
