-- The book: one SQLite file that holds the journal of a studio. The table of
-- entries never changes its form, so that any program reads any book.
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

-- Forms that were posted, by the token each carries, and the entries that came
-- of it: the same form posted twice writes once. Outside the journal.
CREATE TABLE posted (
  token TEXT PRIMARY KEY,
  first INTEGER NOT NULL,
  last  INTEGER NOT NULL
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
