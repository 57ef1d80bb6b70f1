-- What is to be planned, and who is at it.
CREATE TABLE planning_job (
  club         text NOT NULL REFERENCES club,                    -- public
  number       bigint GENERATED ALWAYS AS IDENTITY,              -- club
  squad        text NOT NULL CHECK (squad <> ''),                -- club
  asked_by     text NOT NULL,                                    -- club
  asked        bigint NOT NULL,                                  -- club
  state        text NOT NULL DEFAULT 'waiting' CHECK (state IN ('waiting', 'taken', 'done', 'failed')), -- club
  takings      bigint NOT NULL DEFAULT 0 CHECK (takings >= 0),   -- club
  worker       text NOT NULL DEFAULT '',                         -- club
  until_moment bigint NOT NULL DEFAULT 0,                        -- club
  why          bytea,                                            -- personal: sealed under the store's key; null: nothing to say
  PRIMARY KEY (club, number)
);
CREATE UNIQUE INDEX planning_job_waits_once ON planning_job (club, squad) WHERE state = 'waiting';
CREATE INDEX planning_job_to_do ON planning_job (club, number) WHERE state IN ('waiting', 'taken');

-- What came of it, as it was made.
CREATE TABLE kept_plan (
  club   text NOT NULL REFERENCES club,                          -- public
  number bigint GENERATED ALWAYS AS IDENTITY,                    -- club
  squad  text NOT NULL CHECK (squad <> ''),                      -- club
  made   bigint NOT NULL,                                        -- club
  as_of  bigint NOT NULL CHECK (as_of >= 0),                     -- club
  body   bytea NOT NULL,                                         -- club: sealed under the store's key
  PRIMARY KEY (club, number)
);
CREATE INDEX kept_plan_by_squad ON kept_plan (club, squad, number);
