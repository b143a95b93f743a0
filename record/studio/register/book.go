package register

import (
	"context"
	"errors"
	"fmt"
	"os"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/studio"
	"backleaf/record/studio/deposit"
	"backleaf/record/studio/kept"
)

// Books reads the books among what is checked. It is a [verify.Books].
type Books struct{ Progress studio.Progress }

// Book says what holds of a book that is not the studio's own.
func (k Books) Book(ctx context.Context, name string) []deed.Result {
	b, err := book.OpenReadOnly(ctx, name)
	if err != nil {
		return []deed.Result{{Verdict: deed.Fails, Text: err.Error()}}
	}
	defer b.Close()
	r, err := b.Verify(ctx, k.Progress.Of("entries"))
	if err != nil {
		return []deed.Result{{Verdict: deed.Fails, Text: "the book: " + err.Error()}}
	}
	out := []deed.Result{{Verdict: deed.Holds, Text: fmt.Sprintf("the book: %d entries, root %x", r.Entries, r.Root[:])}}
	w, err := b.Workshop(ctx)
	if err != nil {
		return append(out, deed.Result{Verdict: deed.Fails, Text: err.Error()})
	}
	if r.Newer > 0 {
		out = append(out, deed.Result{Verdict: deed.Unknown, Newer: true, Text: fmt.Sprintf("newer: may be out of date; %d entries hold what only a later program can read", r.Newer)})
	}
	for _, b := range badFiles(name, w) {
		if b.absent() {
			out = append(out, deed.Result{Verdict: deed.Unknown, Text: fmt.Sprintf("E%d, paper issued of %s: it prints a name or a price and is not in this copy", b.Entry, b.Panel)})
			continue
		}
		out = append(out, deed.Result{Verdict: deed.Fails, Text: strings.Replace(b.String(), "  ", ", ", 1)})
	}
	return append(out, deed.Result{Verdict: deed.Unknown, Text: "whether all of it was replaced: only a signed head kept elsewhere tells (\"backleaf head compare\")"})
}

// Journal reads the journal of a deposit.
func (k Books) Journal(ctx context.Context, dir string, root *os.Root) (entries int, signed bool, err error) {
	j, err := deposit.ReadJournal(ctx, dir, root)
	return len(j.Entries), j.Signed, err
}

// BookReport is what was found in a book that holds.
type BookReport struct {
	Entries     int64     `json:"entries"`
	Root        string    `json:"root"`
	Newer       int       `json:"newer_entries"`
	Photographs int       `json:"photographs"`
	Papers      int       `json:"papers"`
	Bad         []BadFile `json:"files_missing_or_changed"`
	Missing     []int64   `json:"private_parts_elsewhere"`
	Remarks     []string  `json:"remarks"`
}

// BadFile is a photograph or paper that is not as it was kept.
type BadFile struct {
	kept.File
	Why error
}

func (b BadFile) String() string {
	what := "photograph"
	if b.Folder == kept.Papers {
		what = "paper issued"
	}
	if b.Panel == "" {
		return fmt.Sprintf("mark of the studio: %v", b.Why)
	}
	return fmt.Sprintf("E%d  %s of %s: %v", b.Entry, what, b.Panel, b.Why)
}

// MarshalText says it in one line.
func (b BadFile) MarshalText() ([]byte, error) { return []byte(b.String()), nil }

// CheckBook checks the journal, its look-up tables, the photographs and the papers issued.
func CheckBook(ctx context.Context, b *book.Book, progress studio.Progress) (BookReport, error) {
	r, err := b.Verify(ctx, progress.Of("entries"))
	if err != nil {
		return BookReport{}, err
	}
	w, err := b.Workshop(ctx)
	if err != nil {
		return BookReport{}, err
	}
	v := BookReport{Entries: r.Entries, Root: fmt.Sprintf("%x", r.Root[:]), Bad: []BadFile{}, Missing: r.Missing, Remarks: r.Remarks, Newer: r.Newer}
	for _, f := range kept.In(w) {
		if f.Folder == kept.Papers {
			v.Papers++
		} else {
			v.Photographs++
		}
	}
	for _, f := range badFiles(b.Path(), w) {
		if f.absent() {
			v.Remarks = append(v.Remarks, fmt.Sprintf("E%d: the paper issued of %s, which prints a name or a price, is not in this copy", f.Entry, f.Panel))
			v.Papers--
			continue
		}
		v.Bad = append(v.Bad, f)
	}
	return v, nil
}

// absent reports a paper that prints a name or a price and is not in this copy:
// a deposit holds none.
func (b BadFile) absent() bool { return b.Private && errors.Is(b.Why, kept.ErrMissing) }

// badFiles names the kept files of a book that are not as they were kept.
func badFiles(path string, w *record.Workshop) (bad []BadFile) {
	for _, f := range kept.In(w) {
		if err := kept.Check(path, f); err != nil {
			bad = append(bad, BadFile{f, err})
		}
	}
	return bad
}
