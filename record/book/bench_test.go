package book_test

import (
	"database/sql"
	"path/filepath"
	"testing"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/form"
)

// Each benchmark of the book stands beside "bare": the same bytes, one row an
// entry, same settings, no hashes, no checks, no look-up tables.

func bare(b *testing.B) *sql.DB {
	db, err := sql.Open("sqlite", "file:"+filepath.Join(b.TempDir(), "bare")+"?_pragma=journal_mode(wal)&_pragma=synchronous(2)&_txlock=immediate")
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { db.Close() })
	if _, err := db.Exec("CREATE TABLE entry (seq INTEGER PRIMARY KEY, bytes BLOB NOT NULL) STRICT"); err != nil {
		b.Fatal(err)
	}
	return db
}

func BenchmarkAppend(b *testing.B) {
	coat := parsed(b, `{"kind":"coat","purpose":"sealer","faces":["front","back","edges"],"mix":[{"parts":1,"material":"sealer","lot":"sealer-1"}],`+panels(1, 3)+`}`)[0]
	data, err := form.Write(coat)
	if err != nil {
		b.Fatal(err)
	}
	for _, n := range []int{1, 14} {
		many := make([]record.Entry, n)
		for i := range many {
			many[i] = record.Entry{Panels: []record.Number{number(i%3 + 1)}, Body: record.Note{Text: "a remark at the bench"}}
		}
		b.Run(say("book/%d", n), func(b *testing.B) {
			k := newBook(b)
			put(b, k, afternoon()...)
			fresh := 0
			for b.Loop() {
				if fresh++; fresh%40 == 0 { // panels of ordinary age: a few dozen entries
					b.StopTimer()
					k = newBook(b)
					put(b, k, afternoon()...)
					b.StartTimer()
				}
				if _, err := k.Append(ctx, clock, many...); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(say("bare/%d", n), func(b *testing.B) {
			db := bare(b)
			for b.Loop() {
				tx, err := db.Begin()
				if err != nil {
					b.Fatal(err)
				}
				for range n {
					if _, err := tx.Exec("INSERT INTO entry (bytes) VALUES (?)", data); err != nil {
						b.Fatal(err)
					}
				}
				if err := tx.Commit(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkVerify10k(b *testing.B) {
	k := newBook(b)
	put(b, k, shelf...)
	var many []record.Entry
	for i := range 500 { // 500 panels, 20 entries each on the whole
		many = append(many, parsed(b, `{"kind":"cut","batch":"b","size":"8 x 10 in","board":"ply",`+panels(i+1, i+1)+`}`)...)
	}
	for i := range 9500 {
		many = append(many, record.Entry{Panels: []record.Number{number(i%500 + 1)}, Body: record.Note{Text: say("remark %d", i)}})
	}
	if _, err := k.Append(ctx, clock, many...); err != nil {
		b.Fatal(err)
	}
	b.Run("book", func(b *testing.B) {
		for b.Loop() {
			if _, err := k.Verify(ctx, nil); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("fold", func(b *testing.B) {
		for b.Loop() {
			if _, err := k.Workshop(ctx); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("bare", func(b *testing.B) { // rows read, nothing checked
		db := bare(b)
		all, err := k.Entries(ctx, book.Filter{})
		if err != nil {
			b.Fatal(err)
		}
		tx, err := db.Begin()
		if err != nil {
			b.Fatal(err)
		}
		for _, s := range all {
			if _, err := tx.Exec("INSERT INTO entry (bytes) VALUES (?)", s.Bytes); err != nil {
				b.Fatal(err)
			}
		}
		if err := tx.Commit(); err != nil {
			b.Fatal(err)
		}
		for b.Loop() {
			rows, err := db.Query("SELECT bytes FROM entry ORDER BY seq")
			if err != nil {
				b.Fatal(err)
			}
			var data []byte
			for rows.Next() {
				if err := rows.Scan(&data); err != nil {
					b.Fatal(err)
				}
			}
			rows.Close()
		}
	})
}
