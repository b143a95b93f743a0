package verify

import (
	"bytes"
	"context"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"

	"backleaf/record/bag"
	"backleaf/record/deed"
)

// MaxProblems bounds how many problems of a deposit are told one by one.
const MaxProblems = 20

// deposit checks the bag and every record, certificate and book in it.
func (c Checker) deposit(ctx context.Context, dir string) ([]deed.Result, error) {
	report, err := bag.Validate(dir)
	if err != nil {
		return nil, err
	}
	var out []deed.Result
	say := func(v deed.Verdict, format string, args ...any) {
		out = append(out, deed.Result{Verdict: v, Text: fmt.Sprintf(format, args...)})
	}
	if report.Valid {
		say(deed.Holds, "the deposit is whole: %d files, all checksums (%s) hold", report.Files, strings.Join(report.Algorithms, ", "))
	}
	for i, p := range report.Problems {
		if i == MaxProblems {
			say(deed.Fails, "and %d more", len(report.Problems)-i+report.More)
			break
		}
		say(deed.Fails, "%s", p)
	}
	for _, n := range report.Notes {
		say(deed.Unknown, "%s", n)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, fmt.Errorf("cannot read %w", err)
	}
	defer root.Close()
	keys := map[string]bool{}
	counts := map[Kind]int{}
	var unsigned []string
	err = fs.WalkDir(root.FS(), "data", func(p string, d fs.DirEntry, err error) error {
		if err != nil || ctx.Err() != nil || !d.Type().IsRegular() {
			return ctx.Err() // what cannot be read was said above
		}
		e, ok, err := inDeposit(root, p)
		if err != nil || !ok {
			return err
		}
		counts[e.Kind]++
		var results []deed.Result
		switch {
		case e.Broken != nil:
			results = []deed.Result{{Verdict: deed.Fails, Text: e.Broken.Error()}}
		case e.Kind == Book:
			results = c.book(ctx, filepath.Join(dir, filepath.FromSlash(p)))
		default:
			rep := deed.Verify(e.Files)
			results = rep.Results
			if rep.Key != nil {
				keys[rep.Key.Fingerprint().Groups()] = true
			}
			switch {
			case stripped(e.Files, rep) && e.Files.Signature == nil && e.Files.Proof == nil:
				unsigned = append(unsigned, p)
			case stripped(e.Files, rep):
				say(deed.Fails, "%s: %s", p, partsMissing)
			}
		}
		for _, r := range results {
			if r.Verdict == deed.Fails || r.Newer {
				say(r.Verdict, "%s: %s", p, r.Text)
			}
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	if counts[Folder]+counts[Certificate]+counts[Book] > 0 {
		say(deed.Holds, "looked at one by one, and said above where they do not hold: %d records, %d certificates, %d books", counts[Folder], counts[Certificate], counts[Book])
	}
	if _, err := root.Stat("data/journal.json"); err == nil && c.Books != nil {
		switch entries, signed, err := c.Books.Journal(ctx, dir, root); {
		case err != nil:
			say(deed.Fails, "the journal: %v", err)
		case signed:
			say(deed.Holds, "the journal: %d entries; the book and the signed head say the same", entries)
		default:
			say(deed.Holds, "the journal: %d entries; the book says the same", entries)
		}
	}
	// A deposit may be made where the key is not. But then none is signed.
	for _, p := range unsigned {
		if len(unsigned) < counts[Folder]+counts[Certificate] {
			say(deed.Fails, "%s: %s", p, partsMissing)
		}
	}
	if n := len(unsigned); n > 0 && n == counts[Folder]+counts[Certificate] {
		say(deed.Unknown, "who made these records: none is signed, though the studio has a key")
	}
	for k := range keys {
		say(deed.Unknown, "whose key this is: %s", k)
	}
	say(deed.Unknown, "whether the deposit was made by the studio: checksums alone can be made anew by anyone")
	return out, nil
}

// inDeposit reads a file of a deposit if it is one that can be checked.
func inDeposit(root *os.Root, p string) (e Evidence, ok bool, err error) {
	switch {
	case path.Base(p) == deed.RecordName:
		e = Evidence{Name: p, Kind: Folder}
		if e.Files, _, err = deedIn(root.FS(), path.Dir(p)); err != nil {
			return e, false, err
		}
		// The key may stand once for all records.
		for dir := path.Dir(p); e.Files.Key == nil && dir != "."; dir = path.Dir(dir) {
			above, _, err := deedIn(root.FS(), path.Dir(dir))
			if err != nil {
				return e, false, err
			}
			e.Files.Key = above.Key
		}
		return e, true, nil
	case path.Ext(p) == ".pdf":
		data, err := root.ReadFile(p)
		if err != nil {
			return e, false, fmt.Errorf("cannot read %w", err)
		}
		e = certificateIn(p, data)
		// A label or dossier is a PDF without a record.
		return e, e.Files.Record != nil || bytes.Contains(data, []byte("/EmbeddedFiles")), nil
	case path.Ext(p) == ".sqlite":
		return Evidence{Name: p, Kind: Book}, true, nil
	}
	return e, false, nil
}
