-- The letter that a task asks for, so that its answer is not awaited before there is anything to ask.
-- oldest readable version: 4
--
-- Stored steps are let go: they tell of tasks without the column.

ALTER TABLE task ADD COLUMN asks_id INTEGER REFERENCES letter (id) DEFERRABLE INITIALLY DEFERRED;

CREATE INDEX task_asks_id ON task (asks_id) WHERE asks_id IS NOT NULL;

UPDATE step SET state = 'kept', changeset = NULL WHERE changeset IS NOT NULL;
