"""The room's tables. Events are only ever added."""

SCHEMA_VERSION = 1

SCHEMA = """
CREATE TABLE IF NOT EXISTS about (key TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;
CREATE TABLE IF NOT EXISTS histories (
    history INTEGER PRIMARY KEY,
    bench TEXT NOT NULL,
    journal TEXT NOT NULL,
    contiguous INTEGER NOT NULL DEFAULT 0,
    digest TEXT NOT NULL DEFAULT '',
    first_heard TEXT NOT NULL,
    last_heard TEXT NOT NULL,
    turn INTEGER NOT NULL,
    UNIQUE (bench, journal)
) STRICT;
CREATE TABLE IF NOT EXISTS events (
    history INTEGER NOT NULL REFERENCES histories,
    seq INTEGER NOT NULL,
    boot TEXT NOT NULL,
    monotonic_s REAL NOT NULL,
    time_s REAL NOT NULL,
    wall TEXT NOT NULL,
    clock TEXT NOT NULL,
    kind TEXT NOT NULL,
    body TEXT NOT NULL CHECK (json_valid(body)),
    PRIMARY KEY (history, seq)
) STRICT, WITHOUT ROWID;
CREATE INDEX IF NOT EXISTS events_of_kind ON events (history, kind, seq) WHERE kind <> 'sample_taken';
CREATE TRIGGER IF NOT EXISTS events_stay BEFORE UPDATE ON events
BEGIN SELECT RAISE(ABORT, 'events are only added'); END;
CREATE TABLE IF NOT EXISTS names (bench TEXT PRIMARY KEY, name TEXT NOT NULL) STRICT;
CREATE TABLE IF NOT EXISTS orders (
    number INTEGER NOT NULL,
    bench TEXT NOT NULL,
    act TEXT NOT NULL CHECK (json_valid(act)),
    given TEXT NOT NULL,
    state TEXT NOT NULL DEFAULT 'pending' CHECK (state IN ('pending', 'taken', 'refused', 'superseded', 'withdrawn')),
    why TEXT,
    PRIMARY KEY (number, bench)
) STRICT, WITHOUT ROWID;
CREATE INDEX IF NOT EXISTS orders_pending ON orders (bench, number) WHERE state = 'pending';
CREATE TABLE IF NOT EXISTS lessons (
    lesson INTEGER PRIMARY KEY,
    label TEXT NOT NULL,
    began TEXT NOT NULL,
    ended TEXT
) STRICT;
CREATE TABLE IF NOT EXISTS practicals (
    lesson INTEGER NOT NULL REFERENCES lessons,
    bench TEXT NOT NULL,
    journal TEXT NOT NULL,
    seq INTEGER NOT NULL,
    PRIMARY KEY (bench, journal, seq)
) STRICT, WITHOUT ROWID;
"""
