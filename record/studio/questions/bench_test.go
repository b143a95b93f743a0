package questions_test

import (
	"database/sql"
	"slices"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/invented"
	"backleaf/record/studio"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
)

// large is the book of toolcheck.Panels invented panels.
func large(b *testing.B) *studio.Session {
	return session(b, slices.Collect(invented.Journal(1, toolcheck.Panels(b)))...)
}

// A list and a search with two filters, against SQL written by hand that
// returns the same rows.
func BenchmarkTwoFilters(b *testing.B) {
	s := large(b)
	db, err := sql.Open("sqlite", "file:"+s.Book.Path()+"?mode=ro")
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { db.Close() })
	found := 0
	count := func(questions.Row) error { found++; return nil }
	bare := func(query string) func() {
		return func() {
			rows, err := db.Query("SELECT p.* FROM " + query + " ORDER BY p.year, p.serial")
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
				b.Fatalf("%d rows by hand, %d found", n, found)
			}
		}
	}
	b.Run("list", func(b *testing.B) {
		toolcheck.Against(b, func() {
			found = 0
			if err := questions.List(b.Context(), s.Book, questions.Listing{Stage: "painted", Batch: "b2", Discarded: true}, count); err != nil {
				b.Fatal(err)
			}
		}, bare("panel p WHERE stage = 'painted' AND batch = 'b2'"))
	})
	b.Run("find", func(b *testing.B) {
		search, err := questions.Filter{Stage: "painted", Lots: []string{"tin-0"}}.Read(now)
		if err != nil {
			b.Fatal(err)
		}
		toolcheck.Against(b, func() {
			found = 0
			if _, err := search.Panels(b.Context(), s, count); err != nil {
				b.Fatal(err)
			}
		}, bare("used u JOIN panel p ON p.number = u.panel WHERE u.thing = 'lot tin-0' AND p.stage = 'painted'"))
	})
}

// What is due, and all rules, against decoding and folding the same panels.
func BenchmarkAllPanels(b *testing.B) {
	s := large(b)
	then := time.Date(1990, 3, 1, 0, 0, 0, 0, time.UTC)
	var all []record.Number
	if err := s.Book.Panels(b.Context(), book.Narrow{}, func(p book.Present) error { all = append(all, p.Number); return nil }); err != nil {
		b.Fatal(err)
	}
	fold := func() {
		err := book.Each(b.Context(), s.Book, all, func(_ *record.Workshop, p *record.Panel) (int, error) { return len(p.Events), nil }, func(int) error { return nil })
		if err != nil {
			b.Fatal(err)
		}
	}
	b.Run("due", func(b *testing.B) {
		toolcheck.Against(b, func() {
			steps, _, err := questions.DueOf(b.Context(), tell.English(), s.Book, nil, then)
			if err != nil || len(slices.Collect(steps)) == 0 {
				b.Fatal(err)
			}
		}, fold)
	})
	b.Run("check", func(b *testing.B) {
		toolcheck.Against(b, func() {
			groups := questions.Groups{Brief: true}
			k := questions.Checking{Words: tell.English(), Now: then, Brief: true}
			if _, err := k.Check(b.Context(), s.Book, nil, nil, nil, func(x questions.Findings) error { groups.Add(x); return nil }); err != nil {
				b.Fatal(err)
			}
		}, fold)
	})
	b.Run("check-json", func(b *testing.B) {
		toolcheck.Against(b, func() {
			k := questions.Checking{Words: tell.English(), Now: then}
			if _, err := k.Check(b.Context(), s.Book, nil, nil, nil, func(questions.Findings) error { return nil }); err != nil {
				b.Fatal(err)
			}
		}, fold)
	})
}
