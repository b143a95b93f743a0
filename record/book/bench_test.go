package book_test

import (
	"database/sql"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"golang.org/x/mod/sumdb/tlog"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/form"
	"backleaf/record/invented"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/toolcheck"
	"backleaf/schema"
)

// Each benchmark stands beside a bare baseline on the same library in the same
// run: the same bytes and look-up rows by prepared statements, same settings,
// without guards, judgement or reading back.

var muchLater = time.Date(2090, 1, 1, 0, 0, 0, 0, time.UTC)

// tables are those whose rows an import writes.
var tables = []string{"entry", "hash", "tip", "about", "mention", "correction", "described", "reading", "panel", "used", "taken", "words"}

// bare opens an empty book without guards, as SQLite alone.
func bare(b testing.TB, name string) *sql.DB {
	b.Helper()
	if name != ":memory:" {
		name = filepath.Join(b.TempDir(), name)
	}
	db, err := sql.Open("sqlite", "file:"+name+"?_pragma=journal_mode(wal)&_pragma=synchronous(2)&_txlock=immediate")
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { db.Close() })
	db.SetMaxOpenConns(1)
	tables, _, _ := strings.Cut(schema.Book, "CREATE TRIGGER")
	if _, err := db.Exec(tables + schema.Lookup); err != nil {
		b.Fatal(err)
	}
	return db
}

// rowsOf reads the rows of some tables, with the statements that write them.
func rowsOf(b testing.TB, db *sql.DB, tables ...string) map[string][][]any {
	b.Helper()
	out := map[string][][]any{}
	for _, t := range tables {
		columns := "*"
		if t == "words" {
			columns = "rowid, panel, text"
		}
		rows, err := db.Query("SELECT " + columns + " FROM " + t)
		if err != nil {
			b.Fatal(err)
		}
		names, err := rows.Columns()
		if err != nil {
			b.Fatal(err)
		}
		query := "INSERT INTO " + t + " (" + strings.Join(names, ", ") + ") VALUES (?" + strings.Repeat(", ?", len(names)-1) + ")"
		for rows.Next() {
			row, into := make([]any, len(names)), make([]any, len(names))
			for i := range row {
				into[i] = &row[i]
			}
			if err := rows.Scan(into...); err != nil {
				b.Fatal(err)
			}
			out[query] = append(out[query], row)
		}
		rows.Close()
	}
	return out
}

// insert writes rows in one transaction.
func insert(b testing.TB, db *sql.DB, rows map[string][][]any) {
	b.Helper()
	tx, err := db.Begin()
	if err != nil {
		b.Fatal(err)
	}
	for query, all := range rows {
		st, err := tx.Prepare(query)
		if err != nil {
			b.Fatal(err)
		}
		for _, row := range all {
			if _, err := st.Exec(row...); err != nil {
				b.Fatal(err)
			}
		}
	}
	if err := tx.Commit(); err != nil {
		b.Fatal(err)
	}
}

// One acknowledged entry about one panel and about a batch of fourteen: the
// write alone, and with all that an act at the bench looks at to judge it.
func BenchmarkAppend(b *testing.B) {
	k := newBook(b)
	if _, err := k.Append(ctx, muchLater, large(b)...); err != nil {
		b.Fatal(err)
	}
	for _, n := range []int{1, invented.Batch} {
		var coats []record.Entry
		for i := range toolcheck.Panels(b) / invented.Batch {
			coat := parsed(b, say(`{"kind":"coat","purpose":"sealer","faces":["back"],"wet_each":"9 g","mix":[{"parts":1,"material":"sealer","lot":"tin-%d"}],"panels":["KB90-0001-8"]}`, i/20*280))[0]
			coat.Panels = nil
			for p := range n {
				coat.Panels = append(coat.Panels, invented.Number(i*invented.Batch+p))
			}
			coats = append(coats, coat)
		}
		s := &studio.Session{Book: k, Clock: func() time.Time { return muchLater }, ClockIsRight: true}
		for name, do := range map[string]func(record.Entry) ([]record.Entry, error){
			"write": func(e record.Entry) ([]record.Entry, error) { return k.Append(ctx, muchLater, e) },
			"act": func(e record.Entry) ([]record.Entry, error) {
				terms := []string{string(e.Panels[0])}
				if n > 1 {
					terms[0] = say("batch:b%d", e.Panels[0].Serial()/n+1)
				}
				v, err := s.Look(ctx, terms, nil)
				if err != nil {
					return nil, err
				}
				v.AlsoAway = true
				w, err := bench.Do(ctx, v, record.Moment(v.Now), e.Body)
				return w.Entries, err
			},
		} {
			b.Run(say("%s/%d", name, n), func(b *testing.B) {
				db := bare(b, "bare.sqlite")
				insert(b, db, rowsOf(b, rawOf(b, k), tables...))
				add := map[string]*sql.Stmt{}
				for table, query := range map[string]string{
					"entry": "INSERT INTO entry (seq, bytes) VALUES (?, ?)", "hash": "INSERT INTO hash (node) VALUES (zeroblob(32))", "tip": "UPDATE tip SET size = ?",
					"about": "INSERT INTO about (seq, kind, panels) VALUES (?, 'coat', ?)", "mention": "INSERT INTO mention (panel, seq) VALUES (?, ?)",
					"taken": "INSERT INTO taken (seq, part, lot, mix, mg, ul, mm2) VALUES (?, 0, ?, ?, ?, 0, 0)"} {
					st, err := db.Prepare(query)
					if err != nil {
						b.Fatal(err)
					}
					add[table] = st
				}
				var e record.Entry
				var data []byte
				i := 0
				toolcheck.Against(b, func() {
					es, err := do(coats[i%len(coats)])
					if err != nil || len(es) != 1 {
						b.Fatal(err)
					}
					e = es[0]
					i++
				}, func() {
					tx, err := db.Begin()
					if err != nil {
						b.Fatal(err)
					}
					do := func(table string, args ...any) {
						if _, err := tx.Stmt(add[table]).Exec(args...); err != nil {
							b.Fatal(err)
						}
					}
					if data, err = form.Write(e); err != nil {
						b.Fatal(err)
					}
					do("entry", e.Seq, data)
					do("hash")
					do("hash")
					do("tip", e.Seq)
					do("about", e.Seq, n)
					do("taken", e.Seq, string(e.Body.(record.Coat).Mix[0].Lot), `{"mix":[{"parts":1,"material":"sealer","lot":"tin-000000"}]}`, 9000*n)
					for _, p := range e.Panels {
						do("mention", string(p), e.Seq)
					}
					if err := tx.Commit(); err != nil {
						b.Fatal(err)
					}
				})
			})
		}
	}
}

// rawOf opens the file of a book as SQLite alone.
func rawOf(b testing.TB, k *book.Book) *sql.DB {
	b.Helper()
	db, err := sql.Open("sqlite", "file:"+k.Path()+"?mode=ro")
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { db.Close() })
	return db
}

func large(b *testing.B) []record.Entry {
	return slices.Collect(invented.Journal(1, toolcheck.Panels(b)))
}

// A whole journal in one transaction.
func BenchmarkImport(b *testing.B) {
	es := large(b)
	once := newBook(b)
	if _, err := once.Append(ctx, muchLater, es...); err != nil {
		b.Fatal(err)
	}
	rows := rowsOf(b, rawOf(b, once), tables...)
	toolcheck.Against(b, func() {
		if _, err := newBook(b).Append(ctx, muchLater, es...); err != nil {
			b.Fatal(err)
		}
	}, func() { insert(b, bare(b, "bare.sqlite"), rows) })
	b.ReportMetric(float64(len(es)), "entries")
}

// Verify, against its parts done once: read, hash, test of the form, Fold, and
// the look-up rows written into memory.
func BenchmarkVerify(b *testing.B) {
	k, es := newBook(b), large(b)
	if _, err := k.Append(ctx, muchLater, es...); err != nil {
		b.Fatal(err)
	}
	db := rawOf(b, k)
	rows := rowsOf(b, db, tables[3:]...)
	toolcheck.Against(b, func() {
		if _, err := k.Verify(ctx, nil); err != nil {
			b.Fatal(err)
		}
	}, func() {
		all, err := db.Query("SELECT bytes FROM entry ORDER BY seq")
		if err != nil {
			b.Fatal(err)
		}
		var es []record.Entry
		for all.Next() {
			var data []byte
			if err := all.Scan(&data); err != nil {
				b.Fatal(err)
			}
			tlog.RecordHash(data)
			e, err := form.Read(data)
			if err != nil {
				b.Fatal(err)
			}
			es = append(es, e)
		}
		all.Close()
		if _, err := record.Fold(es); err != nil {
			b.Fatal(err)
		}
		insert(b, bare(b, ":memory:"), rows)
	})
	b.ReportMetric(float64(len(es)), "entries")
}

// One panel among many, read by index.
func BenchmarkOne(b *testing.B) {
	k := newBook(b)
	if _, err := k.Append(ctx, muchLater, large(b)...); err != nil {
		b.Fatal(err)
	}
	n, db := invented.Number(20), rawOf(b, k)
	toolcheck.Against(b, func() {
		if _, err := k.WorkshopOf(ctx, n); err != nil {
			b.Fatal(err)
		}
	}, func() {
		rows, err := db.Query("SELECT bytes FROM entry WHERE seq IN (SELECT seq FROM mention WHERE panel = ?) ORDER BY seq", string(n))
		if err != nil {
			b.Fatal(err)
		}
		defer rows.Close()
		var es []record.Entry
		for rows.Next() {
			var data []byte
			if err := rows.Scan(&data); err != nil {
				b.Fatal(err)
			}
			e, err := form.Decode(data)
			if err != nil {
				b.Fatal(err)
			}
			es = append(es, e)
		}
		if _, err := record.Fold(es); err != nil {
			b.Fatal(err)
		}
	})
}

// A list with two filters, against SQL written by hand.
func BenchmarkPanels(b *testing.B) {
	k := newBook(b)
	if _, err := k.Append(ctx, muchLater, large(b)...); err != nil {
		b.Fatal(err)
	}
	db, found := rawOf(b, k), 0
	toolcheck.Against(b, func() {
		found = 0
		if err := k.Panels(ctx, book.Narrow{Stage: record.StagePainted, Used: [][]string{{book.Lot("tin-0")}}}, func(book.Present) error { found++; return nil }); err != nil {
			b.Fatal(err)
		}
	}, func() {
		rows, err := db.Query("SELECT p.* FROM used u JOIN panel p ON p.number = u.panel WHERE u.thing = 'lot tin-0' AND p.stage = 'painted' ORDER BY year, serial")
		if err != nil {
			b.Fatal(err)
		}
		defer rows.Close()
		n := 0
		for ; rows.Next(); n++ {
			var row [14]any
			var into []any
			for i := range row {
				into = append(into, &row[i])
			}
			if err := rows.Scan(into...); err != nil {
				b.Fatal(err)
			}
		}
		if n != found || n == 0 {
			b.Fatalf("%d rows, %d panels", n, found)
		}
	})
}

// One writes, one entry after the other, each on the disk before the next,
// while another reads panels: how many of each in a second.
func BenchmarkReadWhileWriting(b *testing.B) {
	k := newBook(b)
	if _, err := k.Append(ctx, muchLater, large(b)...); err != nil {
		b.Fatal(err)
	}
	reader, err := book.OpenReadOnly(ctx, k.Path())
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { reader.Close() })
	var wrote, read int
	var took time.Duration
	for b.Loop() {
		until := time.Now().Add(500 * time.Millisecond)
		done := make(chan error, 1)
		go func() {
			var err error
			for ; err == nil && time.Now().Before(until); wrote++ {
				_, err = k.Append(ctx, muchLater, record.Entry{Panels: []record.Number{invented.Number(wrote % 14)}, Body: record.Note{Text: "a remark at the bench"}})
			}
			done <- err
		}()
		began := time.Now()
		for ; time.Now().Before(until); read++ {
			if _, err := reader.WorkshopOf(ctx, invented.Number(read%100)); err != nil {
				b.Fatal(err)
			}
		}
		took += time.Since(began)
		if err := <-done; err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(float64(wrote)/took.Seconds(), "entries/s")
	b.ReportMetric(float64(read)/took.Seconds(), "reads/s")
}
