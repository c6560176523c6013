-- Engineering: figures, curves and thresholds of the checks, interfaces and wires, safety systems,
-- work permits, guided tests; what a part does, the load of a vehicle, a need to be able to talk.
-- oldest readable version: 2
--
-- Three tables are rebuilt, for a CHECK cannot be altered; the runner switches foreign keys off for
-- a migration and looks through them before it commits. Stored steps do not fit the new tables.

ALTER TABLE part ADD COLUMN role TEXT CHECK (role IN (
        'motor', 'inverter', 'gearbox', 'charger', 'DC-DC converter', 'contactor',
        'precharge resistor', 'discharge resistor', 'fuse', 'disconnect', 'heater', 'compressor',
        'pump', 'radiator', 'battery monitor', 'auxiliary battery', 'charge inlet', 'battery box',
        'coupling', 'bay'));

CREATE TABLE interface (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    part_id INTEGER NOT NULL REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    other_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    state TEXT NOT NULL CHECK (state IN ('to find out', 'understood', 'talks')),
    connector TEXT NOT NULL DEFAULT '',
    mate TEXT NOT NULL DEFAULT '',
    bus TEXT NOT NULL DEFAULT '',
    messages TEXT NOT NULL DEFAULT '',
    wake_signal TEXT NOT NULL DEFAULT '',
    position_sensor TEXT NOT NULL DEFAULT '',
    firmware TEXT NOT NULL DEFAULT '',
    parameter_file TEXT NOT NULL DEFAULT '',
    parameter_sha256 TEXT NOT NULL DEFAULT ''
        CHECK (parameter_sha256 = '' OR length(parameter_sha256) = 64),
    pairing TEXT NOT NULL DEFAULT '',
    talked_on TEXT CHECK (talked_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE interface_pin (
    id INTEGER PRIMARY KEY NOT NULL,
    interface_id INTEGER NOT NULL REFERENCES interface (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    pin TEXT NOT NULL CHECK (pin <> ''),
    signal TEXT NOT NULL DEFAULT '',
    note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE work_permit (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    gloves_tested_on TEXT CHECK (gloves_tested_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    gloves_valid_until TEXT CHECK (gloves_valid_until GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    wait_minutes INTEGER CHECK (wait_minutes BETWEEN 0 AND 100000),
    locked_off INTEGER NOT NULL CHECK (locked_off IN (0, 1)),
    absence_proven_on TEXT CHECK (absence_proven_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    absence_reading_number REAL,
    absence_reading_unit TEXT,
    instrument TEXT NOT NULL DEFAULT '',
    worked_by TEXT NOT NULL DEFAULT '',
    second_person TEXT NOT NULL DEFAULT '',
    closed_on TEXT CHECK (closed_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    note TEXT NOT NULL DEFAULT '',
    CHECK ((absence_reading_number IS NULL) = (absence_reading_unit IS NULL))
) STRICT;

CREATE TABLE task_need_new (
    id INTEGER PRIMARY KEY NOT NULL,
    task_id INTEGER NOT NULL REFERENCES task (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN (
        'task', 'part', 'figure', 'tool', 'consumable', 'money', 'service', 'test', 'letter',
        'person', 'permit', 'interface')),
    after_id INTEGER REFERENCES task (id) DEFERRABLE INITIALLY DEFERRED,
    part_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    state TEXT CHECK (state IN (
        'wanted', 'ordered', 'in hand', 'tested', 'fitted', 'returned', 'sold', 'scrapped',
        'quarantined')),
    quantity TEXT CHECK (quantity IN (
        'voltage', 'current', 'power', 'energy', 'capacity', 'resistance', 'capacitance',
        'isolation resistance', 'breaking capacity', 'cross-section', 'torque', 'rotation speed',
        'temperature', 'pressure', 'flow', 'mass', 'length', 'width', 'height', 'cells in series',
        'ratio', 'frequency')),
    basis TEXT CHECK (basis IN ('continuous', 'peak', 'least', 'nominal')),
    amount_number REAL,
    amount_unit TEXT,
    money_minor INTEGER,
    money_currency TEXT CHECK (length(money_currency) = 3),
    test_id INTEGER REFERENCES test_record (id) DEFERRABLE INITIALLY DEFERRED,
    letter_id INTEGER REFERENCES letter (id) DEFERRABLE INITIALLY DEFERRED,
    interface_id INTEGER REFERENCES interface (id) DEFERRABLE INITIALLY DEFERRED,
    permit_id INTEGER REFERENCES work_permit (id) DEFERRABLE INITIALLY DEFERRED,
    what TEXT NOT NULL DEFAULT '',
    met_on TEXT CHECK (met_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    CHECK ((amount_number IS NULL) = (amount_unit IS NULL)),
    CHECK ((money_minor IS NULL) = (money_currency IS NULL))
) STRICT;
INSERT INTO task_need_new (
    id, task_id, position, kind, after_id, part_id, state, quantity, basis, amount_number,
    amount_unit, money_minor, money_currency, test_id, letter_id, what, met_on)
SELECT
    id, task_id, position, kind, after_id, part_id, state, quantity, basis, amount_number,
    amount_unit, money_minor, money_currency, test_id, letter_id, what, met_on
FROM task_need;
DROP TABLE task_need;
ALTER TABLE task_need_new RENAME TO task_need;

CREATE TABLE test_record_new (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    kind TEXT NOT NULL CHECK (kind IN (
        'isolation', 'bonding', 'torque', 'precharge', 'brakes', 'charging', 'coolant', 'other',
        'first power-up')),
    part_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    circuit_id INTEGER REFERENCES circuit (id) DEFERRABLE INITIALLY DEFERRED,
    method TEXT NOT NULL DEFAULT '',
    limit_text TEXT NOT NULL DEFAULT '',
    limit_value_number REAL,
    limit_value_unit TEXT,
    value_number REAL,
    value_unit TEXT,
    instrument TEXT NOT NULL DEFAULT '',
    done_by TEXT NOT NULL DEFAULT '',
    done_on TEXT CHECK (done_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    result TEXT NOT NULL CHECK (result IN ('open', 'passed', 'failed')),
    note TEXT NOT NULL DEFAULT '',
    CHECK ((limit_value_number IS NULL) = (limit_value_unit IS NULL)),
    CHECK ((value_number IS NULL) = (value_unit IS NULL))
) STRICT;
INSERT INTO test_record_new (
    id, key, name, kind, part_id, method, limit_text, limit_value_number, limit_value_unit,
    value_number, value_unit, instrument, done_by, done_on, result, note)
SELECT
    id, key, name, kind, part_id, method, limit_text, limit_value_number, limit_value_unit,
    value_number, value_unit, instrument, done_by, done_on, result, note
FROM test_record;
DROP TABLE test_record;
ALTER TABLE test_record_new RENAME TO test_record;

CREATE TABLE test_step (
    id INTEGER PRIMARY KEY NOT NULL,
    test_id INTEGER NOT NULL REFERENCES test_record (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    name TEXT NOT NULL CHECK (name <> ''),
    expected TEXT NOT NULL DEFAULT '',
    stop_if TEXT NOT NULL DEFAULT '',
    seen TEXT NOT NULL DEFAULT '',
    result TEXT NOT NULL CHECK (result IN ('open', 'passed', 'failed'))
) STRICT;

CREATE TABLE mass_entry_new (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    direction TEXT NOT NULL CHECK (direction IN ('out', 'in', 'load')),
    mass_number REAL,
    mass_unit TEXT,
    behind_front_axle_number REAL,
    behind_front_axle_unit TEXT,
    height_number REAL,
    height_unit TEXT,
    part_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    evidence TEXT NOT NULL CHECK (evidence IN (
        'datasheet', 'nameplate', 'service manual', 'measured', 'seller', 'community', 'assumed')),
    note TEXT NOT NULL DEFAULT '',
    CHECK ((mass_number IS NULL) = (mass_unit IS NULL)),
    CHECK ((behind_front_axle_number IS NULL) = (behind_front_axle_unit IS NULL)),
    CHECK ((height_number IS NULL) = (height_unit IS NULL))
) STRICT;
INSERT INTO mass_entry_new (
    id, key, name, direction, mass_number, mass_unit, behind_front_axle_number,
    behind_front_axle_unit, part_id, evidence, note)
SELECT
    id, key, name, direction, mass_number, mass_unit, behind_front_axle_number,
    behind_front_axle_unit, part_id, evidence, note
FROM mass_entry;
DROP TABLE mass_entry;
ALTER TABLE mass_entry_new RENAME TO mass_entry;

CREATE TABLE check_figure (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    figure TEXT NOT NULL CHECK (figure <> ''),
    circuit_id INTEGER REFERENCES circuit (id) DEFERRABLE INITIALLY DEFERRED,
    branch_id INTEGER REFERENCES branch (id) DEFERRABLE INITIALLY DEFERRED,
    part_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    type_id INTEGER REFERENCES part_type (id) DEFERRABLE INITIALLY DEFERRED,
    test_id INTEGER REFERENCES test_record (id) DEFERRABLE INITIALLY DEFERRED,
    value_number REAL,
    value_unit TEXT,
    word TEXT NOT NULL DEFAULT '',
    evidence TEXT NOT NULL CHECK (evidence IN (
        'datasheet', 'nameplate', 'service manual', 'measured', 'seller', 'community', 'assumed')),
    source TEXT NOT NULL DEFAULT '',
    dated TEXT CHECK (dated GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    note TEXT NOT NULL DEFAULT '',
    CHECK ((value_number IS NULL) = (value_unit IS NULL)),
    CHECK (value_number IS NULL OR word = ''),
    CHECK ((circuit_id IS NOT NULL) + (branch_id IS NOT NULL) + (part_id IS NOT NULL)
        + (type_id IS NOT NULL) + (test_id IS NOT NULL) <= 1)
) STRICT;

CREATE TABLE rated_curve (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    kind TEXT NOT NULL CHECK (kind IN (
        'open-circuit voltage', 'motor torque', 'charge limit', 'discharge limit',
        'braking limit')),
    part_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    type_id INTEGER REFERENCES part_type (id) DEFERRABLE INITIALLY DEFERRED,
    evidence TEXT NOT NULL CHECK (evidence IN (
        'datasheet', 'nameplate', 'service manual', 'measured', 'seller', 'community', 'assumed')),
    source TEXT NOT NULL DEFAULT '',
    dated TEXT CHECK (dated GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    note TEXT NOT NULL DEFAULT '',
    CHECK ((part_id IS NOT NULL) + (type_id IS NOT NULL) = 1)
) STRICT;

CREATE TABLE curve_point (
    id INTEGER PRIMARY KEY NOT NULL,
    curve_id INTEGER NOT NULL REFERENCES rated_curve (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    along_number REAL NOT NULL,
    along_unit TEXT NOT NULL,
    up_number REAL NOT NULL,
    up_unit TEXT NOT NULL
) STRICT;

CREATE TABLE own_threshold (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    value_number REAL NOT NULL,
    value_unit TEXT NOT NULL,
    reason TEXT NOT NULL CHECK (reason <> '')
) STRICT;

CREATE TABLE wire (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    signal TEXT NOT NULL DEFAULT '',
    from_part_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    from_pin TEXT NOT NULL DEFAULT '',
    to_part_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    to_pin TEXT NOT NULL DEFAULT '',
    cross_section_number REAL,
    cross_section_unit TEXT,
    length_number REAL,
    length_unit TEXT,
    colour TEXT NOT NULL DEFAULT '',
    branch_id INTEGER REFERENCES branch (id) DEFERRABLE INITIALLY DEFERRED,
    fitted INTEGER NOT NULL CHECK (fitted IN (0, 1)),
    note TEXT NOT NULL DEFAULT '',
    CHECK ((cross_section_number IS NULL) = (cross_section_unit IS NULL)),
    CHECK ((length_number IS NULL) = (length_unit IS NULL))
) STRICT;

CREATE TABLE safety_system (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    kind TEXT NOT NULL CHECK (kind IN (
        'interlock', 'isolation monitor', 'disconnect', 'inertia switch', 'touch protection',
        'label', 'other')),
    state TEXT NOT NULL CHECK (state IN ('planned', 'fitted', 'proven')),
    part_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    test_id INTEGER REFERENCES test_record (id) DEFERRABLE INITIALLY DEFERRED,
    place TEXT NOT NULL DEFAULT '',
    note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE INDEX task_need_task_id ON task_need (task_id);
CREATE INDEX task_need_after_id ON task_need (after_id) WHERE after_id IS NOT NULL;
CREATE INDEX task_need_part_id ON task_need (part_id) WHERE part_id IS NOT NULL;
CREATE INDEX task_need_test_id ON task_need (test_id) WHERE test_id IS NOT NULL;
CREATE INDEX task_need_letter_id ON task_need (letter_id) WHERE letter_id IS NOT NULL;
CREATE INDEX task_need_interface_id ON task_need (interface_id) WHERE interface_id IS NOT NULL;
CREATE INDEX task_need_permit_id ON task_need (permit_id) WHERE permit_id IS NOT NULL;
CREATE INDEX test_record_part_id ON test_record (part_id) WHERE part_id IS NOT NULL;
CREATE INDEX test_record_circuit_id ON test_record (circuit_id) WHERE circuit_id IS NOT NULL;
CREATE INDEX test_step_test_id ON test_step (test_id);
CREATE INDEX mass_entry_part_id ON mass_entry (part_id) WHERE part_id IS NOT NULL;
CREATE INDEX check_figure_circuit_id ON check_figure (circuit_id) WHERE circuit_id IS NOT NULL;
CREATE INDEX check_figure_branch_id ON check_figure (branch_id) WHERE branch_id IS NOT NULL;
CREATE INDEX check_figure_part_id ON check_figure (part_id) WHERE part_id IS NOT NULL;
CREATE INDEX check_figure_type_id ON check_figure (type_id) WHERE type_id IS NOT NULL;
CREATE INDEX check_figure_test_id ON check_figure (test_id) WHERE test_id IS NOT NULL;
CREATE INDEX rated_curve_part_id ON rated_curve (part_id) WHERE part_id IS NOT NULL;
CREATE INDEX rated_curve_type_id ON rated_curve (type_id) WHERE type_id IS NOT NULL;
CREATE INDEX curve_point_curve_id ON curve_point (curve_id);
CREATE INDEX interface_part_id ON interface (part_id);
CREATE INDEX interface_other_id ON interface (other_id) WHERE other_id IS NOT NULL;
CREATE INDEX interface_pin_interface_id ON interface_pin (interface_id);
CREATE INDEX wire_from_part_id ON wire (from_part_id) WHERE from_part_id IS NOT NULL;
CREATE INDEX wire_to_part_id ON wire (to_part_id) WHERE to_part_id IS NOT NULL;
CREATE INDEX wire_branch_id ON wire (branch_id) WHERE branch_id IS NOT NULL;
CREATE INDEX safety_system_part_id ON safety_system (part_id) WHERE part_id IS NOT NULL;
CREATE INDEX safety_system_test_id ON safety_system (test_id) WHERE test_id IS NOT NULL;

UPDATE step SET state = 'kept', changeset = NULL WHERE changeset IS NOT NULL;
