package book

import (
	"context"
	"fmt"
	"strings"

	"backleaf/record/form"
	"backleaf/schema"
)

// lookupVersion grows whenever the look-up tables, or what is written into
// them, change; TestLookupForm remembers.
const lookupVersion = 4

// lookupForm is the digest of all that the look-up tables are made by: their
// SQL and the fields in which people write freely.
const lookupForm = "eb9df74163c2472c8f6fe45183670db252ad4a90856bbeb94efc540e4bd05783"

// madeBy is the SQL by which this program signs the look-up tables it made.
func madeBy() string {
	return fmt.Sprintf("INSERT INTO lookup (version, form) VALUES (%d, '%s');\n", lookupVersion, lookupForm)
}

// freshness is what the look-up tables of a book are to this program.
type freshness int

const (
	fresh freshness = iota
	stale           // made by an older program, or missing: they can be rebuilt
	ahead           // made by a newer program: they are left alone
)

func (s *session) lookups() (freshness, error) {
	there, err := s.one("SELECT 1 FROM main.sqlite_schema WHERE name = 'lookup'", nil, new(int))
	if err != nil || !there {
		return stale, err
	}
	var version int64
	var form string
	ok, err := s.one("SELECT version, form FROM main.lookup", nil, &version, &form)
	switch {
	case err != nil:
		return stale, err
	case ok && version > lookupVersion:
		return ahead, nil
	case ok && version == lookupVersion && form == lookupForm:
		return fresh, nil
	}
	return stale, nil
}

// Rebuild makes all look-up tables anew from the journal.
func (b *Book) Rebuild(ctx context.Context) error {
	return b.update(ctx, func(s *session) error { return s.rebuild(ctx, false) })
}

// rebuild makes the look-up tables anew: in the book, or beside it for this
// connection only, where the book must or can not be written to.
func (s *session) rebuild(ctx context.Context, beside bool) error {
	if err := s.emptyLookups(ctx, beside); err != nil {
		return err
	}
	d := blank(s)
	if err := s.decoded(ctx, "SELECT seq, bytes FROM entry ORDER BY seq", nil, form.Decode, func(st form.Stored, err error) error {
		if err = placed(st, err); err == nil {
			err = d.index(st.Entry)
		}
		return err
	}); err != nil {
		return err
	}
	return d.indexPanels(ctx)
}

// emptyLookups makes look-up tables without rows, as [session.rebuild] does.
func (s *session) emptyLookups(ctx context.Context, beside bool) error {
	sql := schema.Lookup
	if beside {
		// Names without a schema mean the temporary tables first
		// (https://www.sqlite.org/lang_naming.html).
		sql = strings.NewReplacer("CREATE TABLE ", "CREATE TEMP TABLE ", "CREATE INDEX ", "CREATE INDEX temp.", "CREATE VIRTUAL TABLE ", "CREATE VIRTUAL TABLE temp.").Replace(sql)
		sql = "PRAGMA temp_store = FILE;\n" + sql
	} else {
		for _, t := range lookupTables {
			sql = "DROP TABLE IF EXISTS main." + t + ";\n" + sql
		}
	}
	s.forget()
	_, err := s.conn.ExecContext(ctx, sql+madeBy())
	return err
}
