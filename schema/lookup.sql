-- Look-up tables of the book. All of them follow from the journal and can be
-- made anew; they have a version of their own, and stale ones are rebuilt.

-- Which program made them: one row.
CREATE TABLE lookup (
  version INTEGER NOT NULL,
  form    TEXT NOT NULL -- SHA-256 of what they are made by
) STRICT;

-- Every entry: what it is, how many panels it names.
CREATE TABLE about (
  seq    INTEGER PRIMARY KEY,
  kind   TEXT NOT NULL,
  panels INTEGER NOT NULL
) STRICT;
CREATE INDEX about_kind ON about (kind, seq);

-- Which entries name which panel.
CREATE TABLE mention (
  panel TEXT NOT NULL,
  seq   INTEGER NOT NULL,
  PRIMARY KEY (panel, seq)
) STRICT, WITHOUT ROWID;

-- Which entries amend or withdraw which.
CREATE TABLE correction (
  of  INTEGER NOT NULL,
  seq INTEGER NOT NULL,
  PRIMARY KEY (of, seq)
) STRICT, WITHOUT ROWID;

-- Which entries describe the studio, a maker or a thing on the shelf, and from
-- when on, after all corrections.
CREATE TABLE described (
  kind TEXT NOT NULL,
  name TEXT NOT NULL, -- the key, or empty for the studio
  seq  INTEGER NOT NULL,
  at   TEXT NOT NULL, -- EDTF, or empty where only the moment of writing is known
  PRIMARY KEY (kind, name, seq)
) STRICT, WITHOUT ROWID;

-- When each reading of the room begins, after all corrections, in Unix seconds;
-- null where its date leaves more than a day.
CREATE TABLE reading (
  seq   INTEGER PRIMARY KEY,
  first INTEGER
) STRICT;
CREATE INDEX reading_first ON reading (first);

-- Panels as they stand after all corrections: what a list of them says.
CREATE TABLE panel (
  number TEXT PRIMARY KEY,
  batch  TEXT NOT NULL,
  year   INTEGER NOT NULL, -- all four figures
  serial INTEGER NOT NULL,
  own    TEXT NOT NULL, -- the studio's own reference
  title  TEXT NOT NULL,
  made   TEXT NOT NULL, -- the work, EDTF
  cut    TEXT NOT NULL, -- the panel, EDTF
  size   TEXT NOT NULL,
  board  TEXT NOT NULL, -- lot, or else material
  stage  TEXT NOT NULL,
  place  TEXT NOT NULL, -- "studio", "discarded", or how it left
  since  TEXT NOT NULL, -- EDTF
  newer  INTEGER NOT NULL -- 1: a later program wrote of it
) STRICT, WITHOUT ROWID;
CREATE INDEX panel_year ON panel (year, serial);
CREATE INDEX panel_batch ON panel (batch);

-- Which materials and lots went into which panel.
CREATE TABLE used (
  panel TEXT NOT NULL,
  thing TEXT NOT NULL, -- "material KEY" or "lot KEY"
  PRIMARY KEY (panel, thing)
) STRICT, WITHOUT ROWID;
CREATE INDEX used_thing ON used (thing, panel);

-- What each act took of each lot, after all corrections.
CREATE TABLE taken (
  seq    INTEGER NOT NULL,
  part   INTEGER NOT NULL, -- of its panels, those of which it says the same, from 0
  lot    TEXT NOT NULL,
  mix    TEXT NOT NULL,    -- what was laid on, as JSON: parts and thinner; empty of a board or a cloth
  mg     REAL NOT NULL, -- of all of that on these panels; 0 where it is not known
  ul     REAL NOT NULL,
  mm2    REAL NOT NULL, -- of board for these panels
  beyond INTEGER,          -- of a cloth: µm beyond each edge of the panels
  panels TEXT,             -- these, as JSON; NULL: all of the entry
  PRIMARY KEY (lot, mix, seq, part)
) STRICT, WITHOUT ROWID;
CREATE INDEX taken_seq ON taken (seq);

-- Words that people wrote about a panel, for full-text search; one row a
-- panel, rowid = year * 10000000 + serial.
CREATE VIRTUAL TABLE words USING fts5 (panel UNINDEXED, text, tokenize = "unicode61 remove_diacritics 2");
