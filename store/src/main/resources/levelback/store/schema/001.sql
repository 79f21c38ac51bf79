-- Schema 1 of the book. Every row has a number of its own (n, for speed within this book), a UUID (the same in every
-- copy of the book) and "gone": a row taken off stays, so that nothing that was evidence is ever erased.
-- Indexes by cow take in what is gone, for her history. Days are ISO text; *_us are microseconds since 1970-01-01T00:00Z.

CREATE TABLE book (
    n INTEGER PRIMARY KEY CHECK (n = 1),
    uuid TEXT NOT NULL,
    made_us INTEGER NOT NULL
) STRICT;

-- One entry for everything done at the desk or by a command; undo takes a step back by adding another one.
CREATE TABLE step (
    n INTEGER PRIMARY KEY,
    at_us INTEGER NOT NULL,
    who TEXT NOT NULL,
    what TEXT NOT NULL,
    undoes INTEGER REFERENCES step (n),
    redoes INTEGER REFERENCES step (n),
    -- of a step that is neither an undo nor a redo: it stands, it is undone and can come back, or it is undone for good
    fate TEXT NOT NULL CHECK (fate IN ('stands', 'undone', 'buried', 'is-undo', 'is-redo'))
) STRICT;
CREATE INDEX step_fate ON step (fate, n) WHERE fate IN ('stands', 'undone');

-- The one table of changes: history reads it, undo plays it back. "was" and "now" are whole rows as JSON.
CREATE TABLE change (
    n INTEGER PRIMARY KEY,
    step INTEGER NOT NULL REFERENCES step (n),
    kind TEXT NOT NULL,
    row INTEGER NOT NULL,
    was TEXT,
    now TEXT NOT NULL
) STRICT;
CREATE INDEX change_step ON change (step);
CREATE INDEX change_row ON change (kind, row);
CREATE TRIGGER change_stays BEFORE DELETE ON change BEGIN SELECT RAISE(ABORT, 'changes are never erased'); END;
CREATE TRIGGER change_as_it_was BEFORE UPDATE ON change BEGIN SELECT RAISE(ABORT, 'changes are never rewritten'); END;

CREATE TABLE scale (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    id TEXT NOT NULL,
    name TEXT NOT NULL,
    source TEXT NOT NULL,
    lame_cut REAL NOT NULL,
    severe_cut REAL NOT NULL,
    step REAL NOT NULL CHECK (step > 0)
) STRICT;
CREATE UNIQUE INDEX scale_id ON scale (id) WHERE gone = 0;

CREATE TABLE scale_level (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    scale INTEGER NOT NULL REFERENCES scale (n),
    level REAL NOT NULL,
    words TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX scale_level_once ON scale_level (scale, level) WHERE gone = 0;

CREATE TABLE herd (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    name TEXT NOT NULL,
    zone TEXT NOT NULL,
    scale INTEGER NOT NULL REFERENCES scale (n),
    -- 0 while nobody has said which scale the herd is scored on: it is then never guessed for scores that come in
    scale_chosen INTEGER NOT NULL DEFAULT 1 CHECK (scale_chosen IN (0, 1)),
    cows_in_milk INTEGER CHECK (cows_in_milk >= 0)
) STRICT;

CREATE TABLE person (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    name TEXT NOT NULL,
    initials TEXT NOT NULL
) STRICT;

CREATE TABLE cow (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    herd INTEGER NOT NULL REFERENCES herd (n),
    name TEXT,
    official_id TEXT,
    tag TEXT,
    birth TEXT,
    calving TEXT,
    parity INTEGER CHECK (parity >= 0),
    note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX cow_herd ON cow (herd) WHERE gone = 0;
CREATE INDEX cow_tag ON cow (herd, tag) WHERE gone = 0 AND tag IS NOT NULL;

-- Her management number over time; both ends in, no until_day while it is in force.
CREATE TABLE cow_number (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    cow INTEGER NOT NULL REFERENCES cow (n),
    herd INTEGER NOT NULL REFERENCES herd (n),
    number TEXT NOT NULL CHECK (number <> ''),
    from_day TEXT NOT NULL,
    until_day TEXT CHECK (until_day >= from_day)
) STRICT;
CREATE INDEX cow_number_cow ON cow_number (cow, from_day);
CREATE INDEX cow_number_number ON cow_number (herd, number, from_day) WHERE gone = 0;

CREATE TABLE visit (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    herd INTEGER NOT NULL REFERENCES herd (n),
    day TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX visit_day ON visit (herd, day) WHERE gone = 0;

CREATE TABLE recording (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    visit INTEGER NOT NULL REFERENCES visit (n),
    file TEXT NOT NULL,
    fingerprint TEXT NOT NULL,
    codec TEXT NOT NULL,
    width INTEGER NOT NULL,
    height INTEGER NOT NULL,
    rotation_degrees INTEGER NOT NULL,
    time_base TEXT NOT NULL,
    frame_count INTEGER NOT NULL,
    start_us INTEGER NOT NULL,
    duration_us INTEGER NOT NULL,
    recorded_us INTEGER
) STRICT;
CREATE INDEX recording_visit ON recording (visit) WHERE gone = 0;
CREATE INDEX recording_fingerprint ON recording (fingerprint) WHERE gone = 0;

CREATE TABLE pass (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    recording INTEGER NOT NULL REFERENCES recording (n),
    from_frame INTEGER NOT NULL CHECK (from_frame >= 0),
    to_frame INTEGER NOT NULL CHECK (to_frame >= from_frame),
    from_ticks INTEGER NOT NULL,
    to_ticks INTEGER NOT NULL,
    time_base TEXT NOT NULL,
    direction TEXT NOT NULL CHECK (direction IN ('left-to-right', 'right-to-left', 'unknown')),
    cow INTEGER REFERENCES cow (n)
) STRICT;
CREATE INDEX pass_recording ON pass (recording) WHERE gone = 0;
CREATE INDEX pass_cow ON pass (cow);

CREATE TABLE gate_read (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    visit INTEGER NOT NULL REFERENCES visit (n),
    at_us INTEGER NOT NULL,
    tag TEXT NOT NULL,
    reader TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX gate_read_once ON gate_read (visit, at_us, tag, reader) WHERE gone = 0;

-- A score is never overwritten: a correction is a new row, and in_force moves to it.
CREATE TABLE score (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    in_force INTEGER NOT NULL CHECK (in_force IN (0, 1)),
    cow INTEGER NOT NULL REFERENCES cow (n),
    visit INTEGER NOT NULL REFERENCES visit (n),
    pass INTEGER REFERENCES pass (n),
    scorer INTEGER NOT NULL REFERENCES person (n),
    leg TEXT CHECK (leg IN ('LF', 'RF', 'LH', 'RH')),
    scale INTEGER NOT NULL REFERENCES scale (n),
    level REAL NOT NULL,
    at_us INTEGER NOT NULL,
    seen INTEGER NOT NULL CHECK (seen IN (0, 1))
) STRICT;
CREATE UNIQUE INDEX score_in_force ON score (visit, cow, scorer, ifnull(leg, '')) WHERE gone = 0 AND in_force = 1;
CREATE INDEX score_cow ON score (cow, visit);
CREATE TRIGGER score_stays BEFORE DELETE ON score BEGIN SELECT RAISE(ABORT, 'scores are never erased'); END;
CREATE TRIGGER score_as_given BEFORE UPDATE OF uuid, cow, visit, pass, scorer, leg, scale, level, at_us, seen ON score
WHEN OLD.uuid IS NOT NEW.uuid OR OLD.cow IS NOT NEW.cow OR OLD.visit IS NOT NEW.visit OR OLD.pass IS NOT NEW.pass
    OR OLD.scorer IS NOT NEW.scorer OR OLD.leg IS NOT NEW.leg OR OLD.scale IS NOT NEW.scale
    OR OLD.level IS NOT NEW.level OR OLD.at_us IS NOT NEW.at_us OR OLD.seen IS NOT NEW.seen
BEGIN SELECT RAISE(ABORT, 'scores are never overwritten'); END;

-- A sign, a foot finding, or why a pass cannot be scored, at its moment.
CREATE TABLE tag (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    pass INTEGER NOT NULL REFERENCES pass (n),
    person INTEGER NOT NULL REFERENCES person (n),
    kind TEXT NOT NULL,
    key TEXT NOT NULL,
    leg TEXT CHECK (leg IN ('LF', 'RF', 'LH', 'RH')),
    frame INTEGER NOT NULL CHECK (frame >= 0),
    ticks INTEGER NOT NULL,
    time_base TEXT NOT NULL,
    note TEXT NOT NULL,
    at_us INTEGER NOT NULL
) STRICT;
CREATE INDEX tag_pass ON tag (pass);

CREATE TABLE lift (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    cow INTEGER NOT NULL REFERENCES cow (n),
    day TEXT NOT NULL,
    trimmer INTEGER NOT NULL REFERENCES person (n),
    chance REAL CHECK (chance > 0 AND chance <= 1),
    refused INTEGER NOT NULL CHECK (refused IN (0, 1)),
    done INTEGER NOT NULL CHECK (done IN (0, 1))
) STRICT;
CREATE UNIQUE INDEX lift_once ON lift (cow, day) WHERE gone = 0;
CREATE INDEX lift_cow ON lift (cow);
CREATE INDEX lift_day ON lift (day) WHERE gone = 0;

CREATE TABLE foot (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    lift INTEGER NOT NULL REFERENCES lift (n),
    leg TEXT NOT NULL CHECK (leg IN ('LF', 'RF', 'LH', 'RH')),
    no_lesion INTEGER NOT NULL CHECK (no_lesion IN (0, 1))
) STRICT;
CREATE INDEX foot_lift ON foot (lift);
CREATE UNIQUE INDEX foot_once ON foot (lift, leg) WHERE gone = 0;

CREATE TABLE finding (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    foot INTEGER NOT NULL REFERENCES foot (n),
    claw TEXT NOT NULL CHECK (claw IN ('lateral', 'medial', 'interdigital', 'both')),
    zone INTEGER CHECK (zone BETWEEN 0 AND 12),
    zone_confirmed INTEGER NOT NULL CHECK (zone_confirmed IN (0, 1)),
    lesion TEXT NOT NULL,
    severity INTEGER CHECK (severity BETWEEN 1 AND 3),
    stage TEXT NOT NULL,
    note TEXT NOT NULL
) STRICT;
CREATE INDEX finding_foot ON finding (foot);

CREATE TABLE foot_action (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    foot INTEGER NOT NULL REFERENCES foot (n),
    action TEXT NOT NULL
) STRICT;
CREATE INDEX foot_action_foot ON foot_action (foot);
CREATE UNIQUE INDEX foot_action_once ON foot_action (foot, action) WHERE gone = 0;

-- A block from the day it went on to the day it came off, and the feet's entries that say so.
CREATE TABLE block (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    cow INTEGER NOT NULL REFERENCES cow (n),
    leg TEXT NOT NULL CHECK (leg IN ('LF', 'RF', 'LH', 'RH')),
    claw TEXT NOT NULL CHECK (claw IN ('lateral', 'medial')),
    on_day TEXT NOT NULL,
    on_foot INTEGER NOT NULL REFERENCES foot (n),
    off_day TEXT CHECK (off_day >= on_day),
    off_foot INTEGER REFERENCES foot (n)
) STRICT;
CREATE INDEX block_cow ON block (cow);
CREATE INDEX block_on_foot ON block (on_foot) WHERE gone = 0;
CREATE INDEX block_off_foot ON block (off_foot) WHERE gone = 0;

-- What was given, as typed; the book adds nothing and checks nothing.
CREATE TABLE medicine (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    lift INTEGER NOT NULL REFERENCES lift (n),
    product TEXT NOT NULL,
    given_by TEXT NOT NULL,
    milk_withheld_until TEXT NOT NULL,
    meat_withheld_until TEXT NOT NULL,
    batch TEXT NOT NULL,
    given_at TEXT NOT NULL,
    dose_as_given TEXT NOT NULL,
    prescribed_by TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX medicine_once ON medicine (lift) WHERE gone = 0;

CREATE TABLE recheck (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    lift INTEGER NOT NULL REFERENCES lift (n),
    day TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX recheck_once ON recheck (lift) WHERE gone = 0;
CREATE INDEX recheck_day ON recheck (day) WHERE gone = 0;

CREATE TABLE photo (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    foot INTEGER NOT NULL REFERENCES foot (n),
    file TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX photo_once ON photo (foot, file) WHERE gone = 0;
