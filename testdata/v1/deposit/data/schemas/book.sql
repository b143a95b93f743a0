-- The book: one SQLite file that holds the journal of a studio.
-- application_id reads "BLFS"; user_version is the version of this form.
PRAGMA application_id = 0x424C4653;
PRAGMA user_version = 1;

-- The journal. Each entry is JSON in the canonical form of RFC 8785, numbered
-- from 1 without gaps. Nothing here is ever changed or removed.
CREATE TABLE entry (
  seq   INTEGER PRIMARY KEY,
  bytes BLOB NOT NULL
) STRICT;

-- The hash tree of RFC 6962 over the entries, in the order in which its nodes
-- are completed. Leaf i, counted from 0, is entry i + 1.
CREATE TABLE hash (
  idx  INTEGER PRIMARY KEY,
  node BLOB NOT NULL CHECK (length(node) = 32)
) STRICT;

-- Number of entries and root of the tree: one row, written with each entry.
CREATE TABLE tip (
  id   INTEGER PRIMARY KEY CHECK (id = 1),
  size INTEGER NOT NULL,
  root BLOB NOT NULL CHECK (length(root) = 32)
) STRICT;

-- Signed heads of the journal, as signed notes.
CREATE TABLE head (
  size INTEGER NOT NULL,
  root BLOB NOT NULL CHECK (length(root) = 32),
  note TEXT NOT NULL,
  PRIMARY KEY (size, note)
) STRICT, WITHOUT ROWID;

-- Private parts of entries (buyer, price). The entry holds only the SHA-256
-- of salt and data, so that a part can be erased and the journal still holds.
CREATE TABLE private (
  seq  INTEGER PRIMARY KEY REFERENCES entry (seq),
  salt BLOB NOT NULL,
  data BLOB NOT NULL
) STRICT;

-- Preferences of this copy, outside the journal.
CREATE TABLE setting (
  name  TEXT PRIMARY KEY,
  value TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- Guards against a slip, not against malice: whoever holds the file can drop
-- them. Evidence is the hash tree and a signed head kept elsewhere.
CREATE TRIGGER entry_next BEFORE INSERT ON entry
WHEN NEW.seq IS NOT (SELECT coalesce(max(seq), 0) + 1 FROM entry)
BEGIN SELECT RAISE(ABORT, 'an entry must be the next of the journal'); END;
CREATE TRIGGER entry_stays BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry never changes'); END;
CREATE TRIGGER entry_kept BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never removed'); END;
CREATE TRIGGER hash_next BEFORE INSERT ON hash
WHEN NEW.idx IS NOT (SELECT coalesce(max(idx), -1) + 1 FROM hash)
BEGIN SELECT RAISE(ABORT, 'a hash must be the next of the tree'); END;
CREATE TRIGGER hash_stays BEFORE UPDATE ON hash
BEGIN SELECT RAISE(ABORT, 'a hash never changes'); END;
CREATE TRIGGER hash_kept BEFORE DELETE ON hash
BEGIN SELECT RAISE(ABORT, 'a hash is never removed'); END;
CREATE TRIGGER tip_grows BEFORE UPDATE ON tip
WHEN NEW.size <= OLD.size
BEGIN SELECT RAISE(ABORT, 'the journal only grows'); END;
CREATE TRIGGER tip_kept BEFORE DELETE ON tip
BEGIN SELECT RAISE(ABORT, 'the tip is never removed'); END;
CREATE TRIGGER head_stays BEFORE UPDATE ON head
BEGIN SELECT RAISE(ABORT, 'a head never changes'); END;
CREATE TRIGGER head_kept BEFORE DELETE ON head
BEGIN SELECT RAISE(ABORT, 'a head is never removed'); END;
CREATE TRIGGER private_stays BEFORE UPDATE ON private
BEGIN SELECT RAISE(ABORT, 'a private part never changes'); END;

-- Look-up tables. All of them follow from the journal and can be made anew.

-- Every entry: what it is, when, how many panels it names.
CREATE TABLE about (
  seq     INTEGER PRIMARY KEY,
  kind    TEXT NOT NULL,
  at      TEXT NOT NULL, -- EDTF as recorded, or empty
  written TEXT NOT NULL,
  panels  INTEGER NOT NULL
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

-- The shelf; seq is the entry that describes the thing now.
CREATE TABLE material (
  material TEXT PRIMARY KEY,
  seq      INTEGER NOT NULL,
  name     TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE lot (
  lot      TEXT PRIMARY KEY,
  seq      INTEGER NOT NULL,
  material TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- Panels as they stand after all corrections. Dates are EDTF texts; the
-- bounds beside them are days, or empty.
CREATE TABLE panel (
  number    TEXT PRIMARY KEY,
  batch     TEXT NOT NULL,
  year      INTEGER NOT NULL,
  serial    INTEGER NOT NULL,
  size      TEXT NOT NULL,
  stage     TEXT NOT NULL,
  title     TEXT NOT NULL,
  reference TEXT NOT NULL, -- the studio's own
  cut       TEXT NOT NULL,
  cut_from  TEXT NOT NULL,
  cut_to    TEXT NOT NULL,
  made      TEXT NOT NULL,
  made_from TEXT NOT NULL,
  made_to   TEXT NOT NULL,
  discarded INTEGER NOT NULL, -- entry, or 0
  away      INTEGER NOT NULL  -- entry by which it left, or 0
) STRICT, WITHOUT ROWID;
CREATE INDEX panel_batch ON panel (batch);
CREATE INDEX panel_year ON panel (year, serial);

-- What went into which panel, by which entry, after all corrections.
CREATE TABLE material_use (
  panel    TEXT NOT NULL,
  seq      INTEGER NOT NULL,
  material TEXT NOT NULL,
  PRIMARY KEY (panel, seq, material)
) STRICT, WITHOUT ROWID;
CREATE INDEX material_use_of ON material_use (material);
CREATE TABLE lot_use (
  panel TEXT NOT NULL,
  seq   INTEGER NOT NULL,
  lot   TEXT NOT NULL,
  PRIMARY KEY (panel, seq, lot)
) STRICT, WITHOUT ROWID;
CREATE INDEX lot_use_of ON lot_use (lot);

-- Words of titles, notes, remarks and inscriptions, for full-text search; one
-- row a panel, rowid = year * 10000000 + serial.
CREATE VIRTUAL TABLE words USING fts5 (panel UNINDEXED, text, tokenize = "unicode61 remove_diacritics 2");
