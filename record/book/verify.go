package book

import (
	"cmp"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"slices"
	"time"

	"golang.org/x/mod/sumdb/tlog"

	"backleaf/record"
	"backleaf/record/form"
	"backleaf/schema"
)

// ErrBroken: what is in the book does not hold together. Every failure found
// by [Book.Verify] wraps it.
var ErrBroken = errors.New("the book does not hold")

// BadEntry names an entry that does not hold.
type BadEntry struct {
	Seq int64
	Why string
}

func (e *BadEntry) Error() string { return fmt.Sprintf("entry %d: %s", e.Seq, e.Why) }

// damaged is [ErrBroken] of a file that SQLite finds fault with.
func damaged(err error) error {
	return fmt.Errorf("%w: the file is damaged; SQLite says: %w", ErrBroken, err)
}

// Unwrap returns [ErrBroken].
func (e *BadEntry) Unwrap() error { return ErrBroken }

// Report is what was found in a book that holds.
type Report struct {
	Entries int64
	Root    tlog.Hash
	Private int      // private parts that are there and fit their digests
	Missing []int64  // entries whose private part is not in this copy, though the journal does not say that it was erased
	Newer   int      // entries of which this program cannot read all: a later one wrote them
	Remarks []string // oddities that break nothing, such as a clock set back
}

// Verify reads the whole book back: every entry in canonical form and in
// sequence; every hash; the root; kept heads; private parts; the look-up tables against a rebuild; the
// guards and the file itself. The error names the first entry that does not
// hold, as a [*BadEntry], where one can be named. progress may be nil.
func (b *Book) Verify(ctx context.Context, progress func(done, total int64)) (Report, error) {
	if progress == nil {
		progress = func(int64, int64) {}
	}
	var r Report
	s, err := newSession(ctx, b.db) // of its own: beside the book it makes the look-up tables anew
	if err != nil {
		return r, err
	}
	file := make(chan error, 1)
	ctx, stop := context.WithCancel(ctx)
	go func() { file <- b.checkFile(ctx) }()
	v := &verifier{s: s, report: &r, progress: progress, newer: b.newer, look: b.look}
	if err = s.within(ctx, "BEGIN", func() error { return v.run(ctx) }); err != nil {
		stop()
	}
	err = cmp.Or(err, <-file)
	stop()
	err = errors.Join(err, s.close())
	if hasCode(err, codeCorrupt, codeNotADB) && !errors.Is(err, ErrBroken) {
		err = damaged(err)
	}
	if err != nil {
		return Report{}, err
	}
	return r, nil
}

// verifier replays a journal beside the book and compares.
type verifier struct {
	s        *session
	tree     tree // of the replay
	report   *Report
	progress func(done, total int64)
	private  map[int64]string // digests of entries that have a private part
	erased   map[int64]bool
	newer    bool
	look     freshness
}

func (v *verifier) run(ctx context.Context) error {
	for _, check := range []func(context.Context) error{v.replay, v.heads, v.privates, v.guards, v.lookups} {
		if err := errors.Join(ctx.Err(), check(ctx)); err != nil {
			return err
		}
	}
	return nil
}

// tree is the hashes of a tree as they are stored.
type tree []tlog.Hash

// ReadHashes implements [tlog.HashReader].
func (t tree) ReadHashes(indexes []int64) (out []tlog.Hash, err error) {
	for _, i := range indexes {
		out = append(out, t[i])
	}
	return out, nil
}

// replay reads every entry, and makes the tree and the look-up tables anew.
func (v *verifier) replay(ctx context.Context) error {
	if err := v.s.emptyLookups(ctx, true); err != nil {
		return err
	}
	d := blank(v.s)
	var total int64
	if _, err := v.s.one("SELECT count(*) FROM entry", nil, &total); err != nil {
		return err
	}
	v.private, v.erased = map[int64]string{}, map[int64]bool{}
	var before time.Time
	err := v.s.decoded(ctx, "SELECT seq, bytes FROM entry ORDER BY seq", nil, form.Read, func(st form.Stored, err error) error {
		seq, e := st.Seq, st.Entry
		if next := d.size + 1; seq != next {
			return &BadEntry{next, "it is missing"}
		}
		if err != nil {
			return &BadEntry{seq, err.Error()}
		}
		if e.Seq != seq {
			return &BadEntry{seq, fmt.Sprintf("it says that it is entry %d", e.Seq)}
		}
		written, ok := e.Written.Exact()
		if !ok {
			return &BadEntry{seq, "it does not say when it was written down"}
		}
		if written.Before(before) {
			v.report.Remarks = append(v.report.Remarks, fmt.Sprintf("entry %d was written at an earlier time than the one before it: a clock was set back", seq))
		}
		before = written
		if len(e.Newer) > 0 {
			v.report.Newer++
		}
		if err := d.index(e); err != nil {
			return &BadEntry{seq, err.Error()}
		}
		hashes, err := tlog.StoredHashes(d.size, st.Bytes, v.tree)
		if err != nil {
			return err
		}
		v.tree, d.size = append(v.tree, hashes...), seq
		if p := privateDigest(e); p != "" {
			v.private[seq] = p
		}
		if f, ok := e.Body.(record.Forgotten); ok {
			v.erased[f.Entry] = true
		}
		v.progress(seq, total)
		return nil
	})
	if err != nil {
		var bad *BadEntry
		if hasCode(err, codeCorrupt) && !errors.As(err, &bad) {
			return &BadEntry{d.size + 1, "it cannot be read: " + err.Error()}
		}
		return err
	}
	v.report.Entries = d.size
	if v.report.Root, err = tlog.TreeHash(d.size, v.tree); err != nil {
		return err
	}
	if err := v.hashes(); err != nil {
		return err
	}
	return d.indexPanels(ctx)
}

// hashes compares the stored tree with that of the replay.
func (v *verifier) hashes() error {
	differs := func(idx int64, why string) error {
		level, n := tlog.SplitStoredHashIndex(max(0, idx))
		switch {
		case level == 0:
			return &BadEntry{n + 1, why}
		case idx >= int64(len(v.tree)):
			return fmt.Errorf("%w: the tree has hashes of entries that are not there", ErrBroken)
		}
		return fmt.Errorf("%w: the hash over entries %d to %d is not theirs", ErrBroken, n<<level+1, (n+1)<<level)
	}
	next := int64(0)
	err := v.s.each("SELECT idx, node FROM hash ORDER BY idx", nil, func(scan func(...any) error) error {
		var idx int64
		var node sql.RawBytes
		if err := scan(&idx, &node); err != nil {
			return err
		}
		switch {
		case next == int64(len(v.tree)):
			return differs(max(idx, next), "it is missing: its hash is there")
		case idx > next:
			return differs(next, "its hash is missing")
		case idx < next || string(node) != string(v.tree[idx][:]):
			return differs(idx, "it is not what its hash was made from")
		}
		next++
		return nil
	})
	if err == nil && next < int64(len(v.tree)) {
		return differs(next, "its hash is missing")
	}
	return err
}

// heads compares the tip and the heads kept with the journal.
func (v *verifier) heads(context.Context) error {
	var size int64
	var root []byte
	ok, err := v.s.one("SELECT size, root FROM tip", nil, &size, &root)
	if err != nil {
		return err
	}
	switch {
	case !ok && v.report.Entries == 0:
	case !ok:
		return fmt.Errorf("%w: the number of entries and the root are missing", ErrBroken)
	case size > v.report.Entries:
		return &BadEntry{v.report.Entries + 1, fmt.Sprintf("it is missing: the journal had %d entries", size)}
	case size < v.report.Entries:
		return &BadEntry{size + 1, fmt.Sprintf("it was added behind the back of the book: the journal had %d entries", size)}
	case string(root) != string(v.report.Root[:]):
		return fmt.Errorf("%w: the root kept is not that of the entries", ErrBroken)
	}
	heads, err := v.s.heads()
	if err != nil {
		return err
	}
	for _, h := range heads {
		if h.Size > v.report.Entries {
			return &BadEntry{v.report.Entries + 1, fmt.Sprintf("it is missing: a head over %d entries was signed", h.Size)}
		}
		if h.Size < 0 {
			return fmt.Errorf("%w: a head over %d entries", ErrBroken, h.Size)
		}
		root, err := tlog.TreeHash(h.Size, v.tree)
		if err != nil {
			return err
		}
		if root != h.Root {
			return fmt.Errorf("%w: the head kept over %d entries is not that of this journal", ErrBroken, h.Size)
		}
	}
	return nil
}

// privates compares private parts with the digests in the journal.
func (v *verifier) privates(context.Context) error {
	err := v.s.each("SELECT seq, salt, data FROM private ORDER BY seq", nil, func(scan func(...any) error) error {
		var seq int64
		var p Private
		if err := scan(&seq, &p.Salt, &p.Data); err != nil {
			return err
		}
		switch {
		case v.erased[seq]:
			return &BadEntry{seq, "its private part was erased by the journal, but is there"}
		case v.private[seq] != p.Digest():
			return &BadEntry{seq, "its private part is not the one that was recorded"}
		}
		delete(v.private, seq)
		v.report.Private++
		return nil
	})
	if err != nil {
		return err
	}
	for seq := int64(1); seq <= v.report.Entries; seq++ {
		if v.private[seq] != "" && !v.erased[seq] {
			v.report.Missing = append(v.report.Missing, seq)
		}
	}
	return nil
}

// guards compares tables and triggers with those of a new book. Of a newer
// book this program knows only what it must not have lost.
func (v *verifier) guards(ctx context.Context) error {
	if v.newer {
		return nil
	}
	db, err := openMemory()
	if err != nil {
		return err
	}
	defer db.Close()
	again, err := newSession(ctx, db)
	if err != nil {
		return err
	}
	defer again.close()
	if _, err := again.conn.ExecContext(ctx, schema.Book+schema.Lookup); err != nil {
		return err
	}
	where := ""
	if v.look != fresh {
		where = "WHERE tbl_name IN ('entry', 'hash', 'tip', 'head', 'private', 'setting', 'posted') "
	}
	query := "SELECT type, name, tbl_name, coalesce(sql, '') FROM main.sqlite_schema " + where + "ORDER BY type, name"
	var mine, fresh [][]any
	if err := cmp.Or(v.s.rows(query, nil, func(x []any) { mine = append(mine, x) }), again.rows(query, nil, func(x []any) { fresh = append(fresh, x) })); err != nil {
		return err
	}
	for _, lists := range [][2][][]any{{mine, fresh}, {fresh, mine}} {
		for _, row := range lists[0] {
			if !slices.ContainsFunc(lists[1], func(x []any) bool { return slices.Equal(x, row) }) {
				return fmt.Errorf("%w: %v %v is not as the book was made", ErrBroken, row[0], row[1])
			}
		}
	}
	return nil
}

// lookups compares the look-up tables with those of the replay. Stale ones
// were made anew when the book was opened.
func (v *verifier) lookups(ctx context.Context) error {
	if v.look != fresh {
		return nil
	}
	for _, t := range lookupTables {
		columns := []string{"rowid"}
		if t != "words" {
			columns = nil
		}
		if err := v.s.rows("SELECT name FROM pragma_table_info(?)", t, func(x []any) { columns = append(columns, x[0].(string)) }); err != nil {
			return err
		}
		var counts [2]int64
		for i, sides := range [][2]string{{"temp", "main"}, {"main", "temp"}} {
			if _, err := v.s.one("SELECT count(*) FROM "+sides[0]+"."+t, nil, &counts[i]); err != nil {
				return err
			}
			if i > 0 && counts[0] == counts[1] {
				break // as many, and none is missing: the same
			}
			query := "SELECT " + columns[0] + " FROM " + sides[0] + "." + t + " x WHERE NOT EXISTS (SELECT 1 FROM " + sides[1] + "." + t + " y WHERE y." + columns[0] + " = x." + columns[0]
			for _, c := range columns[1:] {
				query += " AND y." + c + " IS x." + c
			}
			var near any
			if is, err := v.s.one(query+") LIMIT 1", nil, &near); err != nil {
				return err
			} else if is {
				return fmt.Errorf("%w: look-up table %s does not fit the journal near %v (the journal itself holds; rebuild the tables)", ErrBroken, t, near)
			}
		}
		if err := ctx.Err(); err != nil {
			return err
		}
	}
	return nil
}

// checkFile lets SQLite look at the file as a whole.
func (b *Book) checkFile(ctx context.Context) error {
	s, err := newSession(ctx, b.db)
	if err != nil {
		return err
	}
	defer s.close()
	var said string
	if err := s.conn.QueryRowContext(ctx, "PRAGMA main.integrity_check(1)").Scan(&said); err != nil {
		return err
	}
	if said != "ok" {
		return damaged(errors.New(said))
	}
	rows, err := s.conn.QueryContext(ctx, "PRAGMA main.foreign_key_check")
	if err != nil {
		return err
	}
	defer rows.Close()
	if rows.Next() {
		return fmt.Errorf("%w: a private part belongs to no entry", ErrBroken)
	}
	return rows.Err()
}
