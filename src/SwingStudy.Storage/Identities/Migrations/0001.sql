CREATE TABLE study_key (
    only INTEGER PRIMARY KEY CHECK (only = 1),
    key  BLOB NOT NULL
) STRICT;

CREATE TABLE people (
    participant TEXT PRIMARY KEY,
    name        TEXT,
    contact     TEXT
) STRICT;

CREATE TABLE aliases (
    normalized  TEXT PRIMARY KEY,
    alias       TEXT NOT NULL,
    participant TEXT NOT NULL
) STRICT;
