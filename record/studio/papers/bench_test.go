package papers

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"
	"time"

	"backleaf/certificate"
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/check"
	"backleaf/record/deed"
	"backleaf/record/safefile"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/kept"
	"backleaf/record/toolcheck"
)

// BenchmarkCertificates issues BACKLEAF_CERTIFICATES certificates, each of
// another panel, against the same loop of their parts alone: one drawn, its
// record signed, the file kept and written, its entry appended.
func BenchmarkCertificates(b *testing.B) {
	n := 10
	if s := os.Getenv("BACKLEAF_CERTIFICATES"); s != "" {
		n, _ = strconv.Atoi(s)
	}
	ctx, dir := b.Context(), b.TempDir()
	now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
	must := func(err error) {
		if err != nil {
			b.Helper()
			b.Fatal(err)
		}
	}
	key, err := seal.NewKey()
	must(err)
	open := func(name string) *studio.Session {
		clock := func() time.Time { return now }
		path := filepath.Join(dir, name, "studio.sqlite")
		must(os.Mkdir(filepath.Dir(path), 0o755))
		must(studio.Create(ctx, path, clock, nil, record.Studio{Maker: "Anna", Mark: "KB", Zone: "UTC", LinkBase: "https://example.org/P/"}))
		k, err := book.Open(ctx, path)
		must(err)
		b.Cleanup(func() { k.Close() })
		s := &studio.Session{Book: k, Clock: clock}
		_, err = k.Append(ctx, now, record.Entry{Body: deed.KeyMade(key.Public())})
		must(err)
		size, err := record.ParseSize("20 x 20 cm x 6 mm")
		must(err)
		for done := 0; done < n; done += 14 {
			v, err := s.Look(ctx, nil, nil)
			must(err)
			w, err := bench.Cut(ctx, v, record.Moment(now), slices.Repeat([]record.Cut{{Size: size}}, 14))
			must(err)
			var names []string
			for _, e := range w.Entries {
				for _, p := range e.Panels {
					names = append(names, string(p))
				}
			}
			v, err = s.Look(ctx, names, nil)
			must(err)
			_, err = bench.Do(ctx, v, record.Moment(now), record.PaintLayer{Medium: "oil"})
			must(err)
		}
		return s
	}
	ours, bare := open("ours"), open("bare")
	all, err := ours.Look(ctx, []string{"all"}, nil)
	must(err)
	round := 0
	path := func(s *studio.Session, i int) string {
		return filepath.Join(filepath.Dir(s.Book.Path()), fmt.Sprintf("%d-%d.pdf", round, i))
	}
	w, err := bare.Book.Around(ctx, all.Panels[0])
	must(err)
	in := certificate.Input{Workshop: w, Panel: w.Panel(all.Panels[0]), Issued: now, Catalogue: bare.Catalogue(), Paper: "a4"}
	in.Deed, err = deed.Make(ctx, bare.Book, w, in.Panel, check.Panel(w, in.Panel, now), &key, now)
	must(err)
	toolcheck.Against(b, func() {
		round++
		for i, p := range all.Panels[:n] {
			_, err := Issue(ctx, ours, CertificateOrder{Panel: string(p), File: path(ours, i), Key: func(context.Context) (*seal.Key, error) { return &key, nil }})
			must(err)
		}
	}, func() {
		for i, p := range all.Panels[:n] {
			_, err := key.SignRecord(in.Deed.Record)
			must(err)
			in.Buyer = fmt.Sprint(round, i) // no two files are the same
			d, err := certificate.Draw(in)
			must(err)
			file := kept.PaperOf(d.PDF)
			must(kept.Keep(bare.Book.Path(), file, d.PDF))
			must(safefile.Create(path(bare, i), 0o644, func(f *os.File) error { _, err := f.Write(d.PDF); return err }))
			_, err = bare.Book.Append(ctx, now, record.Entry{At: record.Moment(now), Panels: []record.Number{p}, Body: record.Issued{Record: seal.DigestOf(in.Deed.Record).String(), PDF: file.SHA256}})
			must(err)
		}
	})
}
