package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"backleaf/certificate"
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
)

// Whatever is written into the book between the signing of its head and the
// issue makes the issue fail as a whole: no entry, no file.
func TestIssueFollowsItsHead(t *testing.T) {
	ctx, dir := context.Background(), t.TempDir()
	now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
	a := &app{in: strings.NewReader(""), out: io.Discard, err: io.Discard, env: func(string) string { return "" }, now: func() time.Time { return now }}
	a.bookPath = filepath.Join(dir, "studio.sqlite")
	for _, line := range [][]string{{"studio", "new", "--maker", "Anna", "--mark", "KB", "--zone", "UTC"}, {"panel", "add", "--size", "20 x 20 cm x 6 mm"}, {"paint", "0001", "--medium", "oil"}} {
		if code := a.run(ctx, append([]string{"--book", a.bookPath}, line...)); code != 0 {
			t.Fatalf("%v: exit code %d", line, code)
		}
	}
	b, err := book.Open(ctx, a.bookPath)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	s, err := a.look(ctx, b, &bench{}, []string{"0001"})
	if err != nil {
		t.Fatal(err)
	}
	p := s.shop.Panel(s.panels[0])
	in := certificate.Input{Workshop: s.shop, Panel: p, Issued: now, Paper: "a4"}
	if in.Deed, err = deed.Make(ctx, b, s.shop, p, nil, nil, now); err != nil {
		t.Fatal(err)
	}
	if _, err := b.Append(ctx, now, record.Entry{Body: record.Note{Text: "from another window"}}); err != nil {
		t.Fatal(err)
	}
	before, _, err := b.Tree(ctx)
	if err != nil {
		t.Fatal(err)
	}
	o := issuing{file: filepath.Join(dir, "c.pdf")}
	if err := a.issue(ctx, b, s, o, in, record.Issued{}, []byte("%PDF")); err == nil {
		t.Error("issued over an entry that its head does not know")
	}
	after, _, err := b.Tree(ctx)
	if err != nil || after != before {
		t.Errorf("%d entries, were %d, %v", after, before, err)
	}
	if _, err := os.Lstat(o.file); err == nil {
		t.Error("the file is there")
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".backleaf-*")); left != nil {
		t.Errorf("left behind: %v", left)
	}
}

// The same story at the same time gives the same certificate.
func TestCertificateIsRepeatable(t *testing.T) {
	ctx := context.Background()
	var files [2][]byte
	for i := range files {
		dir := t.TempDir()
		now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
		a := &app{in: strings.NewReader(""), out: io.Discard, err: io.Discard, env: func(string) string { return "" }, now: func() time.Time { return now }}
		for _, line := range [][]string{{"studio", "new", "--maker", "Anna", "--mark", "KB", "--zone", "UTC"}, {"panel", "add", "--size", "20 x 20 cm x 6 mm"},
			{"paint", "0001", "--medium", "oil"}, {"certificate", "0001", "-o", filepath.Join(dir, "c.pdf")}} {
			if code := a.run(ctx, append([]string{"--book", filepath.Join(dir, "studio.sqlite")}, line...)); code != 0 {
				t.Fatalf("%v: exit code %d", line, code)
			}
		}
		var err error
		if files[i], err = os.ReadFile(filepath.Join(dir, "c.pdf")); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(files[0], files[1]) {
		t.Error("two runs give other bytes")
	}
}
