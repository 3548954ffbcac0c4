-- What the stop rules of the protocol were last held against, player by player: what is unchanged is not read again.
CREATE TABLE watched (
    participant TEXT PRIMARY KEY,
    input_hash  TEXT NOT NULL
) STRICT;
