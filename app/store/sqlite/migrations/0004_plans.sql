-- What is to be planned, and who is at it.
CREATE TABLE planning_job (
  number       INTEGER PRIMARY KEY CHECK (number > 0),           -- club
  club         TEXT NOT NULL DEFAULT '' CHECK (club = ''),       -- public
  squad        TEXT NOT NULL CHECK (squad <> ''),                -- club
  asked_by     TEXT NOT NULL,                                    -- club
  asked        INTEGER NOT NULL,                                 -- club
  state        TEXT NOT NULL DEFAULT 'waiting' CHECK (state IN ('waiting', 'taken', 'done', 'failed')), -- club
  takings      INTEGER NOT NULL DEFAULT 0 CHECK (takings >= 0),  -- club
  worker       TEXT NOT NULL DEFAULT '',                         -- club
  until_moment INTEGER NOT NULL DEFAULT 0,                       -- club
  why          BLOB                                              -- personal: sealed under the store's key; null: nothing to say
) STRICT;
CREATE UNIQUE INDEX planning_job_waits_once ON planning_job (squad, club) WHERE state = 'waiting';
CREATE INDEX planning_job_to_do ON planning_job (number) WHERE state IN ('waiting', 'taken');

-- What came of it, as it was made.
CREATE TABLE kept_plan (
  number INTEGER PRIMARY KEY CHECK (number > 0),                 -- club
  club   TEXT NOT NULL DEFAULT '' CHECK (club = ''),             -- public
  squad  TEXT NOT NULL CHECK (squad <> ''),                      -- club
  made   INTEGER NOT NULL,                                       -- club
  as_of  INTEGER NOT NULL CHECK (as_of >= 0),                    -- club
  body   BLOB NOT NULL                                           -- club: sealed under the store's key
) STRICT;
CREATE INDEX kept_plan_by_squad ON kept_plan (squad, number, club);
