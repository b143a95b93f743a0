package register

import (
	"context"
	"fmt"
	"os"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/studio"
	"backleaf/record/studio/deposit"
	"backleaf/record/studio/photos"
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
	for _, p := range w.Panels {
		for _, ph := range record.Each[record.Photograph](p) {
			if err := photos.Check(name, ph.Body); err != nil {
				out = append(out, deed.Result{Verdict: deed.Fails, Text: fmt.Sprintf("E%d, photograph of %s: %v", ph.Seq, p.Number, err)})
			}
		}
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
	Entries     int64      `json:"entries"`
	Root        string     `json:"root"`
	Photographs int        `json:"photographs"`
	Bad         []BadPhoto `json:"photographs_missing_or_changed"`
	Missing     []int64    `json:"private_parts_elsewhere"`
	Remarks     []string   `json:"remarks"`
}

// BadPhoto is a photograph that is not as it was kept.
type BadPhoto struct {
	Entry int64
	Panel record.Number
	Why   error
}

func (b BadPhoto) String() string {
	return fmt.Sprintf("E%d  photograph of %s: %v", b.Entry, b.Panel, b.Why)
}

// MarshalText says it in one line.
func (b BadPhoto) MarshalText() ([]byte, error) { return []byte(b.String()), nil }

// CheckBook checks the journal, its look-up tables and the photographs.
func CheckBook(ctx context.Context, b *book.Book, progress studio.Progress) (BookReport, error) {
	r, err := b.Verify(ctx, progress.Of("entries"))
	if err != nil {
		return BookReport{}, err
	}
	w, err := b.Workshop(ctx)
	if err != nil {
		return BookReport{}, err
	}
	v := BookReport{Entries: r.Entries, Root: fmt.Sprintf("%x", r.Root[:]), Bad: []BadPhoto{}, Missing: r.Missing, Remarks: r.Remarks}
	v.Photographs, v.Bad = badPhotos(b.Path(), w)
	return v, nil
}

// badPhotos counts the photographs of a book and names those that are not as
// they were kept.
func badPhotos(path string, w *record.Workshop) (all int, bad []BadPhoto) {
	bad = []BadPhoto{}
	for _, p := range w.Panels {
		for _, ph := range record.Each[record.Photograph](p) {
			all++
			if err := photos.Check(path, ph.Body); err != nil {
				bad = append(bad, BadPhoto{ph.Seq, p.Number, err})
			}
		}
	}
	return all, bad
}
