PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE book (
    n INTEGER PRIMARY KEY CHECK (n = 1),
    uuid TEXT NOT NULL,
    made_us INTEGER NOT NULL
) STRICT;
INSERT INTO book VALUES(1,'997e3d3f-2f37-4f05-af78-aceb97c0f29b',1795609302622281);
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
INSERT INTO step VALUES(1,1795609302809845,'','Herd Fixture Farm',NULL,NULL,'stands');
INSERT INTO step VALUES(2,1795609302857458,'','Person Anna',NULL,NULL,'stands');
INSERT INTO step VALUES(3,1795609302869900,'','Cow 0412',NULL,NULL,'stands');
INSERT INTO step VALUES(4,1795609302946369,'','Cow 0500',NULL,NULL,'stands');
INSERT INTO step VALUES(5,1795609302996733,'','Visit of 2026-03-14',NULL,NULL,'stands');
INSERT INTO step VALUES(6,1795609303044790,'','Recording a.mp4',NULL,NULL,'stands');
INSERT INTO step VALUES(7,1795609303086003,'','Pass',NULL,NULL,'stands');
INSERT INTO step VALUES(8,1795609303097625,'','Gate read of 2760000000412',NULL,NULL,'stands');
INSERT INTO step VALUES(9,1795609303114497,'','Tag short-stride',NULL,NULL,'stands');
INSERT INTO step VALUES(10,1795609303132253,'','Score 2.0',NULL,NULL,'stands');
INSERT INTO step VALUES(11,1795609303237850,'','Score 3.0',NULL,NULL,'stands');
INSERT INTO step VALUES(12,1795609303254579,'','Card of 2026-03-14',NULL,NULL,'stands');
INSERT INTO step VALUES(13,1795609303264922,'','Foot LH',NULL,NULL,'stands');
INSERT INTO step VALUES(14,1795609303277594,'','Finding SU',NULL,NULL,'stands');
INSERT INTO step VALUES(15,1795609303297957,'','What was done',NULL,NULL,'stands');
INSERT INTO step VALUES(16,1795609303309405,'','Medicine note',NULL,NULL,'stands');
INSERT INTO step VALUES(17,1795609303324593,'','Look again on 2026-03-21',NULL,NULL,'stands');
INSERT INTO step VALUES(18,1795609303327017,'','Photo foot.jpg',NULL,NULL,'stands');
CREATE TABLE change (
    n INTEGER PRIMARY KEY,
    step INTEGER NOT NULL REFERENCES step (n),
    kind TEXT NOT NULL,
    row INTEGER NOT NULL,
    was TEXT,
    now TEXT NOT NULL
) STRICT;
INSERT INTO change VALUES(1,1,'scale',1,NULL,'{"uuid":"e230a47b-adf9-4168-abe3-b554ccbda1cc","gone":0,"id":"mobility-0-3","name":"AHDB mobility, 0–3","source":"AHDB, formerly DairyCo, mobility score sheet 2011","lame_cut":2.0,"severe_cut":3.0,"step":1.0}');
INSERT INTO change VALUES(2,1,'scale_level',1,NULL,'{"uuid":"9e64e283-d90c-4610-ab84-b9de6a1ae529","gone":0,"scale":1,"level":0.0,"words":"Even rhythm and even load on four feet, flat back, long strides possible"}');
INSERT INTO change VALUES(3,1,'scale_level',2,NULL,'{"uuid":"e3eca0db-47b7-44c3-aad1-c9fa84055e2c","gone":0,"scale":1,"level":1.0,"words":"Steps uneven or shortened, but the leg cannot be picked out at once"}');
INSERT INTO change VALUES(4,1,'scale_level',3,NULL,'{"uuid":"459fbe4d-fc2d-49c5-a2bd-a8a233ad985f","gone":0,"scale":1,"level":2.0,"words":"Leg picked out at once, or clearly short strides; back usually arched"}');
INSERT INTO change VALUES(5,1,'scale_level',4,NULL,'{"uuid":"a7789cab-e918-4787-84ae-eeec7a241696","gone":0,"scale":1,"level":3.0,"words":"As 2, and slower than a person walking briskly; falls behind sound cows"}');
INSERT INTO change VALUES(6,1,'herd',1,NULL,'{"uuid":"817d1de5-3067-438d-b5f4-8b8ffd637091","gone":0,"name":"Fixture Farm","zone":"UTC","scale":1,"scale_chosen":1,"cows_in_milk":2}');
INSERT INTO change VALUES(7,2,'person',1,NULL,'{"uuid":"0ca6e2f4-4322-4895-9ab5-003849c4d03d","gone":0,"name":"Anna","initials":"An"}');
INSERT INTO change VALUES(8,3,'cow',1,NULL,'{"uuid":"b14d5d6d-820e-458f-a7b0-84b76ab57cd9","gone":0,"herd":1,"name":"Name of 0412","official_id":null,"tag":"2760000000412","birth":"2021-05-01","calving":null,"parity":2,"note":""}');
INSERT INTO change VALUES(9,3,'cow_number',1,NULL,'{"uuid":"a93829da-4249-4ea1-b09c-12dadab38443","gone":0,"cow":1,"herd":1,"number":"0412","from_day":"2026-03-14","until_day":null}');
INSERT INTO change VALUES(10,4,'cow',2,NULL,'{"uuid":"2d993e73-95d3-450f-a5de-95af00b49187","gone":0,"herd":1,"name":"Name of 0500","official_id":null,"tag":"2760000000500","birth":"2021-05-01","calving":null,"parity":2,"note":""}');
INSERT INTO change VALUES(11,4,'cow_number',2,NULL,'{"uuid":"fcd568a0-b0bb-46ec-8a5c-09317e6921fa","gone":0,"cow":2,"herd":1,"number":"0500","from_day":"2026-03-14","until_day":null}');
INSERT INTO change VALUES(12,5,'visit',1,NULL,'{"uuid":"c420bf05-0939-433e-be36-aee48bde7a8e","gone":0,"herd":1,"day":"2026-03-14"}');
INSERT INTO change VALUES(13,6,'recording',1,NULL,'{"uuid":"228534e4-5168-4889-a7b3-b264d80cb6d6","gone":0,"visit":1,"file":"/films/a.mp4","fingerprint":"1234-a.mp4","codec":"h264","width":1920,"height":1080,"rotation_degrees":90,"time_base":"1/90000","frame_count":1500,"start_us":-33000,"duration_us":60000000,"recorded_us":1773468750123456}');
INSERT INTO change VALUES(14,7,'pass',1,NULL,'{"uuid":"f20ef829-e0de-4afc-b13f-2d2d64fe047d","gone":0,"recording":1,"from_frame":10,"to_frame":90,"from_ticks":36000,"to_ticks":324000,"time_base":"1/90000","direction":"right-to-left","cow":1}');
INSERT INTO change VALUES(15,8,'gate_read',1,NULL,'{"uuid":"5c78c000-f959-4ed2-8117-a2fc06137652","gone":0,"visit":1,"at_us":1773468750123456,"tag":"2760000000412","reader":"exit"}');
INSERT INTO change VALUES(16,9,'tag',1,NULL,'{"uuid":"ca00e2f5-7df5-48ef-a90d-8cf64ecd495d","gone":0,"pass":1,"person":1,"kind":"SIGN","key":"short-stride","leg":"LH","frame":20,"ticks":72000,"time_base":"1/90000","note":"","at_us":1773468750123456}');
INSERT INTO change VALUES(17,10,'score',1,NULL,'{"uuid":"38973a7a-ef3c-4ca1-8e59-be4f1c1a862d","gone":0,"in_force":1,"cow":1,"visit":1,"pass":null,"scorer":1,"leg":null,"scale":1,"level":2.0,"at_us":1773468750123456,"seen":0}');
INSERT INTO change VALUES(18,11,'score',1,'{"uuid":"38973a7a-ef3c-4ca1-8e59-be4f1c1a862d","gone":0,"in_force":1,"cow":1,"visit":1,"pass":null,"scorer":1,"leg":null,"scale":1,"level":2.0,"at_us":1773468750123456,"seen":0}','{"uuid":"38973a7a-ef3c-4ca1-8e59-be4f1c1a862d","gone":0,"in_force":0,"cow":1,"visit":1,"pass":null,"scorer":1,"leg":null,"scale":1,"level":2.0,"at_us":1773468750123456,"seen":0}');
INSERT INTO change VALUES(19,11,'score',2,NULL,'{"uuid":"b89bc776-3313-49bf-be12-c38ae125e5b8","gone":0,"in_force":1,"cow":1,"visit":1,"pass":null,"scorer":1,"leg":null,"scale":1,"level":3.0,"at_us":1773468750123456,"seen":0}');
INSERT INTO change VALUES(20,12,'lift',1,NULL,'{"uuid":"690c030f-e654-49b5-9ed9-29e234649081","gone":0,"cow":1,"day":"2026-03-14","trimmer":1,"chance":null,"refused":0,"done":0}');
INSERT INTO change VALUES(21,13,'foot',1,NULL,'{"uuid":"1dd0ff2d-9bad-4567-a9d5-c3434bcacbe3","gone":0,"lift":1,"leg":"LH","no_lesion":0}');
INSERT INTO change VALUES(22,14,'finding',1,NULL,'{"uuid":"b8acd8cd-7154-4aba-bb28-65f18fb243f5","gone":0,"foot":1,"claw":"lateral","zone":4,"zone_confirmed":1,"lesion":"SU","severity":2,"stage":"","note":""}');
INSERT INTO change VALUES(23,15,'foot_action',1,NULL,'{"uuid":"69507985-d1e6-4357-9f97-a14316d0eaf7","gone":0,"foot":1,"action":"trimmed"}');
INSERT INTO change VALUES(24,15,'foot_action',2,NULL,'{"uuid":"57433de9-47af-4696-bffd-d15d8a6d48a4","gone":0,"foot":1,"action":"block-inner"}');
INSERT INTO change VALUES(25,15,'block',1,NULL,'{"uuid":"1a015ea1-4a4b-4c56-8457-52c721fa6b33","gone":0,"cow":1,"leg":"LH","claw":"medial","on_day":"2026-03-14","on_foot":1,"off_day":null,"off_foot":null}');
INSERT INTO change VALUES(26,16,'medicine',1,NULL,'{"uuid":"0b27b4e6-2fc5-4b6f-b16e-ccc1900640cb","gone":0,"lift":1,"product":"p","given_by":"g","milk_withheld_until":"","meat_withheld_until":"","batch":"","given_at":"","dose_as_given":"","prescribed_by":""}');
INSERT INTO change VALUES(27,17,'recheck',1,NULL,'{"uuid":"fcf0f0ca-3115-40e0-bbbd-3235d7f75b42","gone":0,"lift":1,"day":"2026-03-21"}');
INSERT INTO change VALUES(28,18,'photo',1,NULL,'{"uuid":"f80c6a5d-ec10-454d-aa54-45b2a556d21f","gone":0,"foot":1,"file":"foot.jpg"}');
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
INSERT INTO scale VALUES(1,'e230a47b-adf9-4168-abe3-b554ccbda1cc',0,'mobility-0-3','AHDB mobility, 0–3','AHDB, formerly DairyCo, mobility score sheet 2011',2.0,3.0,1.0);
CREATE TABLE scale_level (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    scale INTEGER NOT NULL REFERENCES scale (n),
    level REAL NOT NULL,
    words TEXT NOT NULL
) STRICT;
INSERT INTO scale_level VALUES(1,'9e64e283-d90c-4610-ab84-b9de6a1ae529',0,1,0.0,'Even rhythm and even load on four feet, flat back, long strides possible');
INSERT INTO scale_level VALUES(2,'e3eca0db-47b7-44c3-aad1-c9fa84055e2c',0,1,1.0,'Steps uneven or shortened, but the leg cannot be picked out at once');
INSERT INTO scale_level VALUES(3,'459fbe4d-fc2d-49c5-a2bd-a8a233ad985f',0,1,2.0,'Leg picked out at once, or clearly short strides; back usually arched');
INSERT INTO scale_level VALUES(4,'a7789cab-e918-4787-84ae-eeec7a241696',0,1,3.0,'As 2, and slower than a person walking briskly; falls behind sound cows');
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
INSERT INTO herd VALUES(1,'817d1de5-3067-438d-b5f4-8b8ffd637091',0,'Fixture Farm','UTC',1,1,2);
CREATE TABLE person (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    name TEXT NOT NULL,
    initials TEXT NOT NULL
) STRICT;
INSERT INTO person VALUES(1,'0ca6e2f4-4322-4895-9ab5-003849c4d03d',0,'Anna','An');
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
INSERT INTO cow VALUES(1,'b14d5d6d-820e-458f-a7b0-84b76ab57cd9',0,1,'Name of 0412',NULL,'2760000000412','2021-05-01',NULL,2,'');
INSERT INTO cow VALUES(2,'2d993e73-95d3-450f-a5de-95af00b49187',0,1,'Name of 0500',NULL,'2760000000500','2021-05-01',NULL,2,'');
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
INSERT INTO cow_number VALUES(1,'a93829da-4249-4ea1-b09c-12dadab38443',0,1,1,'0412','2026-03-14',NULL);
INSERT INTO cow_number VALUES(2,'fcd568a0-b0bb-46ec-8a5c-09317e6921fa',0,2,1,'0500','2026-03-14',NULL);
CREATE TABLE visit (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    herd INTEGER NOT NULL REFERENCES herd (n),
    day TEXT NOT NULL
) STRICT;
INSERT INTO visit VALUES(1,'c420bf05-0939-433e-be36-aee48bde7a8e',0,1,'2026-03-14');
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
INSERT INTO recording VALUES(1,'228534e4-5168-4889-a7b3-b264d80cb6d6',0,1,'/films/a.mp4','1234-a.mp4','h264',1920,1080,90,'1/90000',1500,-33000,60000000,1773468750123456);
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
INSERT INTO pass VALUES(1,'f20ef829-e0de-4afc-b13f-2d2d64fe047d',0,1,10,90,36000,324000,'1/90000','right-to-left',1);
CREATE TABLE gate_read (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    visit INTEGER NOT NULL REFERENCES visit (n),
    at_us INTEGER NOT NULL,
    tag TEXT NOT NULL,
    reader TEXT NOT NULL
) STRICT;
INSERT INTO gate_read VALUES(1,'5c78c000-f959-4ed2-8117-a2fc06137652',0,1,1773468750123456,'2760000000412','exit');
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
INSERT INTO score VALUES(1,'38973a7a-ef3c-4ca1-8e59-be4f1c1a862d',0,0,1,1,NULL,1,NULL,1,2.0,1773468750123456,0);
INSERT INTO score VALUES(2,'b89bc776-3313-49bf-be12-c38ae125e5b8',0,1,1,1,NULL,1,NULL,1,3.0,1773468750123456,0);
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
INSERT INTO tag VALUES(1,'ca00e2f5-7df5-48ef-a90d-8cf64ecd495d',0,1,1,'SIGN','short-stride','LH',20,72000,'1/90000','',1773468750123456);
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
INSERT INTO lift VALUES(1,'690c030f-e654-49b5-9ed9-29e234649081',0,1,'2026-03-14',1,NULL,0,0);
CREATE TABLE foot (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    lift INTEGER NOT NULL REFERENCES lift (n),
    leg TEXT NOT NULL CHECK (leg IN ('LF', 'RF', 'LH', 'RH')),
    no_lesion INTEGER NOT NULL CHECK (no_lesion IN (0, 1))
) STRICT;
INSERT INTO foot VALUES(1,'1dd0ff2d-9bad-4567-a9d5-c3434bcacbe3',0,1,'LH',0);
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
INSERT INTO finding VALUES(1,'b8acd8cd-7154-4aba-bb28-65f18fb243f5',0,1,'lateral',4,1,'SU',2,'','');
CREATE TABLE foot_action (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    foot INTEGER NOT NULL REFERENCES foot (n),
    action TEXT NOT NULL
) STRICT;
INSERT INTO foot_action VALUES(1,'69507985-d1e6-4357-9f97-a14316d0eaf7',0,1,'trimmed');
INSERT INTO foot_action VALUES(2,'57433de9-47af-4696-bffd-d15d8a6d48a4',0,1,'block-inner');
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
INSERT INTO block VALUES(1,'1a015ea1-4a4b-4c56-8457-52c721fa6b33',0,1,'LH','medial','2026-03-14',1,NULL,NULL);
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
INSERT INTO medicine VALUES(1,'0b27b4e6-2fc5-4b6f-b16e-ccc1900640cb',0,1,'p','g','','','','','','');
CREATE TABLE recheck (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    lift INTEGER NOT NULL REFERENCES lift (n),
    day TEXT NOT NULL
) STRICT;
INSERT INTO recheck VALUES(1,'fcf0f0ca-3115-40e0-bbbd-3235d7f75b42',0,1,'2026-03-21');
CREATE TABLE photo (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    foot INTEGER NOT NULL REFERENCES foot (n),
    file TEXT NOT NULL
) STRICT;
INSERT INTO photo VALUES(1,'f80c6a5d-ec10-454d-aa54-45b2a556d21f',0,1,'foot.jpg');
CREATE INDEX step_fate ON step (fate, n) WHERE fate IN ('stands', 'undone');
CREATE INDEX change_step ON change (step);
CREATE INDEX change_row ON change (kind, row);
CREATE TRIGGER change_stays BEFORE DELETE ON change BEGIN SELECT RAISE(ABORT, 'changes are never erased'); END;
CREATE TRIGGER change_as_it_was BEFORE UPDATE ON change BEGIN SELECT RAISE(ABORT, 'changes are never rewritten'); END;
CREATE UNIQUE INDEX scale_id ON scale (id) WHERE gone = 0;
CREATE UNIQUE INDEX scale_level_once ON scale_level (scale, level) WHERE gone = 0;
CREATE INDEX cow_herd ON cow (herd) WHERE gone = 0;
CREATE INDEX cow_tag ON cow (herd, tag) WHERE gone = 0 AND tag IS NOT NULL;
CREATE INDEX cow_number_cow ON cow_number (cow, from_day) WHERE gone = 0;
CREATE INDEX cow_number_number ON cow_number (herd, number, from_day) WHERE gone = 0;
CREATE UNIQUE INDEX visit_day ON visit (herd, day) WHERE gone = 0;
CREATE INDEX recording_visit ON recording (visit) WHERE gone = 0;
CREATE INDEX recording_fingerprint ON recording (fingerprint) WHERE gone = 0;
CREATE INDEX pass_recording ON pass (recording) WHERE gone = 0;
CREATE INDEX pass_cow ON pass (cow) WHERE gone = 0;
CREATE UNIQUE INDEX gate_read_once ON gate_read (visit, at_us, tag, reader) WHERE gone = 0;
CREATE UNIQUE INDEX score_in_force ON score (visit, cow, scorer, ifnull(leg, '')) WHERE gone = 0 AND in_force = 1;
CREATE INDEX score_cow ON score (cow, visit) WHERE gone = 0 AND in_force = 1;
CREATE TRIGGER score_stays BEFORE DELETE ON score BEGIN SELECT RAISE(ABORT, 'scores are never erased'); END;
CREATE TRIGGER score_as_given BEFORE UPDATE OF uuid, cow, visit, pass, scorer, leg, scale, level, at_us, seen ON score
WHEN OLD.uuid IS NOT NEW.uuid OR OLD.cow IS NOT NEW.cow OR OLD.visit IS NOT NEW.visit OR OLD.pass IS NOT NEW.pass
    OR OLD.scorer IS NOT NEW.scorer OR OLD.leg IS NOT NEW.leg OR OLD.scale IS NOT NEW.scale
    OR OLD.level IS NOT NEW.level OR OLD.at_us IS NOT NEW.at_us OR OLD.seen IS NOT NEW.seen
BEGIN SELECT RAISE(ABORT, 'scores are never overwritten'); END;
CREATE INDEX tag_pass ON tag (pass) WHERE gone = 0;
CREATE UNIQUE INDEX lift_once ON lift (cow, day) WHERE gone = 0;
CREATE INDEX lift_day ON lift (day) WHERE gone = 0;
CREATE UNIQUE INDEX foot_once ON foot (lift, leg) WHERE gone = 0;
CREATE INDEX finding_foot ON finding (foot) WHERE gone = 0;
CREATE UNIQUE INDEX foot_action_once ON foot_action (foot, action) WHERE gone = 0;
CREATE INDEX block_cow ON block (cow) WHERE gone = 0;
CREATE INDEX block_on_foot ON block (on_foot) WHERE gone = 0;
CREATE INDEX block_off_foot ON block (off_foot) WHERE gone = 0;
CREATE UNIQUE INDEX medicine_once ON medicine (lift) WHERE gone = 0;
CREATE UNIQUE INDEX recheck_once ON recheck (lift) WHERE gone = 0;
CREATE INDEX recheck_day ON recheck (day) WHERE gone = 0;
CREATE UNIQUE INDEX photo_once ON photo (foot, file) WHERE gone = 0;
COMMIT;
PRAGMA application_id = 1280724034;
PRAGMA user_version = 1;
