CREATE TABLE alias_hashes (
    hash        TEXT PRIMARY KEY,
    participant TEXT NOT NULL,
    words       INTEGER NOT NULL,
    alias       TEXT,
    sealed      BLOB
) STRICT;

CREATE TABLE erased (
    hash TEXT PRIMARY KEY
) STRICT;

CREATE TABLE vault (
    only        INTEGER PRIMARY KEY CHECK (only = 1),
    salt        BLOB NOT NULL,
    memory_kib  INTEGER NOT NULL,
    passes      INTEGER NOT NULL,
    wrapped_key BLOB NOT NULL
) STRICT;
CREATE TABLE vault_keys (
    participant TEXT PRIMARY KEY,
    wrapped_key BLOB NOT NULL
) STRICT;
ALTER TABLE people ADD COLUMN sealed BLOB;
