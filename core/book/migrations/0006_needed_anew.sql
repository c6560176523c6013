-- What an attempt uses up is needed anew when the work is done again after a failed test.
-- oldest readable version: 6

ALTER TABLE task_need ADD COLUMN each_time INTEGER CHECK (each_time IN (0, 1));
