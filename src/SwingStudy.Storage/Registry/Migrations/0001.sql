CREATE TABLE participants (
    code     TEXT PRIMARY KEY,
    status   TEXT NOT NULL,
    added_at TEXT NOT NULL
) STRICT;

CREATE TABLE consents (
    id          INTEGER PRIMARY KEY,
    participant TEXT NOT NULL REFERENCES participants (code),
    scope       TEXT NOT NULL,
    given       INTEGER NOT NULL,
    by_guardian INTEGER NOT NULL,
    at          TEXT NOT NULL,
    note        TEXT
) STRICT;

CREATE TABLE intake_files (
    sha256         TEXT PRIMARY KEY,
    source         TEXT,
    inbox_path     TEXT NOT NULL,
    size           INTEGER NOT NULL,
    status         TEXT NOT NULL CHECK (status IN ('taken', 'held', 'rejected')),
    lines_read     INTEGER NOT NULL,
    rows_taken     INTEGER NOT NULL,
    rows_rejected  INTEGER NOT NULL,
    lines_not_data INTEGER NOT NULL,
    mapping_hash   TEXT,
    encoding       TEXT,
    delimiter      TEXT,
    decimal_mark   TEXT,
    preamble       TEXT,
    hold_reasons   TEXT NOT NULL,
    details        TEXT,
    taken_at       TEXT NOT NULL,
    CHECK (status <> 'taken' OR lines_read = rows_taken + rows_rejected + lines_not_data)
) STRICT;

CREATE TABLE intake_duplicates (
    id         INTEGER PRIMARY KEY,
    sha256     TEXT NOT NULL REFERENCES intake_files (sha256),
    inbox_path TEXT NOT NULL,
    seen_at    TEXT NOT NULL
) STRICT;

CREATE TABLE sessions (
    id              TEXT PRIMARY KEY,
    participant     TEXT NOT NULL REFERENCES participants (code),
    started_at      TEXT NOT NULL,
    started_local   TEXT NOT NULL,
    phase           TEXT,
    site            TEXT,
    club            TEXT,
    ball            TEXT,
    surface         TEXT,
    cue             TEXT,
    planned_swings  INTEGER,
    variables       TEXT NOT NULL,
    note            TEXT,
    original_sha256 TEXT,
    original_row    INTEGER,
    revision        INTEGER NOT NULL
) STRICT;
CREATE INDEX sessions_by_participant ON sessions (participant, started_at);

CREATE TABLE session_revisions (
    id         TEXT NOT NULL,
    revision   INTEGER NOT NULL,
    document   TEXT NOT NULL,
    PRIMARY KEY (id, revision)
) STRICT;

CREATE TABLE decisions (
    id      INTEGER PRIMARY KEY,
    kind    TEXT NOT NULL,
    subject TEXT NOT NULL,
    reason  TEXT NOT NULL,
    actor   TEXT NOT NULL,
    at      TEXT NOT NULL
) STRICT;

CREATE TABLE stage_runs (
    id           INTEGER PRIMARY KEY,
    run_id       TEXT NOT NULL,
    stage        TEXT NOT NULL,
    unit         TEXT NOT NULL,
    input_hash   TEXT NOT NULL,
    outputs      TEXT NOT NULL,
    code_version TEXT NOT NULL,
    started_at   TEXT NOT NULL,
    finished_at  TEXT NOT NULL
) STRICT;
CREATE INDEX stage_runs_by_unit ON stage_runs (stage, unit, id);

CREATE TABLE ledger (
    number   INTEGER PRIMARY KEY,
    at       TEXT NOT NULL,
    actor    TEXT NOT NULL,
    act      TEXT NOT NULL,
    details  TEXT NOT NULL,
    previous TEXT NOT NULL,
    hash     TEXT NOT NULL
) STRICT;
CREATE TRIGGER ledger_is_never_changed BEFORE UPDATE ON ledger
BEGIN
    SELECT RAISE(ABORT, 'The ledger is append-only.');
END;
CREATE TRIGGER ledger_is_never_shortened BEFORE DELETE ON ledger
BEGIN
    SELECT RAISE(ABORT, 'The ledger is append-only.');
END;
