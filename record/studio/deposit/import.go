package deposit

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"time"

	"backleaf/record"
	"backleaf/record/bag"
	"backleaf/record/book"
	"backleaf/record/form"
	"backleaf/record/safefile"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/exchange"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/verify"
)

// Import reads a deposit back into the empty book at a path: the same journal,
// hash for hash, and its photographs. highest is as in [exchange.Order]. sound
// is asked before anything is written. Where kept files are missing it is read,
// and refused as broken.
func Import(ctx context.Context, dir, bookPath string, highest []string, clock func() time.Time, progress studio.Progress, sound func() error) (x studio.Written, err error) {
	end := progress.Busy("checking-deposit", 0)
	report, err := bag.Validate(ctx, dir)
	end()
	if err != nil {
		return x, err
	}
	if !report.Valid {
		x.Warnings = verify.Problems(report)
		return x, refuse.Breaks("not-whole", "%s is not a whole deposit: see what is wrong, above", dir)
	}
	root, err := os.OpenRoot(dir) // no link leads out of it
	if err != nil {
		return x, fmt.Errorf("cannot read the deposit: %w", err)
	}
	defer root.Close()
	j, err := ReadJournal(ctx, dir, root)
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, book.ErrNoBook) {
		return x, refuse.Cannot("not-written", "%s is no deposit of this program: there is no journal with its book in it", dir)
	}
	if err != nil {
		return x, refuse.Breaks("not-written", "cannot read the deposit %s: %w", dir, err)
	}
	if err := isEmpty(ctx, bookPath); err != nil {
		return x, err
	}
	if err := sound(); err != nil {
		return x, err
	}
	have, made, warnings, err := importFiles(ctx, bookPath, root, form.Entries(j.Entries))
	x.Warnings = warnings
	var taken exchange.Taken
	var tree seal.Hash
	if err == nil {
		taken, tree, err = importEntries(ctx, bookPath, highest, clock, j)
	}
	if err != nil {
		// What is new goes again. It breaks nothing if it cannot.
		for _, p := range made {
			os.Remove(p)
			os.Remove(filepath.Dir(p)) // only if it is empty
		}
		return x, err
	}
	lost := map[string]bool{}
	for _, e := range j.Entries {
		if f, ok := kept.Named(e.Entry.Body); ok && !have[f.SHA256] && !f.Private {
			lost[f.SHA256] = true
		}
	}
	x.Means = append(taken.Said(j.Name), record.Say("same-journal", record.With("root", fmt.Sprintf("%x", tree[:])), record.With("n", len(have))))
	if len(lost) > 0 {
		return x, refuse.Breaks("import-incomplete", "%s not in the deposit as recorded", kept.Count(len(lost), "kept file"))
	}
	return x, nil
}

func importEntries(ctx context.Context, bookPath string, highest []string, clock func() time.Time, j Journal) (done exchange.Taken, root seal.Hash, err error) {
	b, err := book.Open(ctx, bookPath)
	if err != nil {
		return done, root, err
	}
	defer b.Close()
	v, err := (&studio.Session{Book: b, Clock: clock}).Look(ctx, nil, nil)
	if err != nil {
		return done, root, err
	}
	if done, err = exchange.Import(ctx, v, exchange.Order{Name: j.Name, Highest: highest}, func(yield func(exchange.Listed, error) bool) {
		for i, e := range j.Entries {
			if !yield(exchange.Listed{Entry: e.Entry, Line: j.Lines[i]}, nil) {
				return
			}
		}
	}); err == nil {
		_, root, err = b.Tree(ctx)
	}
	return done, root, err
}

// isEmpty makes sure that there is an empty book to import into.
func isEmpty(ctx context.Context, bookPath string) error {
	b, err := book.OpenReadOnly(ctx, bookPath)
	if errors.Is(err, book.ErrNoBook) {
		e := refuse.Cannot("no-empty-book", "there is no book %s to import into", bookPath)
		e.Class = refuse.NoBook
		return e
	}
	if err != nil {
		return err
	}
	defer b.Close()
	size, _, err := b.Tree(ctx)
	if err == nil && size > 0 {
		err = refuse.Cannot("no-empty-book", "%s is not empty: a deposit is read back into an empty book only", bookPath)
	}
	return err
}

// importFiles keeps the photographs and papers that the entries name, each
// checked by its digest, and returns how many are in order and which files are
// new.
func importFiles(ctx context.Context, bookPath string, root *os.Root, es []record.Entry) (have map[string]bool, made []string, warnings []record.Said, err error) {
	have = map[string]bool{}
	for _, e := range es {
		f, ok := kept.Named(e.Body)
		if !ok || have[f.SHA256] {
			continue
		}
		if err := ctx.Err(); err != nil {
			return have, made, warnings, err
		}
		data, err := safefile.ReadIn(root, path.Join("data", partOf(f)), kept.MaxBytes)
		if f.Private && errors.Is(err, fs.ErrNotExist) {
			continue // a deposit holds none that prints a name or a price
		}
		if sum := sha256.Sum256(data); err == nil && hex.EncodeToString(sum[:]) != f.SHA256 {
			err = fmt.Errorf("%s is not the file on record", partOf(f))
		}
		if err != nil {
			warnings = append(warnings, record.Say("photograph-not-imported", record.With("why", err.Error())))
			continue
		}
		at := kept.Path(bookPath, f)
		if _, err := os.Lstat(at); err != nil {
			made = append(made, at)
		}
		if err := kept.Keep(bookPath, f, data); err != nil {
			return have, made, warnings, err
		}
		have[f.SHA256] = true
	}
	return have, made, warnings, nil
}
