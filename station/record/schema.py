"""The journal's table and the triggers that keep it append-only."""

SCHEMA_VERSION = 1

SCHEMA = """
CREATE TABLE IF NOT EXISTS events (
    seq INTEGER PRIMARY KEY,
    boot TEXT NOT NULL,
    monotonic_s REAL NOT NULL,
    time_s REAL NOT NULL,
    wall TEXT NOT NULL,
    clock TEXT NOT NULL,
    kind TEXT NOT NULL,
    body TEXT NOT NULL CHECK (json_valid(body)),
    digest BLOB NOT NULL
) STRICT;
CREATE INDEX IF NOT EXISTS events_of_kind ON events (kind, seq) WHERE kind <> 'sample_taken';
CREATE TRIGGER IF NOT EXISTS events_append BEFORE INSERT ON events
WHEN NEW.seq IS NOT (SELECT coalesce(max(seq), 0) + 1 FROM events)
BEGIN SELECT RAISE(ABORT, 'the journal is append-only: the next event has the next number'); END;
CREATE TRIGGER IF NOT EXISTS events_stay BEFORE UPDATE ON events
BEGIN SELECT RAISE(ABORT, 'the journal is append-only: write a correction instead'); END;
CREATE TRIGGER IF NOT EXISTS events_last BEFORE DELETE ON events
BEGIN SELECT RAISE(ABORT, 'the journal is append-only: nothing is deleted'); END;
"""
