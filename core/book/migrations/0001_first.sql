-- The first schema: ledger, money, work and proof, and the steps that undo them.
-- oldest readable version: 1
--
-- Rules every table follows: STRICT; an explicit primary key (the session extension records no
-- other tables); foreign keys deferred and without actions (a cascade cannot be undone by a
-- changeset); no unique index on a sort position (two swapped values cannot be undone).

CREATE TABLE build (
    id INTEGER PRIMARY KEY NOT NULL CHECK (id = 1),
    title TEXT NOT NULL CHECK (title <> ''),
    currency TEXT NOT NULL CHECK (length(currency) = 3),
    hours_per_week INTEGER NOT NULL CHECK (hours_per_week BETWEEN 1 AND 168),
    contingency_percent INTEGER NOT NULL CHECK (contingency_percent BETWEEN 0 AND 100),
    place TEXT NOT NULL DEFAULT '',
    note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE vehicle (
    id INTEGER PRIMARY KEY NOT NULL CHECK (id = 1),
    make TEXT NOT NULL DEFAULT '',
    model TEXT NOT NULL DEFAULT '',
    body TEXT NOT NULL DEFAULT '',
    vin TEXT NOT NULL DEFAULT '',
    registration TEXT NOT NULL DEFAULT '',
    year INTEGER CHECK (year BETWEEN 1880 AND 2199),
    first_registered TEXT CHECK (first_registered GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    engine TEXT NOT NULL DEFAULT '',
    fuel TEXT NOT NULL DEFAULT '',
    gearbox TEXT NOT NULL DEFAULT '',
    tyre_size TEXT NOT NULL DEFAULT '',
    brakes TEXT NOT NULL DEFAULT '',
    odometer_number REAL,
    odometer_unit TEXT,
    wheelbase_number REAL,
    wheelbase_unit TEXT,
    kerb_mass_number REAL,
    kerb_mass_unit TEXT,
    gross_mass_plate_number REAL,
    gross_mass_plate_unit TEXT,
    front_axle_plate_number REAL,
    front_axle_plate_unit TEXT,
    rear_axle_plate_number REAL,
    rear_axle_plate_unit TEXT,
    weighed_on TEXT CHECK (weighed_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    weighed_with TEXT NOT NULL DEFAULT '',
    front_left_number REAL,
    front_left_unit TEXT,
    front_right_number REAL,
    front_right_unit TEXT,
    rear_left_number REAL,
    rear_left_unit TEXT,
    rear_right_number REAL,
    rear_right_unit TEXT,
    structure TEXT NOT NULL DEFAULT '',
    note TEXT NOT NULL DEFAULT '',
    CHECK ((odometer_number IS NULL) = (odometer_unit IS NULL)),
    CHECK ((wheelbase_number IS NULL) = (wheelbase_unit IS NULL)),
    CHECK ((kerb_mass_number IS NULL) = (kerb_mass_unit IS NULL)),
    CHECK ((gross_mass_plate_number IS NULL) = (gross_mass_plate_unit IS NULL)),
    CHECK ((front_axle_plate_number IS NULL) = (front_axle_plate_unit IS NULL)),
    CHECK ((rear_axle_plate_number IS NULL) = (rear_axle_plate_unit IS NULL)),
    CHECK ((front_left_number IS NULL) = (front_left_unit IS NULL)),
    CHECK ((front_right_number IS NULL) = (front_right_unit IS NULL)),
    CHECK ((rear_left_number IS NULL) = (rear_left_unit IS NULL)),
    CHECK ((rear_right_number IS NULL) = (rear_right_unit IS NULL))
) STRICT;

CREATE TABLE seller (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    kind TEXT NOT NULL CHECK (kind IN (
        'dismantler', 'auction', 'private', 'dealer', 'distributor', 'workshop')),
    place TEXT NOT NULL DEFAULT '',
    contact TEXT NOT NULL DEFAULT '',
    note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE donor (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    make TEXT NOT NULL CHECK (make <> ''),
    model TEXT NOT NULL DEFAULT '',
    year INTEGER CHECK (year BETWEEN 1880 AND 2199),
    vin TEXT NOT NULL DEFAULT '',
    distance_number REAL,
    distance_unit TEXT,
    damage TEXT NOT NULL DEFAULT '',
    proof_of_ownership TEXT NOT NULL DEFAULT '',
    seller_id INTEGER REFERENCES seller (id) DEFERRABLE INITIALLY DEFERRED,
    note TEXT NOT NULL DEFAULT '',
    CHECK ((distance_number IS NULL) = (distance_unit IS NULL))
) STRICT;

CREATE TABLE part_type (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    make TEXT NOT NULL DEFAULT '',
    part_number TEXT NOT NULL DEFAULT '',
    name TEXT NOT NULL CHECK (name <> ''),
    kind TEXT NOT NULL CHECK (kind IN (
        'unit', 'module', 'hardware', 'tool', 'consumable', 'service')),
    note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE circuit (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    kind TEXT NOT NULL CHECK (kind IN (
        'traction', 'phases', 'charge inlet', 'low voltage', 'other')),
    current TEXT NOT NULL CHECK (current IN ('DC', 'AC')),
    nominal_voltage_number REAL,
    nominal_voltage_unit TEXT,
    worst_voltage_number REAL,
    worst_voltage_unit TEXT,
    worst_voltage_from TEXT NOT NULL DEFAULT '',
    note TEXT NOT NULL DEFAULT '',
    CHECK ((nominal_voltage_number IS NULL) = (nominal_voltage_unit IS NULL)),
    CHECK ((worst_voltage_number IS NULL) = (worst_voltage_unit IS NULL))
) STRICT;

CREATE TABLE branch (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    circuit_id INTEGER NOT NULL REFERENCES circuit (id) DEFERRABLE INITIALLY DEFERRED,
    from_end TEXT NOT NULL DEFAULT '',
    to_end TEXT NOT NULL DEFAULT '',
    continuous_current_number REAL,
    continuous_current_unit TEXT,
    peak_current_number REAL,
    peak_current_unit TEXT,
    fuse_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    fuse_rating_number REAL,
    fuse_rating_unit TEXT,
    conductor_size_number REAL,
    conductor_size_unit TEXT,
    conductor_length_number REAL,
    conductor_length_unit TEXT,
    conductor TEXT NOT NULL DEFAULT '',
    colour TEXT NOT NULL DEFAULT '',
    note TEXT NOT NULL DEFAULT '',
    CHECK ((continuous_current_number IS NULL) = (continuous_current_unit IS NULL)),
    CHECK ((peak_current_number IS NULL) = (peak_current_unit IS NULL)),
    CHECK ((fuse_rating_number IS NULL) = (fuse_rating_unit IS NULL)),
    CHECK ((conductor_size_number IS NULL) = (conductor_size_unit IS NULL)),
    CHECK ((conductor_length_number IS NULL) = (conductor_length_unit IS NULL))
) STRICT;

CREATE TABLE part (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    kind TEXT NOT NULL CHECK (kind IN (
        'unit', 'module', 'hardware', 'tool', 'consumable', 'service')),
    state TEXT NOT NULL CHECK (state IN (
        'wanted', 'ordered', 'in hand', 'tested', 'fitted', 'returned', 'sold', 'scrapped',
        'quarantined')),
    type_id INTEGER REFERENCES part_type (id) DEFERRABLE INITIALLY DEFERRED,
    part_of_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    donor_id INTEGER REFERENCES donor (id) DEFERRABLE INITIALLY DEFERRED,
    bought_id INTEGER REFERENCES purchase_item (id) DEFERRABLE INITIALLY DEFERRED,
    serial TEXT NOT NULL DEFAULT '',
    condition TEXT NOT NULL DEFAULT '',
    transport_damage TEXT NOT NULL DEFAULT '',
    claim_by TEXT CHECK (claim_by GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    accepted_because TEXT NOT NULL DEFAULT '',
    proof_of_ownership TEXT NOT NULL DEFAULT '',
    place TEXT NOT NULL DEFAULT '',
    warranty_until TEXT CHECK (warranty_until GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    return_until TEXT CHECK (return_until GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    warranty_terms TEXT NOT NULL DEFAULT '',
    opened_on TEXT CHECK (opened_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    opened_because TEXT NOT NULL DEFAULT '',
    reworked_on TEXT CHECK (reworked_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    replaced_by_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    estimate_minor INTEGER,
    estimate_currency TEXT CHECK (length(estimate_currency) = 3),
    lead_days INTEGER CHECK (lead_days BETWEEN 0 AND 3650),
    line_id INTEGER REFERENCES budget_line (id) DEFERRABLE INITIALLY DEFERRED,
    stock_number REAL,
    stock_unit TEXT,
    least_stock_number REAL,
    least_stock_unit TEXT,
    counted_to TEXT NOT NULL CHECK (counted_to IN ('build', 'shop')),
    note TEXT NOT NULL DEFAULT '',
    CHECK ((estimate_minor IS NULL) = (estimate_currency IS NULL)),
    CHECK ((stock_number IS NULL) = (stock_unit IS NULL)),
    CHECK ((least_stock_number IS NULL) = (least_stock_unit IS NULL)),
    CHECK (part_of_id <> id)
) STRICT;

CREATE TABLE part_move (
    id INTEGER PRIMARY KEY NOT NULL,
    part_id INTEGER NOT NULL REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    from_state TEXT CHECK (from_state IN (
        'wanted', 'ordered', 'in hand', 'tested', 'fitted', 'returned', 'sold', 'scrapped',
        'quarantined')),
    to_state TEXT NOT NULL CHECK (to_state IN (
        'wanted', 'ordered', 'in hand', 'tested', 'fitted', 'returned', 'sold', 'scrapped',
        'quarantined')),
    moved_on TEXT NOT NULL CHECK (moved_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE connection (
    id INTEGER PRIMARY KEY NOT NULL,
    part_id INTEGER NOT NULL REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    circuit_id INTEGER NOT NULL REFERENCES circuit (id) DEFERRABLE INITIALLY DEFERRED,
    branch_id INTEGER REFERENCES branch (id) DEFERRABLE INITIALLY DEFERRED
) STRICT;

CREATE TABLE rating (
    id INTEGER PRIMARY KEY NOT NULL,
    part_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    type_id INTEGER REFERENCES part_type (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    quantity TEXT NOT NULL CHECK (quantity IN (
        'voltage', 'current', 'power', 'energy', 'capacity', 'resistance', 'capacitance',
        'isolation resistance', 'breaking capacity', 'cross-section', 'torque', 'rotation speed',
        'temperature', 'pressure', 'flow', 'mass', 'length', 'width', 'height',
        'cells in series', 'ratio', 'frequency')),
    kind TEXT NOT NULL CHECK (kind IN ('limit', 'actual')),
    basis TEXT NOT NULL CHECK (basis IN ('continuous', 'peak', 'least', 'nominal')),
    current TEXT CHECK (current IN ('DC', 'AC')),
    duration_number REAL,
    duration_unit TEXT,
    value_number REAL,
    value_unit TEXT,
    evidence TEXT NOT NULL CHECK (evidence IN (
        'datasheet', 'nameplate', 'service manual', 'measured', 'seller', 'community', 'assumed')),
    source TEXT NOT NULL DEFAULT '',
    dated TEXT CHECK (dated GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    settled INTEGER NOT NULL CHECK (settled IN (0, 1)),
    note TEXT NOT NULL DEFAULT '',
    CHECK ((part_id IS NOT NULL) + (type_id IS NOT NULL) = 1),
    CHECK ((duration_number IS NULL) = (duration_unit IS NULL)),
    CHECK ((value_number IS NULL) = (value_unit IS NULL))
) STRICT;

CREATE TABLE lost_function (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    replaced_by TEXT NOT NULL DEFAULT '',
    part_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    settled INTEGER NOT NULL CHECK (settled IN (0, 1)),
    note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE budget_line (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    allowance_minor INTEGER NOT NULL CHECK (allowance_minor >= 0),
    allowance_currency TEXT NOT NULL CHECK (length(allowance_currency) = 3),
    position INTEGER NOT NULL,
    note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE day_rate (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    currency TEXT NOT NULL CHECK (length(currency) = 3),
    dated TEXT NOT NULL CHECK (dated GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    rate TEXT NOT NULL CHECK (rate <> ''),
    source TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE purchase (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    seller_id INTEGER NOT NULL REFERENCES seller (id) DEFERRABLE INITIALLY DEFERRED,
    ordered_on TEXT NOT NULL CHECK (ordered_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    currency TEXT NOT NULL CHECK (length(currency) = 3),
    rate TEXT NOT NULL CHECK (rate <> ''),
    rate_source TEXT NOT NULL DEFAULT '',
    freight_minor INTEGER NOT NULL CHECK (freight_minor >= 0),
    freight_currency TEXT NOT NULL CHECK (length(freight_currency) = 3),
    duty_minor INTEGER NOT NULL CHECK (duty_minor >= 0),
    duty_currency TEXT NOT NULL CHECK (length(duty_currency) = 3),
    tax_minor INTEGER NOT NULL CHECK (tax_minor >= 0),
    tax_currency TEXT NOT NULL CHECK (length(tax_currency) = 3),
    share_by TEXT NOT NULL CHECK (share_by IN ('price', 'count')),
    reference TEXT NOT NULL DEFAULT '',
    promised_on TEXT CHECK (promised_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    arrived_on TEXT CHECK (arrived_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    note TEXT NOT NULL DEFAULT '',
    CHECK (freight_currency = currency AND duty_currency = currency AND tax_currency = currency)
) STRICT;

CREATE TABLE purchase_item (
    id INTEGER PRIMARY KEY NOT NULL,
    purchase_id INTEGER NOT NULL REFERENCES purchase (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    count INTEGER NOT NULL CHECK (count BETWEEN 1 AND 100000),
    unit_price_minor INTEGER NOT NULL CHECK (unit_price_minor >= 0),
    unit_price_currency TEXT NOT NULL CHECK (length(unit_price_currency) = 3),
    core_charge_minor INTEGER NOT NULL CHECK (core_charge_minor >= 0),
    core_charge_currency TEXT NOT NULL CHECK (length(core_charge_currency) = 3),
    core_returned_on TEXT CHECK (core_returned_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    line_id INTEGER REFERENCES budget_line (id) DEFERRABLE INITIALLY DEFERRED
) STRICT;

CREATE TABLE payment (
    id INTEGER PRIMARY KEY NOT NULL,
    purchase_id INTEGER NOT NULL REFERENCES purchase (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    paid_on TEXT NOT NULL CHECK (paid_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    amount_minor INTEGER NOT NULL,
    amount_currency TEXT NOT NULL CHECK (length(amount_currency) = 3),
    note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE got_back (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    amount_minor INTEGER NOT NULL,
    amount_currency TEXT NOT NULL CHECK (length(amount_currency) = 3),
    rate TEXT NOT NULL CHECK (rate <> ''),
    expected_on TEXT CHECK (expected_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    received_on TEXT CHECK (received_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    part_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    line_id INTEGER REFERENCES budget_line (id) DEFERRABLE INITIALLY DEFERRED,
    note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE task (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    title TEXT NOT NULL CHECK (title <> ''),
    milestone INTEGER NOT NULL CHECK (milestone IN (0, 1)),
    area TEXT NOT NULL DEFAULT '',
    high_voltage INTEGER NOT NULL CHECK (high_voltage IN (0, 1)),
    work_minutes INTEGER NOT NULL CHECK (work_minutes BETWEEN 0 AND 600000),
    wait_days INTEGER NOT NULL CHECK (wait_days BETWEEN 0 AND 3650),
    state TEXT NOT NULL CHECK (state IN ('open', 'started', 'done')),
    started_on TEXT CHECK (started_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    done_on TEXT CHECK (done_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    fixed_on TEXT CHECK (fixed_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    target_on TEXT CHECK (target_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE task_need (
    id INTEGER PRIMARY KEY NOT NULL,
    task_id INTEGER NOT NULL REFERENCES task (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN (
        'task', 'part', 'figure', 'tool', 'consumable', 'money', 'service', 'test', 'letter',
        'person', 'permit')),
    after_id INTEGER REFERENCES task (id) DEFERRABLE INITIALLY DEFERRED,
    part_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    state TEXT CHECK (state IN (
        'wanted', 'ordered', 'in hand', 'tested', 'fitted', 'returned', 'sold', 'scrapped',
        'quarantined')),
    quantity TEXT CHECK (quantity IN (
        'voltage', 'current', 'power', 'energy', 'capacity', 'resistance', 'capacitance',
        'isolation resistance', 'breaking capacity', 'cross-section', 'torque', 'rotation speed',
        'temperature', 'pressure', 'flow', 'mass', 'length', 'width', 'height',
        'cells in series', 'ratio', 'frequency')),
    basis TEXT CHECK (basis IN ('continuous', 'peak', 'least', 'nominal')),
    amount_number REAL,
    amount_unit TEXT,
    money_minor INTEGER,
    money_currency TEXT CHECK (length(money_currency) = 3),
    test_id INTEGER REFERENCES test_record (id) DEFERRABLE INITIALLY DEFERRED,
    letter_id INTEGER REFERENCES letter (id) DEFERRABLE INITIALLY DEFERRED,
    what TEXT NOT NULL DEFAULT '',
    met_on TEXT CHECK (met_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    CHECK ((amount_number IS NULL) = (amount_unit IS NULL)),
    CHECK ((money_minor IS NULL) = (money_currency IS NULL))
) STRICT;

CREATE TABLE letter (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    subject TEXT NOT NULL CHECK (subject <> ''),
    to_whom TEXT NOT NULL DEFAULT '',
    kind TEXT NOT NULL CHECK (kind IN (
        'authority', 'scheme', 'insurer', 'engineer', 'training', 'other')),
    state TEXT NOT NULL CHECK (state IN ('to ask', 'asked', 'granted', 'refused')),
    asked_on TEXT CHECK (asked_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    ask_again_on TEXT CHECK (ask_again_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    answered_on TEXT CHECK (answered_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    valid_until TEXT CHECK (valid_until GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    answer_days INTEGER CHECK (answer_days BETWEEN 0 AND 3650),
    reference TEXT NOT NULL DEFAULT '',
    note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE test_record (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    kind TEXT NOT NULL CHECK (kind IN (
        'isolation', 'bonding', 'torque', 'precharge', 'brakes', 'charging', 'coolant', 'other')),
    part_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
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

CREATE TABLE mass_entry (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    direction TEXT NOT NULL CHECK (direction IN ('out', 'in')),
    mass_number REAL,
    mass_unit TEXT,
    behind_front_axle_number REAL,
    behind_front_axle_unit TEXT,
    part_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    evidence TEXT NOT NULL CHECK (evidence IN (
        'datasheet', 'nameplate', 'service manual', 'measured', 'seller', 'community', 'assumed')),
    note TEXT NOT NULL DEFAULT '',
    CHECK ((mass_number IS NULL) = (mass_unit IS NULL)),
    CHECK ((behind_front_axle_number IS NULL) = (behind_front_axle_unit IS NULL))
) STRICT;

CREATE TABLE attachment (
    id INTEGER PRIMARY KEY NOT NULL,
    key TEXT NOT NULL UNIQUE CHECK (key <> ''),
    title TEXT NOT NULL DEFAULT '',
    kind TEXT NOT NULL CHECK (kind IN ('photo', 'document', 'proof', 'link')),
    file_name TEXT NOT NULL DEFAULT '',
    media_type TEXT NOT NULL DEFAULT '',
    sha256 TEXT NOT NULL DEFAULT '',
    url TEXT NOT NULL DEFAULT '',
    read_on TEXT CHECK (read_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    taken_on TEXT CHECK (taken_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    on_sheet INTEGER NOT NULL CHECK (on_sheet IN (0, 1)),
    of_vehicle INTEGER NOT NULL CHECK (of_vehicle IN (0, 1)),
    part_id INTEGER REFERENCES part (id) DEFERRABLE INITIALLY DEFERRED,
    type_id INTEGER REFERENCES part_type (id) DEFERRABLE INITIALLY DEFERRED,
    donor_id INTEGER REFERENCES donor (id) DEFERRABLE INITIALLY DEFERRED,
    purchase_id INTEGER REFERENCES purchase (id) DEFERRABLE INITIALLY DEFERRED,
    task_id INTEGER REFERENCES task (id) DEFERRABLE INITIALLY DEFERRED,
    test_id INTEGER REFERENCES test_record (id) DEFERRABLE INITIALLY DEFERRED,
    letter_id INTEGER REFERENCES letter (id) DEFERRABLE INITIALLY DEFERRED,
    note TEXT NOT NULL DEFAULT '',
    CHECK (of_vehicle + (part_id IS NOT NULL) + (type_id IS NOT NULL) + (donor_id IS NOT NULL)
        + (purchase_id IS NOT NULL) + (task_id IS NOT NULL) + (test_id IS NOT NULL)
        + (letter_id IS NOT NULL) <= 1),
    CHECK ((kind = 'link') = (sha256 = '')),
    CHECK (sha256 = '' OR length(sha256) = 64)
) STRICT;

CREATE INDEX donor_seller_id ON donor (seller_id) WHERE seller_id IS NOT NULL;
CREATE INDEX branch_circuit_id ON branch (circuit_id);
CREATE INDEX branch_fuse_id ON branch (fuse_id) WHERE fuse_id IS NOT NULL;
CREATE INDEX part_type_id ON part (type_id) WHERE type_id IS NOT NULL;
CREATE INDEX part_part_of_id ON part (part_of_id) WHERE part_of_id IS NOT NULL;
CREATE INDEX part_donor_id ON part (donor_id) WHERE donor_id IS NOT NULL;
CREATE INDEX part_bought_id ON part (bought_id) WHERE bought_id IS NOT NULL;
CREATE INDEX part_replaced_by_id ON part (replaced_by_id) WHERE replaced_by_id IS NOT NULL;
CREATE INDEX part_line_id ON part (line_id) WHERE line_id IS NOT NULL;
CREATE INDEX part_move_part_id ON part_move (part_id);
CREATE INDEX connection_part_id ON connection (part_id);
CREATE INDEX connection_circuit_id ON connection (circuit_id);
CREATE INDEX connection_branch_id ON connection (branch_id) WHERE branch_id IS NOT NULL;
CREATE INDEX rating_part_id ON rating (part_id);
CREATE INDEX rating_type_id ON rating (type_id);
CREATE INDEX lost_function_part_id ON lost_function (part_id) WHERE part_id IS NOT NULL;
CREATE INDEX purchase_seller_id ON purchase (seller_id);
CREATE INDEX purchase_item_purchase_id ON purchase_item (purchase_id);
CREATE INDEX purchase_item_line_id ON purchase_item (line_id) WHERE line_id IS NOT NULL;
CREATE INDEX payment_purchase_id ON payment (purchase_id);
CREATE INDEX got_back_part_id ON got_back (part_id) WHERE part_id IS NOT NULL;
CREATE INDEX got_back_line_id ON got_back (line_id) WHERE line_id IS NOT NULL;
CREATE INDEX task_need_task_id ON task_need (task_id);
CREATE INDEX task_need_after_id ON task_need (after_id) WHERE after_id IS NOT NULL;
CREATE INDEX task_need_part_id ON task_need (part_id) WHERE part_id IS NOT NULL;
CREATE INDEX task_need_test_id ON task_need (test_id) WHERE test_id IS NOT NULL;
CREATE INDEX task_need_letter_id ON task_need (letter_id) WHERE letter_id IS NOT NULL;
CREATE INDEX test_record_part_id ON test_record (part_id) WHERE part_id IS NOT NULL;
CREATE INDEX mass_entry_part_id ON mass_entry (part_id) WHERE part_id IS NOT NULL;
CREATE INDEX attachment_part_id ON attachment (part_id) WHERE part_id IS NOT NULL;
CREATE INDEX attachment_type_id ON attachment (type_id) WHERE type_id IS NOT NULL;
CREATE INDEX attachment_donor_id ON attachment (donor_id) WHERE donor_id IS NOT NULL;
CREATE INDEX attachment_purchase_id ON attachment (purchase_id) WHERE purchase_id IS NOT NULL;
CREATE INDEX attachment_task_id ON attachment (task_id) WHERE task_id IS NOT NULL;
CREATE INDEX attachment_test_id ON attachment (test_id) WHERE test_id IS NOT NULL;
CREATE INDEX attachment_letter_id ON attachment (letter_id) WHERE letter_id IS NOT NULL;

-- The bytes of attachments, named by their content, never changed, outside the recorded tables: a
-- photo would otherwise stand twice more in the undo steps.
CREATE TABLE blob (
    sha256 TEXT PRIMARY KEY NOT NULL CHECK (length(sha256) = 64),
    data BLOB NOT NULL
) STRICT;

-- One row an edit: its sentence for the history, its changeset for undo. A step undone and then
-- overtaken by a new edit stays as history ('overtaken') without its changeset.
CREATE TABLE step (
    number INTEGER PRIMARY KEY NOT NULL,
    made_at TEXT NOT NULL,
    what TEXT NOT NULL CHECK (what <> ''),
    state TEXT NOT NULL CHECK (state IN ('done', 'undone', 'overtaken', 'kept')),
    changeset BLOB
) STRICT;
CREATE INDEX step_state ON step (state, number);

-- Which versions of the program may still read this book; written by the migration runner.
CREATE TABLE format (
    id INTEGER PRIMARY KEY NOT NULL CHECK (id = 1),
    oldest_reader INTEGER NOT NULL
) STRICT;
