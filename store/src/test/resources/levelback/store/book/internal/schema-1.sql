PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE book (
    n INTEGER PRIMARY KEY CHECK (n = 1),
    uuid TEXT NOT NULL,
    made_us INTEGER NOT NULL
) STRICT;
INSERT INTO book VALUES(1,'27b9fc06-f9d0-4bcf-aaf0-bd716a68a381',1795610853879484);
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
INSERT INTO step VALUES(1,1795610854199725,'','Herd Fixture Farm',NULL,NULL,'stands');
INSERT INTO step VALUES(2,1795610854290749,'','Person Anna',NULL,NULL,'stands');
INSERT INTO step VALUES(3,1795610854313206,'','Cow 0412',NULL,NULL,'stands');
INSERT INTO step VALUES(4,1795610854384953,'','Cow 0500',NULL,NULL,'stands');
INSERT INTO step VALUES(5,1795610854492794,'','Visit of 2026-03-14',NULL,NULL,'stands');
INSERT INTO step VALUES(6,1795610854575676,'','Recording a.mp4',NULL,NULL,'stands');
INSERT INTO step VALUES(7,1795610854642658,'','Pass',NULL,NULL,'stands');
INSERT INTO step VALUES(8,1795610854678851,'','Gate read of 2760000000412',NULL,NULL,'stands');
INSERT INTO step VALUES(9,1795610854800262,'','Tag short-stride',NULL,NULL,'stands');
INSERT INTO step VALUES(10,1795610855030766,'','Score 2.0',NULL,NULL,'stands');
INSERT INTO step VALUES(11,1795610855450860,'','Score 3.0',NULL,NULL,'stands');
INSERT INTO step VALUES(12,1795610855501100,'','Card of 2026-03-14',NULL,NULL,'stands');
INSERT INTO step VALUES(13,1795610855536978,'','Foot LH',NULL,NULL,'stands');
INSERT INTO step VALUES(14,1795610855633785,'','Finding SU',NULL,NULL,'stands');
INSERT INTO step VALUES(15,1795610855717076,'','What was done',NULL,NULL,'stands');
INSERT INTO step VALUES(16,1795610855728848,'','Medicine note',NULL,NULL,'stands');
INSERT INTO step VALUES(17,1795610855763818,'','Look again on 2026-03-21',NULL,NULL,'stands');
INSERT INTO step VALUES(18,1795610855770438,'','Photo foot.jpg',NULL,NULL,'stands');
CREATE TABLE change (
    n INTEGER PRIMARY KEY,
    step INTEGER NOT NULL REFERENCES step (n),
    kind TEXT NOT NULL,
    row INTEGER NOT NULL,
    was TEXT,
    now TEXT NOT NULL
) STRICT;
INSERT INTO change VALUES(1,1,'scale',1,NULL,'{"uuid":"8ce4139d-3f12-40ab-a4c1-744323a856ed","gone":0,"id":"mobility-0-3","name":"AHDB mobility, 0–3","source":"AHDB, formerly DairyCo, mobility score sheet 2011","lame_cut":2.0,"severe_cut":3.0,"step":1.0}');
INSERT INTO change VALUES(2,1,'scale_level',1,NULL,'{"uuid":"8130e8b5-e59e-4e4d-9172-689bf21bd973","gone":0,"scale":1,"level":0.0,"words":"Even rhythm and even load on four feet, flat back, long strides possible"}');
INSERT INTO change VALUES(3,1,'scale_level',2,NULL,'{"uuid":"30ad1354-e7f6-4683-91fc-48290b8552a2","gone":0,"scale":1,"level":1.0,"words":"Steps uneven or shortened, but the leg cannot be picked out at once"}');
INSERT INTO change VALUES(4,1,'scale_level',3,NULL,'{"uuid":"6cf40d05-0d03-486f-b197-07a0c202fe14","gone":0,"scale":1,"level":2.0,"words":"Leg picked out at once, or clearly short strides; back usually arched"}');
INSERT INTO change VALUES(5,1,'scale_level',4,NULL,'{"uuid":"3c95d095-ab08-4d58-8631-9db429771ea5","gone":0,"scale":1,"level":3.0,"words":"As 2, and slower than a person walking briskly; falls behind sound cows"}');
INSERT INTO change VALUES(6,1,'herd',1,NULL,'{"uuid":"61c3ce5f-ede1-42f2-a16c-eaafee878851","gone":0,"name":"Fixture Farm","zone":"UTC","scale":1,"scale_chosen":1,"cows_in_milk":2}');
INSERT INTO change VALUES(7,2,'person',1,NULL,'{"uuid":"c2294844-1852-4c94-8743-3161aeb9297f","gone":0,"name":"Anna","initials":"An"}');
INSERT INTO change VALUES(8,3,'cow',1,NULL,'{"uuid":"f32fd77d-bef7-4534-9f58-5409fe41202c","gone":0,"herd":1,"name":"Name of 0412","official_id":null,"tag":"2760000000412","birth":"2021-05-01","calving":null,"parity":2,"note":""}');
INSERT INTO change VALUES(9,3,'cow_number',1,NULL,'{"uuid":"517ec9a6-8f7c-41ca-be95-40ffa1d358a3","gone":0,"cow":1,"herd":1,"number":"0412","from_day":"2026-03-14","until_day":null}');
INSERT INTO change VALUES(10,4,'cow',2,NULL,'{"uuid":"fb63805e-6fbe-4e5b-8279-619bdb7c458a","gone":0,"herd":1,"name":"Name of 0500","official_id":null,"tag":"2760000000500","birth":"2021-05-01","calving":null,"parity":2,"note":""}');
INSERT INTO change VALUES(11,4,'cow_number',2,NULL,'{"uuid":"4750bb35-d3d6-43c3-867a-814dabb2ef3d","gone":0,"cow":2,"herd":1,"number":"0500","from_day":"2026-03-14","until_day":null}');
INSERT INTO change VALUES(12,5,'visit',1,NULL,'{"uuid":"1377355f-7cfe-45ae-9518-69426401ff5b","gone":0,"herd":1,"day":"2026-03-14"}');
INSERT INTO change VALUES(13,6,'recording',1,NULL,'{"uuid":"ac5a2aeb-e88a-4746-881d-0fde7fe716bd","gone":0,"visit":1,"file":"/films/a.mp4","fingerprint":"1234-a.mp4","codec":"h264","width":1920,"height":1080,"rotation_degrees":90,"time_base":"1/90000","frame_count":1500,"start_us":-33000,"duration_us":60000000,"recorded_us":1773468750123456}');
INSERT INTO change VALUES(14,7,'pass',1,NULL,'{"uuid":"1d4dfc08-2d94-45f9-8045-e15ce133061c","gone":0,"recording":1,"from_frame":10,"to_frame":90,"from_ticks":36000,"to_ticks":324000,"time_base":"1/90000","direction":"right-to-left","cow":1}');
INSERT INTO change VALUES(15,8,'gate_read',1,NULL,'{"uuid":"cf4837d5-4a9d-4130-a91a-f2ab94a9ee21","gone":0,"visit":1,"at_us":1773468750123456,"tag":"2760000000412","reader":"exit"}');
INSERT INTO change VALUES(16,9,'tag',1,NULL,'{"uuid":"9d3669d7-c7f3-40c7-aaec-f40eef4a12ca","gone":0,"pass":1,"person":1,"kind":"SIGN","key":"short-stride","leg":"LH","frame":20,"ticks":72000,"time_base":"1/90000","note":"","at_us":1773468750123456}');
INSERT INTO change VALUES(17,10,'score',1,NULL,'{"uuid":"4d994400-4aa8-4aac-a897-5a28c206cce0","gone":0,"in_force":1,"cow":1,"visit":1,"pass":null,"scorer":1,"leg":null,"scale":1,"level":2.0,"at_us":1773468750123456,"seen":0}');
INSERT INTO change VALUES(18,11,'score',1,'{"uuid":"4d994400-4aa8-4aac-a897-5a28c206cce0","gone":0,"in_force":1,"cow":1,"visit":1,"pass":null,"scorer":1,"leg":null,"scale":1,"level":2.0,"at_us":1773468750123456,"seen":0}','{"uuid":"4d994400-4aa8-4aac-a897-5a28c206cce0","gone":0,"in_force":0,"cow":1,"visit":1,"pass":null,"scorer":1,"leg":null,"scale":1,"level":2.0,"at_us":1773468750123456,"seen":0}');
INSERT INTO change VALUES(19,11,'score',2,NULL,'{"uuid":"37d32548-be51-4c94-88c1-1b21cf8e3912","gone":0,"in_force":1,"cow":1,"visit":1,"pass":null,"scorer":1,"leg":null,"scale":1,"level":3.0,"at_us":1773468750123456,"seen":0}');
INSERT INTO change VALUES(20,12,'lift',1,NULL,'{"uuid":"5b32d595-9504-49fc-a882-65cca7782188","gone":0,"cow":1,"day":"2026-03-14","trimmer":1,"chance":null,"refused":0,"done":0}');
INSERT INTO change VALUES(21,13,'foot',1,NULL,'{"uuid":"26f96682-c8d3-4ae5-ae98-fd21d2b77ce1","gone":0,"lift":1,"leg":"LH","no_lesion":0}');
INSERT INTO change VALUES(22,14,'finding',1,NULL,'{"uuid":"f5bb42d7-76c0-44d2-b290-465e93fc573d","gone":0,"foot":1,"claw":"lateral","zone":4,"zone_confirmed":1,"lesion":"SU","severity":2,"stage":"","note":""}');
INSERT INTO change VALUES(23,15,'foot_action',1,NULL,'{"uuid":"fa46fd86-8f36-4310-a235-33e15b2f911f","gone":0,"foot":1,"action":"trimmed"}');
INSERT INTO change VALUES(24,15,'foot_action',2,NULL,'{"uuid":"b0ffdccd-a962-4150-b233-e23fa362add1","gone":0,"foot":1,"action":"block-inner"}');
INSERT INTO change VALUES(25,15,'block',1,NULL,'{"uuid":"2aea0d3b-d7b4-4930-bd58-72b1b246b260","gone":0,"cow":1,"leg":"LH","claw":"medial","on_day":"2026-03-14","on_foot":1,"off_day":null,"off_foot":null}');
INSERT INTO change VALUES(26,16,'medicine',1,NULL,'{"uuid":"f4bcfc27-639c-42fc-84bc-f94a8626e898","gone":0,"lift":1,"product":"p","given_by":"g","milk_withheld_until":"","meat_withheld_until":"","batch":"","given_at":"","dose_as_given":"","prescribed_by":""}');
INSERT INTO change VALUES(27,17,'recheck',1,NULL,'{"uuid":"d7602887-2373-4529-8572-b73018fb7582","gone":0,"lift":1,"day":"2026-03-21"}');
INSERT INTO change VALUES(28,18,'photo',1,NULL,'{"uuid":"caf73c8c-eca2-4315-b04b-f785329d9e7e","gone":0,"foot":1,"file":"foot.jpg"}');
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
INSERT INTO scale VALUES(1,'8ce4139d-3f12-40ab-a4c1-744323a856ed',0,'mobility-0-3','AHDB mobility, 0–3','AHDB, formerly DairyCo, mobility score sheet 2011',2.0,3.0,1.0);
CREATE TABLE scale_level (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    scale INTEGER NOT NULL REFERENCES scale (n),
    level REAL NOT NULL,
    words TEXT NOT NULL
) STRICT;
INSERT INTO scale_level VALUES(1,'8130e8b5-e59e-4e4d-9172-689bf21bd973',0,1,0.0,'Even rhythm and even load on four feet, flat back, long strides possible');
INSERT INTO scale_level VALUES(2,'30ad1354-e7f6-4683-91fc-48290b8552a2',0,1,1.0,'Steps uneven or shortened, but the leg cannot be picked out at once');
INSERT INTO scale_level VALUES(3,'6cf40d05-0d03-486f-b197-07a0c202fe14',0,1,2.0,'Leg picked out at once, or clearly short strides; back usually arched');
INSERT INTO scale_level VALUES(4,'3c95d095-ab08-4d58-8631-9db429771ea5',0,1,3.0,'As 2, and slower than a person walking briskly; falls behind sound cows');
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
INSERT INTO herd VALUES(1,'61c3ce5f-ede1-42f2-a16c-eaafee878851',0,'Fixture Farm','UTC',1,1,2);
CREATE TABLE person (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    name TEXT NOT NULL,
    initials TEXT NOT NULL
) STRICT;
INSERT INTO person VALUES(1,'c2294844-1852-4c94-8743-3161aeb9297f',0,'Anna','An');
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
INSERT INTO cow VALUES(1,'f32fd77d-bef7-4534-9f58-5409fe41202c',0,1,'Name of 0412',NULL,'2760000000412','2021-05-01',NULL,2,'');
INSERT INTO cow VALUES(2,'fb63805e-6fbe-4e5b-8279-619bdb7c458a',0,1,'Name of 0500',NULL,'2760000000500','2021-05-01',NULL,2,'');
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
INSERT INTO cow_number VALUES(1,'517ec9a6-8f7c-41ca-be95-40ffa1d358a3',0,1,1,'0412','2026-03-14',NULL);
INSERT INTO cow_number VALUES(2,'4750bb35-d3d6-43c3-867a-814dabb2ef3d',0,2,1,'0500','2026-03-14',NULL);
CREATE TABLE visit (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    herd INTEGER NOT NULL REFERENCES herd (n),
    day TEXT NOT NULL
) STRICT;
INSERT INTO visit VALUES(1,'1377355f-7cfe-45ae-9518-69426401ff5b',0,1,'2026-03-14');
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
INSERT INTO recording VALUES(1,'ac5a2aeb-e88a-4746-881d-0fde7fe716bd',0,1,'/films/a.mp4','1234-a.mp4','h264',1920,1080,90,'1/90000',1500,-33000,60000000,1773468750123456);
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
INSERT INTO pass VALUES(1,'1d4dfc08-2d94-45f9-8045-e15ce133061c',0,1,10,90,36000,324000,'1/90000','right-to-left',1);
CREATE TABLE gate_read (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    visit INTEGER NOT NULL REFERENCES visit (n),
    at_us INTEGER NOT NULL,
    tag TEXT NOT NULL,
    reader TEXT NOT NULL
) STRICT;
INSERT INTO gate_read VALUES(1,'cf4837d5-4a9d-4130-a91a-f2ab94a9ee21',0,1,1773468750123456,'2760000000412','exit');
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
INSERT INTO score VALUES(1,'4d994400-4aa8-4aac-a897-5a28c206cce0',0,0,1,1,NULL,1,NULL,1,2.0,1773468750123456,0);
INSERT INTO score VALUES(2,'37d32548-be51-4c94-88c1-1b21cf8e3912',0,1,1,1,NULL,1,NULL,1,3.0,1773468750123456,0);
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
INSERT INTO tag VALUES(1,'9d3669d7-c7f3-40c7-aaec-f40eef4a12ca',0,1,1,'SIGN','short-stride','LH',20,72000,'1/90000','',1773468750123456);
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
INSERT INTO lift VALUES(1,'5b32d595-9504-49fc-a882-65cca7782188',0,1,'2026-03-14',1,NULL,0,0);
CREATE TABLE foot (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    lift INTEGER NOT NULL REFERENCES lift (n),
    leg TEXT NOT NULL CHECK (leg IN ('LF', 'RF', 'LH', 'RH')),
    no_lesion INTEGER NOT NULL CHECK (no_lesion IN (0, 1))
) STRICT;
INSERT INTO foot VALUES(1,'26f96682-c8d3-4ae5-ae98-fd21d2b77ce1',0,1,'LH',0);
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
INSERT INTO finding VALUES(1,'f5bb42d7-76c0-44d2-b290-465e93fc573d',0,1,'lateral',4,1,'SU',2,'','');
CREATE TABLE foot_action (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    foot INTEGER NOT NULL REFERENCES foot (n),
    action TEXT NOT NULL
) STRICT;
INSERT INTO foot_action VALUES(1,'fa46fd86-8f36-4310-a235-33e15b2f911f',0,1,'trimmed');
INSERT INTO foot_action VALUES(2,'b0ffdccd-a962-4150-b233-e23fa362add1',0,1,'block-inner');
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
INSERT INTO block VALUES(1,'2aea0d3b-d7b4-4930-bd58-72b1b246b260',0,1,'LH','medial','2026-03-14',1,NULL,NULL);
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
INSERT INTO medicine VALUES(1,'f4bcfc27-639c-42fc-84bc-f94a8626e898',0,1,'p','g','','','','','','');
CREATE TABLE recheck (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    lift INTEGER NOT NULL REFERENCES lift (n),
    day TEXT NOT NULL
) STRICT;
INSERT INTO recheck VALUES(1,'d7602887-2373-4529-8572-b73018fb7582',0,1,'2026-03-21');
CREATE TABLE photo (
    n INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    gone INTEGER NOT NULL DEFAULT 0,
    foot INTEGER NOT NULL REFERENCES foot (n),
    file TEXT NOT NULL
) STRICT;
INSERT INTO photo VALUES(1,'caf73c8c-eca2-4315-b04b-f785329d9e7e',0,1,'foot.jpg');
CREATE INDEX step_fate ON step (fate, n) WHERE fate IN ('stands', 'undone');
CREATE INDEX change_step ON change (step);
CREATE INDEX change_row ON change (kind, row);
CREATE TRIGGER change_stays BEFORE DELETE ON change BEGIN SELECT RAISE(ABORT, 'changes are never erased'); END;
CREATE TRIGGER change_as_it_was BEFORE UPDATE ON change BEGIN SELECT RAISE(ABORT, 'changes are never rewritten'); END;
CREATE UNIQUE INDEX scale_id ON scale (id) WHERE gone = 0;
CREATE UNIQUE INDEX scale_level_once ON scale_level (scale, level) WHERE gone = 0;
CREATE INDEX cow_herd ON cow (herd) WHERE gone = 0;
CREATE INDEX cow_tag ON cow (herd, tag) WHERE gone = 0 AND tag IS NOT NULL;
CREATE INDEX cow_number_cow ON cow_number (cow, from_day);
CREATE INDEX cow_number_number ON cow_number (herd, number, from_day) WHERE gone = 0;
CREATE UNIQUE INDEX visit_day ON visit (herd, day) WHERE gone = 0;
CREATE INDEX recording_visit ON recording (visit) WHERE gone = 0;
CREATE INDEX recording_fingerprint ON recording (fingerprint) WHERE gone = 0;
CREATE INDEX pass_recording ON pass (recording) WHERE gone = 0;
CREATE INDEX pass_cow ON pass (cow);
CREATE UNIQUE INDEX gate_read_once ON gate_read (visit, at_us, tag, reader) WHERE gone = 0;
CREATE UNIQUE INDEX score_in_force ON score (visit, cow, scorer, ifnull(leg, '')) WHERE gone = 0 AND in_force = 1;
CREATE INDEX score_cow ON score (cow, visit);
CREATE TRIGGER score_stays BEFORE DELETE ON score BEGIN SELECT RAISE(ABORT, 'scores are never erased'); END;
CREATE TRIGGER score_as_given BEFORE UPDATE OF uuid, cow, visit, pass, scorer, leg, scale, level, at_us, seen ON score
WHEN OLD.uuid IS NOT NEW.uuid OR OLD.cow IS NOT NEW.cow OR OLD.visit IS NOT NEW.visit OR OLD.pass IS NOT NEW.pass
    OR OLD.scorer IS NOT NEW.scorer OR OLD.leg IS NOT NEW.leg OR OLD.scale IS NOT NEW.scale
    OR OLD.level IS NOT NEW.level OR OLD.at_us IS NOT NEW.at_us OR OLD.seen IS NOT NEW.seen
BEGIN SELECT RAISE(ABORT, 'scores are never overwritten'); END;
CREATE INDEX tag_pass ON tag (pass);
CREATE UNIQUE INDEX lift_once ON lift (cow, day) WHERE gone = 0;
CREATE INDEX lift_cow ON lift (cow);
CREATE INDEX lift_day ON lift (day) WHERE gone = 0;
CREATE INDEX foot_lift ON foot (lift);
CREATE UNIQUE INDEX foot_once ON foot (lift, leg) WHERE gone = 0;
CREATE INDEX finding_foot ON finding (foot);
CREATE INDEX foot_action_foot ON foot_action (foot);
CREATE UNIQUE INDEX foot_action_once ON foot_action (foot, action) WHERE gone = 0;
CREATE INDEX block_cow ON block (cow);
CREATE INDEX block_on_foot ON block (on_foot) WHERE gone = 0;
CREATE INDEX block_off_foot ON block (off_foot) WHERE gone = 0;
CREATE UNIQUE INDEX medicine_once ON medicine (lift) WHERE gone = 0;
CREATE UNIQUE INDEX recheck_once ON recheck (lift) WHERE gone = 0;
CREATE INDEX recheck_day ON recheck (day) WHERE gone = 0;
CREATE UNIQUE INDEX photo_once ON photo (foot, file) WHERE gone = 0;
COMMIT;
PRAGMA application_id = 1280724034;
PRAGMA user_version = 1;
