package book_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
)

func TestAppendAndRead(t *testing.T) {
	b := newBook(t)
	in := put(t, b, afternoon()...)
	for i, e := range in {
		if e.Seq != int64(i+1) || e.Written.String() != "2026-05-02T14:05:00+02:00" {
			t.Fatalf("entry %d: seq %d, written %s", i+1, e.Seq, e.Written)
		}
	}
	all, err := b.Entries(ctx, book.Filter{})
	if err != nil || len(all) != len(in) {
		t.Fatal(len(all), err)
	}
	w, err := b.Workshop(ctx)
	if err != nil {
		t.Fatal(err)
	}
	if len(w.Panels) != 3 || w.Panel(number(1)).Description().Title != "Dune, evening" || w.Panel(number(2)).Stage() != "sealed" {
		t.Errorf("panels %v", w.Panels)
	}
	one, err := b.WorkshopOf(ctx, number(3))
	if err != nil {
		t.Fatal(err)
	}
	if got, want := one.Panel(number(3)), w.Panel(number(3)); len(got.Events) != len(want.Events) || len(got.Corrections) != 2 || len(one.Materials) != 3 || len(one.Climate) != 1 {
		t.Errorf("alone %+v, among all %+v", got, want)
	}
	roll, err := b.Roll(ctx)
	if err != nil || len(roll.Numbers) != 3 || len(roll.Batches["spring"]) != 3 {
		t.Error(roll, err)
	}
	if n, err := b.NextSerial(ctx, 2026); n != 4 || err != nil {
		t.Error(n, err)
	}
	if n, err := b.NextSerial(ctx, 2027); n != 1 || err != nil {
		t.Error(n, err)
	}
	r, err := b.Verify(ctx, nil)
	if err != nil || r.Entries != int64(len(in)) || len(r.Remarks) != 0 {
		t.Fatal(r, err)
	}
}

func TestFilter(t *testing.T) {
	b := newBook(t)
	put(t, b, afternoon()...)
	for _, c := range []struct {
		f    book.Filter
		want []int64
	}{
		{book.Filter{Kinds: []record.Kind{"amended", "note"}}, []int64{10, 12, 15}},
		{book.Filter{From: 3, To: 5}, []int64{3, 4, 5}},
		{book.Filter{From: 15}, []int64{15, 16}},
		{book.Filter{Last: 2}, []int64{15, 16}},
		{book.Filter{Last: 1, Kinds: []record.Kind{"lot"}}, []int64{6}},
		{book.Filter{Panels: []record.Number{number(3)}, From: 7}, []int64{7, 8, 10, 13, 15, 16}},
		{book.Filter{Panels: []record.Number{number(2)}, From: 7}, []int64{7, 8, 9, 10, 12, 13, 14, 15}},
		{book.Filter{Panels: []record.Number{}}, []int64{1, 2, 3, 4, 5, 6, 13, 15}},
	} {
		got, err := b.Entries(ctx, c.f)
		if err != nil {
			t.Fatalf("%+v: %v", c.f, err)
		}
		var seqs []int64
		for _, s := range got {
			seqs = append(seqs, s.Seq)
		}
		if !slices.Equal(seqs, c.want) {
			t.Errorf("%+v: %v, want %v", c.f, seqs, c.want)
		}
	}
}

func TestRefused(t *testing.T) {
	b := newBook(t)
	put(t, b, afternoon()...)
	_, before, _ := b.Tree(ctx)
	good := `{"kind":"note","text":"fine"}`
	for _, bad := range []string{
		`{"kind":"note","text":"x",` + panels(9, 9) + `}`,
		`{"kind":"cut","batch":"again","size":"8 x 10 in",` + panels(3, 4) + `}`,
		`{"kind":"lot","key":"sealer-1","material":"sealer"}`,
		`{"kind":"coat","faces":["front"],"mix":[{"parts":1,"material":"linen","lot":"sealer-1"}],` + panels(1, 1) + `}`,
		`{"kind":"amended","entry":99,"because":"x","change":{"note":"y"}}`,
		`{"kind":"note","text":"out of turn","seq":40}`,
		`{"kind":"studio","maker":"Ilze Kraukle","mark":"KZ"}`,
	} {
		es := parsed(t, good, bad)
		out, err := b.Append(ctx, clock, es...)
		var at *book.AppendError
		var field *record.FieldError
		if out != nil || !errors.As(err, &at) || at.Index != 1 || !errors.As(err, &field) {
			t.Errorf("%s: %v, %v", bad, out, err)
		}
	}
	if _, after, _ := b.Tree(ctx); after != before {
		t.Error("something was written all the same")
	}
	// An entry may refer to one before it in the same append.
	put(t, b, `{"kind":"material","key":"gesso","name":"ground","uses":["ground"]}`, `{"kind":"lot","key":"gesso-1","material":"gesso"}`,
		`{"kind":"cut","batch":"b","size":"8 x 10 in",`+panels(4, 5)+`}`, `{"kind":"coat","purpose":"ground","faces":["front"],"mix":[{"parts":1,"material":"gesso","lot":"gesso-1"}],`+panels(4, 5)+`}`)
	if _, err := b.Verify(ctx, nil); err != nil {
		t.Error(err)
	}
}

func TestExportImport(t *testing.T) {
	a := newBook(t)
	put(t, a, afternoon()...)
	all, err := a.Entries(ctx, book.Filter{})
	if err != nil {
		t.Fatal(err)
	}
	var es []record.Entry
	for _, s := range all {
		es = append(es, s.Entry)
	}
	b := newBook(t)
	if _, err := b.Append(ctx, clock.Add(time.Hour), es...); err != nil {
		t.Fatal(err)
	}
	n1, r1, _ := a.Tree(ctx)
	n2, r2, err := b.Tree(ctx)
	if n1 != n2 || r1 != r2 || err != nil {
		t.Error("the journal is not the same, hash for hash", err)
	}
}

func TestOpenErrors(t *testing.T) {
	dir := t.TempDir()
	path := func(name, data string) string {
		p := filepath.Join(dir, name)
		if err := os.WriteFile(p, []byte(data), 0o600); err != nil {
			t.Fatal(err)
		}
		return p
	}
	real := create(t, filepath.Join(dir, "real % ?#'ā.sqlite"))
	real.Close()
	data, err := os.ReadFile(real.Path())
	if err != nil {
		t.Fatal(err)
	}
	patched := func(at int, v byte) string { d := slices.Clone(data); d[at] = v; return string(d) }
	for _, c := range []struct {
		path string
		want error
	}{
		{real.Path(), nil},
		{filepath.Join(dir, "none.sqlite"), book.ErrNoBook},
		{dir, book.ErrNotBook},
		{path("empty", ""), book.ErrNotBook},
		{path("text", "This is my list of panels."), book.ErrNotBook},
		{path("other", patched(68, 1)), book.ErrNotBook},
		{path("newer", patched(63, 2)), book.ErrNewer},
		{path("older", patched(63, 0)), book.ErrNotBook},
		{path("header", string(data[:100])), book.ErrBroken},
	} {
		for name, open := range map[string]func() (*book.Book, error){
			"Open":         func() (*book.Book, error) { return book.Open(ctx, c.path) },
			"OpenReadOnly": func() (*book.Book, error) { return book.OpenReadOnly(ctx, c.path) },
		} {
			b, err := open()
			want := c.want
			if name == "OpenReadOnly" && want == book.ErrNewer {
				if want = nil; err == nil && !b.Newer() {
					t.Error("a newer book does not say so")
				}
			}
			if !errors.Is(err, want) || (err == nil) != (want == nil) {
				t.Errorf("%s %s: %v, want %v", name, c.path, err, want)
			}
			if err == nil {
				b.Close()
			}
		}
	}
	if _, err := book.Create(ctx, real.Path()); !errors.Is(err, fs.ErrExist) {
		t.Error("Create took the place of a file:", err)
	}
	if _, err := book.Create(ctx, filepath.Join(dir, "no", "folder")); err == nil {
		t.Error("Create in a folder that is not there")
	}
}

func TestReadOnlyRefusesWrites(t *testing.T) {
	b := newBook(t)
	put(t, b, shelf...)
	r, err := book.OpenReadOnly(ctx, b.Path())
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	if _, err := r.Append(ctx, clock, parsed(t, `{"kind":"note","text":"x"}`)...); err == nil {
		t.Error("written")
	}
	// While its log is not empty, the book is read as it was when it was opened.
	put(t, b, `{"kind":"note","text":"x"}`)
	if n, _, err := r.Tree(ctx); n != int64(len(shelf)) || err != nil {
		t.Error(n, err)
	}
}

func TestSearch(t *testing.T) {
	b := newBook(t)
	put(t, b, afternoon()...)
	for q, want := range map[string][]record.Number{
		"dune":              {number(1)},
		"EVENING dune":      {number(1)},
		"caks":              {number(2)}, // without diacritics, beginning of a word
		"resin":             {number(2)},
		"split":             {number(3)},
		"dune split":        nil,
		`" OR "`:            nil,
		`x" OR text:dune "`: nil,
		"NEAR(dune":         nil,
		"*":                 nil,
		"":                  {number(1), number(2), number(3)}, // no words narrow nothing
	} {
		got, err := written(b, q)
		if err != nil || !slices.Equal(got, want) {
			t.Errorf("%q: %v, %v; want %v", q, got, err, want)
		}
	}
	// An amended title is found, the former one is not.
	put(t, b, `{"kind":"amended","entry":11,"because":"renamed","change":{"title":"Shore"}}`)
	if got, err := written(b, "dune"); len(got) != 0 || err != nil {
		t.Error(got, err)
	}
	if got, err := written(b, "shore"); len(got) != 1 || err != nil {
		t.Error(got, err)
	}
}

// written finds the panels of which words were written.
func written(b *book.Book, words string) (ns []record.Number, err error) {
	var n book.Narrow
	for _, w := range strings.Fields(words) {
		n.Words = append(n.Words, book.Word{Text: w})
	}
	err = b.Panels(ctx, n, func(p book.Present) error { ns = append(ns, p.Number); return nil })
	return ns, err
}

func TestCompose(t *testing.T) {
	b := newBook(t)
	put(t, b, shelf...)
	for i := range 3 {
		_, err := b.Compose(ctx, clock, func(d *book.Draft) ([]record.Entry, map[int]book.Private, error) {
			n, err := d.NextSerial(2026)
			if n != i+1 {
				t.Error("next serial", n)
			}
			return parsed(t, `{"kind":"cut","batch":"b","size":"8 x 10 in",`+panels(n, n)+`}`), nil, err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	stop := errors.New("stop")
	if _, err := b.Compose(ctx, clock, func(*book.Draft) ([]record.Entry, map[int]book.Private, error) { return nil, nil, stop }); err != stop {
		t.Error(err)
	}
}

func TestSettings(t *testing.T) {
	b := newBook(t)
	if v, err := b.Setting(ctx, "printer"); v != "" || err != nil {
		t.Error(v, err)
	}
	for _, v := range []string{"left", "right", ""} {
		if err := b.SetSetting(ctx, "printer", v); err != nil {
			t.Fatal(err)
		}
		if got, err := b.Setting(ctx, "printer"); got != v || err != nil {
			t.Error(got, err)
		}
	}
}
