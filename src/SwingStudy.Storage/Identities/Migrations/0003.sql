CREATE TABLE originals_key (
    only       INTEGER PRIMARY KEY CHECK (only = 1),
    public_key BLOB NOT NULL,
    sealed     BLOB NOT NULL
) STRICT;
