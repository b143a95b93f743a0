package register_test

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/invented"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/register"
	"backleaf/record/tell"
)

// said are values as texts.
func said(values ...any) string {
	for i, v := range values {
		switch v := v.(type) {
		case record.Value:
			values[i] = v.Text()
		default:
			values[i] = record.With("", v).Text()
		}
	}
	return fmt.Sprintln(values...)
}

// What verify says of the files beside a book is what a fold of the whole journal
// names, whichever of them are missing, changed, shared by panels, or named by
// entries that were withdrawn or amended since.
func TestFilesBesideABook(t *testing.T) {
	for seed := range uint64(2) {
		r := rand.New(rand.NewPCG(seed, 3))
		dir := t.TempDir()
		b, err := book.Create(t.Context(), filepath.Join(dir, "studio.sqlite"))
		if err != nil {
			t.Fatal(err)
		}
		es := slices.Collect(invented.Journal(seed, 28))
		if _, err := b.Append(t.Context(), time.Date(2026, 5, 1, 14, 0, 0, 0, time.UTC), es...); err != nil {
			t.Fatal(err)
		}
		now := time.Date(2026, 5, 2, 14, 0, 0, 0, time.UTC)
		var data [][]byte
		for i := range 40 {
			data = append(data, fmt.Appendf(nil, "file %d of %d", i, seed))
		}
		sum := func(i int) string { s := sha256.Sum256(data[i]); return hex.EncodeToString(s[:]) }
		for range 60 {
			var e record.Entry
			for range 1 + r.IntN(3) {
				if n := invented.Number(r.IntN(28)); !slices.Contains(e.Panels, n) {
					e.Panels = append(e.Panels, n)
				}
			}
			slices.Sort(e.Panels)
			e.At = record.Moment(now)
			file := r.IntN(len(data))
			switch r.IntN(4) {
			case 0:
				e.Body = record.LabelPrinted{PDF: sum(file), Layout: "small", Record: sum(0)}
			case 1:
				e.Panels = e.Panels[:1]
				e.Body = record.Issued{PDF: sum(file), Record: sum(1)}
			case 2:
				e.Panels = e.Panels[:1]
				e.Body = record.Photograph{SHA256: sum(file), Type: "image/jpeg", Role: "front", Width: 10, Height: 10}
			default:
				e.Body = record.Withdrawn{Entry: int64(len(es) - r.IntN(30)), Because: "a slip"}
				of := es[e.Body.(record.Withdrawn).Entry-1]
				if len(of.Panels) == 0 || of.Corrects() != 0 || of.Kind() == "cut" {
					continue
				}
				e.Panels = of.Panels[:1+r.IntN(len(of.Panels))]
				e.At = record.When{}
			}
			if written, err := b.Append(t.Context(), now, e); err == nil { // what may not be written is not
				es = append(es, written...)
			}
		}
		w, err := b.Workshop(t.Context())
		if err != nil {
			t.Fatal(err)
		}
		// By a fold of the whole.
		type named struct{ folder, name string }
		bad := map[named]record.EntryRef{}
		n, good := map[string]int{}, map[string]int{}
		var order []named
		seen := map[named]bool{}
		for _, p := range w.Panels {
			for _, e := range p.Events {
				f, ok := kept.Named(e.Body)
				at := named{f.Folder, f.Name}
				if !ok || seen[at] {
					continue
				}
				seen[at] = true
				n[f.Folder]++
				i := slices.IndexFunc(data, func(d []byte) bool { s := sha256.Sum256(d); return hex.EncodeToString(s[:]) == f.SHA256 })
				if i < 0 { // a photograph of the invented journal
					order, bad[at] = append(order, at), record.EntryRef(e.Seq)
					continue
				}
				content := data[i]
				switch r.IntN(3) {
				case 0: // missing
					order, bad[at] = append(order, at), record.EntryRef(e.Seq)
					continue
				case 1:
					content = append([]byte("x"), content...)
					order, bad[at] = append(order, at), record.EntryRef(e.Seq)
				default:
					good[f.Folder]++
				}
				path := kept.Path(b.Path(), f)
				err := os.MkdirAll(filepath.Dir(path), 0o755)
				if err == nil {
					err = os.WriteFile(path, content, 0o644)
				}
				if err != nil {
					t.Fatal(err)
				}
			}
		}
		var want []string
		for _, at := range order {
			want = append(want, said(bad[at], at.folder))
		}
		for _, folder := range []string{kept.Photographs, kept.Papers} {
			if n[folder] == 0 || good[folder] == n[folder] || len(want) < 5 {
				t.Fatalf("seed %d: %d in %s, %d of them good: the book shows nothing", seed, n[folder], folder, good[folder])
			}
			want = append(want, said(folder, n[folder], good[folder]))
		}
		if err := b.Close(); err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, x := range (register.Books{}).Book(t.Context(), b.Path()) {
			switch x.Said.Code {
			case "kept-file-bad":
				got = append(got, said(x.Said.Value("entry"), x.Said.Value("what")))
			case "kept-" + kept.Photographs, "kept-" + kept.Papers:
				got = append(got, said(x.Said.Code[len("kept-"):], x.Said.Value("n"), x.Said.Value("good")))
			case "whole-book-fails":
				t.Error(tell.Say(tell.English(), x.Said))
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("seed %d: said\n%q\nnot\n%q", seed, got, want)
		}
	}
}
