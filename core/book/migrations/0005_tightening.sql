-- A threshold of one's own that is tighter than the published one needs no reason; that a looser one
-- has its reason is a rule of the program, which knows the published values.
-- oldest readable version: 5
--
-- The table is rebuilt, for a CHECK cannot be altered; its columns are the same, and stored steps
-- fit.

CREATE TABLE own_threshold_new (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    value_number REAL NOT NULL,
    value_unit TEXT NOT NULL,
    reason TEXT NOT NULL DEFAULT ''
) STRICT;

INSERT INTO own_threshold_new (id, key, name, value_number, value_unit, reason)
SELECT id, key, name, value_number, value_unit, reason FROM own_threshold;

DROP TABLE own_threshold;

ALTER TABLE own_threshold_new RENAME TO own_threshold;
