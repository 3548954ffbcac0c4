CREATE TABLE protocol_versions (
    number      INTEGER PRIMARY KEY,
    hash        TEXT NOT NULL,
    version     TEXT NOT NULL,
    text        TEXT NOT NULL,
    comparisons TEXT NOT NULL,
    taken       TEXT NOT NULL,
    reason      TEXT,
    known       TEXT,
    actor       TEXT NOT NULL,
    at          TEXT NOT NULL,
    CHECK (number = 1 OR (reason IS NOT NULL AND known IS NOT NULL))
) STRICT;
CREATE TRIGGER protocol_versions_are_never_changed BEFORE UPDATE ON protocol_versions
BEGIN
    SELECT RAISE(ABORT, 'A locked protocol is never changed: amend it.');
END;
CREATE TRIGGER protocol_versions_are_never_removed BEFORE DELETE ON protocol_versions
BEGIN
    SELECT RAISE(ABORT, 'A locked protocol is never removed.');
END;

CREATE TABLE draws (
    number           INTEGER PRIMARY KEY,
    protocol_version INTEGER NOT NULL REFERENCES protocol_versions (number),
    kind             TEXT NOT NULL,
    seed             TEXT NOT NULL,
    is_joint         INTEGER NOT NULL,
    order_drawn      INTEGER NOT NULL,
    windows          TEXT NOT NULL,
    assignments      REAL NOT NULL,
    actor            TEXT NOT NULL,
    at               TEXT NOT NULL
) STRICT;

CREATE TABLE drawn_players (
    draw        INTEGER NOT NULL REFERENCES draws (number),
    participant TEXT NOT NULL REFERENCES participants (code),
    admissible  TEXT NOT NULL,
    assignment  TEXT NOT NULL,
    tier        INTEGER,
    phases      TEXT NOT NULL,
    PRIMARY KEY (draw, participant)
) STRICT;

CREATE TABLE masked_names (
    kind TEXT NOT NULL CHECK (kind IN ('phase', 'contrast', 'cue')),
    name TEXT NOT NULL,
    code TEXT NOT NULL,
    PRIMARY KEY (kind, name),
    UNIQUE (kind, code)
) STRICT;

CREATE TABLE unblindings (
    id     INTEGER PRIMARY KEY,
    reason TEXT NOT NULL,
    known  TEXT,
    actor  TEXT NOT NULL,
    at     TEXT NOT NULL
) STRICT;
CREATE TRIGGER unblindings_are_never_changed BEFORE UPDATE ON unblindings
BEGIN
    SELECT RAISE(ABORT, 'What was seen stays seen.');
END;
CREATE TRIGGER unblindings_are_never_removed BEFORE DELETE ON unblindings
BEGIN
    SELECT RAISE(ABORT, 'What was seen stays seen.');
END;
