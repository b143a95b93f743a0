package papers

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
)

// Whatever is written into the book between the signing of its head and the
// issue makes the issue fail as a whole: no entry, no file.
func TestIssueFollowsItsHead(t *testing.T) {
	ctx, dir := context.Background(), t.TempDir()
	now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
	clock := func() time.Time { return now }
	path := filepath.Join(dir, "studio.sqlite")
	if err := studio.Create(ctx, path, clock, nil, record.Studio{Maker: "Anna", Mark: "KB", Zone: "UTC"}); err != nil {
		t.Fatal(err)
	}
	b, err := book.Open(ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	s := &studio.Session{Book: b, Clock: clock}
	look := func(terms ...string) *studio.View {
		v, err := s.Look(ctx, terms, nil)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	size, err := record.ParseSize("20 x 20 cm x 6 mm")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := bench.Cut(ctx, look(), record.Moment(now), []record.Cut{{Size: size}}); err != nil {
		t.Fatal(err)
	}
	if _, err := bench.Do(ctx, look("1"), record.Moment(now), record.PaintLayer{Medium: "oil"}); err != nil {
		t.Fatal(err)
	}
	v := look("1")
	p := v.Shop.Panel(v.Panels[0])
	d, err := deed.Make(ctx, b, v.Shop, p, nil, nil, now)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := b.Append(ctx, now, record.Entry{Body: record.Note{Text: "from another window"}}); err != nil {
		t.Fatal(err)
	}
	before, _, err := b.Tree(ctx)
	if err != nil {
		t.Fatal(err)
	}
	c := Certificate{PDF: []byte("%PDF"), Panel: p.Number}
	o := CertificateOrder{File: filepath.Join(dir, "c.pdf")}
	for _, file := range []string{o.File, ""} {
		o.File = file
		if err := c.issue(ctx, v, o, d, now); err == nil {
			t.Error("issued over an entry that its head does not know")
		}
	}
	after, _, err := b.Tree(ctx)
	if err != nil || after != before {
		t.Errorf("%d entries, were %d, %v", after, before, err)
	}
	if _, err := os.Lstat(filepath.Join(dir, "c.pdf")); err == nil {
		t.Error("the file is there")
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".backleaf-*")); left != nil {
		t.Errorf("left behind: %v", left)
	}
}
