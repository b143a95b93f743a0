package main

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

	"backleaf/record"
	"backleaf/record/bag"
	"backleaf/record/book"
	"backleaf/record/deposit"
	"backleaf/record/studio"
	"backleaf/record/studio/photos"
)

// importDeposit reads a deposit back into an empty book: the same journal, hash
// for hash, and its photographs.
func (a *app) importDeposit(ctx context.Context, dir string) error {
	a.busy("checking %s", dir)
	report, err := bag.Validate(dir)
	a.idle()
	if err != nil {
		return err
	}
	if !report.Valid {
		for i, p := range report.Problems {
			if i == maxProblems {
				a.talk("and %d more", len(report.Problems)-i)
				break
			}
			a.talk("%s", p)
		}
		return &failure{fmt.Errorf("%s is not a whole deposit", dir), "nothing was written; look for another copy of it", exitIntegrity}
	}
	root, err := os.OpenRoot(dir) // no link leads out of it
	if err != nil {
		return fmt.Errorf("cannot read the deposit: %w", err)
	}
	defer root.Close()
	j, err := readDeposit(ctx, dir, root)
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, book.ErrNoBook) {
		return &failure{fmt.Errorf("%s is a bag, but not a deposit: there is no journal with its book in it", dir), "nothing was written", exitError}
	}
	if err != nil {
		return &failure{fmt.Errorf("cannot read the deposit %s: %w", dir, err), "nothing was written", exitIntegrity}
	}
	if err := a.emptyBook(ctx); err != nil {
		return err
	}
	kept, made, err := a.importPhotos(ctx, root, j.entries)
	if err == nil {
		err = a.importEntries(ctx, j.name, j.entries, j.lines)
	}
	if err != nil {
		// What is new goes again. It breaks nothing if it cannot.
		for _, p := range made {
			os.Remove(p)
			os.Remove(filepath.Dir(p)) // only if it is empty
		}
		return err
	}
	return a.afterImport(ctx, kept, j.entries)
}

func readPart(root *os.Root, name string, most int64) ([]byte, error) {
	f, err := root.Open(name)
	if err != nil {
		return nil, fmt.Errorf("cannot read %w", err)
	}
	defer f.Close()
	data, err := readAtMost(f, most)
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", name, err)
	}
	return data, nil
}

// emptyBook makes sure that there is an empty book to import into.
func (a *app) emptyBook(ctx context.Context) error {
	const hint = "\"backleaf --book NEW studio new --empty\" makes an empty one"
	b, err := book.OpenReadOnly(ctx, a.path())
	if errors.Is(err, book.ErrNoBook) {
		return &failure{fmt.Errorf("there is no book %s to import into", a.path()), hint, exitNoBook}
	}
	if err != nil {
		return err
	}
	defer b.Close()
	size, _, err := b.Tree(ctx)
	if err == nil && size > 0 {
		err = hinted(fmt.Errorf("%s is not empty: a deposit is read back into an empty book only", a.path()), hint)
	}
	return err
}

// importPhotos keeps the photographs that the entries name, each checked by its
// digest, and returns how many are in order and which files are new.
func (a *app) importPhotos(ctx context.Context, root *os.Root, es []record.Entry) (kept map[string]bool, made []string, err error) {
	kept = map[string]bool{}
	for _, e := range es {
		p, ok := e.Body.(record.Photograph)
		if !ok || kept[p.SHA256] {
			continue
		}
		if err := ctx.Err(); err != nil {
			return kept, made, err
		}
		data, err := readPart(root, path.Join("data", "photographs", deposit.PhotographName(p)), photos.MaxBytes)
		if sum := sha256.Sum256(data); err == nil && hex.EncodeToString(sum[:]) != p.SHA256 {
			err = fmt.Errorf("photograph %s is not the one on record", deposit.PhotographName(p))
		}
		if err != nil {
			a.talk("%v", err)
			continue
		}
		at := photos.Path(a.path(), p)
		if _, err := os.Lstat(at); err != nil {
			made = append(made, at)
		}
		if err := photos.Keep(a.path(), p, data); err != nil {
			return kept, made, err
		}
		kept[p.SHA256] = true
	}
	return kept, made, nil
}

func (a *app) afterImport(ctx context.Context, kept map[string]bool, es []record.Entry) error {
	lost := map[string]bool{}
	for _, e := range es {
		if p, ok := e.Body.(record.Photograph); ok && !kept[p.SHA256] {
			lost[p.SHA256] = true
		}
	}
	return a.read(ctx, func(s *studio.Session) error {
		b := s.Book
		_, root, err := b.Tree(ctx)
		if err != nil {
			return err
		}
		a.say("the same journal: root %x; %s kept", root[:], countOf(len(kept), "photograph"))
		if len(lost) > 0 {
			return &failure{fmt.Errorf("%s not in the deposit as recorded", countOf(len(lost), "photograph")), "the journal is whole; look for them in another copy", exitIntegrity}
		}
		return nil
	})
}
