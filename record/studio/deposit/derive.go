package deposit

import (
	"bytes"
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"time"

	"backleaf/record/bag"
	"backleaf/record/book"
	"backleaf/record/safefile"
	"backleaf/record/studio"
	"backleaf/record/studio/verify"
	"backleaf/record/tell"
)

// Derived is what came of making the worded parts of a deposit again.
type Derived struct {
	Words string   // whose version the deposit names; empty: it names none
	Own   string   // the version of this program; where it is another, nothing was made
	Files int      // made again
	Other []string // files that are not as this program makes them, or not there
	Added []string // files that it does not make
}

// errEnough: so much of a deposit is not as it is made that the rest is not worth the work.
var errEnough = errors.New("enough")

// Derive makes pages, tables and papers again from the journal in a deposit
// whose words are those of this program, and compares. signer is the
// fingerprint of the key that signed it as a whole; of what is signed the drawn
// papers, which take long, are not made again, and the lists have told what was
// added.
func Derive(ctx context.Context, dir string, root *os.Root, info []bag.Field, signer string, progress studio.Progress) (Derived, error) {
	said := func(label string) string {
		for _, f := range info {
			if f.Is(label) {
				return f.Value
			}
		}
		return ""
	}
	own, err := wordsOf(tell.English())
	x := Derived{Words: said(infoWords), Own: own}
	now, errMade := time.Parse(time.RFC3339, said(infoMade))
	if err != nil || x.Words != own || errMade != nil {
		return x, errors.Join(err, errMade)
	}
	path := filepath.Join(dir, "data", "book.sqlite")
	b, err := book.OpenReadOnly(ctx, path)
	if err != nil {
		return x, err
	}
	defer b.Close()
	var mu sync.Mutex
	made := map[string]bool{}
	differs := func(name string) error {
		if x.Other = append(x.Other, name); len(x.Other) > verify.MaxProblems {
			return errEnough
		}
		return nil
	}
	compare := func(name string, data []byte) error {
		there, err := safefile.ReadIn(root, name, int64(len(data)))
		mu.Lock()
		defer mu.Unlock()
		x.Files++
		made[name] = true
		if err != nil || !bytes.Equal(there, data) {
			return differs(name)
		}
		return nil
	}
	d := &depositor{from: path, book: b, now: now, signer: signer, undrawn: signer != "", words: tell.English(), progress: progress,
		put: func(name string, data []byte) error { return compare("data/"+name, data) }}
	err = d.gather(ctx)
	if err == nil {
		err = d.compareTags(info, compare, differs)
	}
	if err == nil && signer == "" {
		err = d.added(root, made, &x)
	}
	if errors.Is(err, errEnough) {
		err = nil
	}
	slices.Sort(x.Other)
	return x, err
}

func (d *depositor) compareTags(info []bag.Field, compare put, differs func(string) error) error {
	readme, fields, err := d.tags()
	if err != nil {
		return err
	}
	if len(info) < len(fields) || !slices.Equal(info[:len(fields)], fields) {
		if err := differs("bag-info.txt"); err != nil {
			return err
		}
	}
	return compare(readmeName, readme)
}

// added names the files of a deposit that this program does not put there.
func (d *depositor) added(root *os.Root, made map[string]bool, x *Derived) error {
	for _, f := range d.files { // what is kept is told by its own digest
		made["data/"+f.Path] = true
	}
	for _, name := range []string{"data/book.sqlite", "data/keys/head.txt"} {
		made[name] = true
	}
	for _, p := range d.shop.Panels { // what is signed is checked with the record
		for _, name := range verify.Names {
			made["data/panels/"+string(p.Number)+"/"+name] = true
		}
	}
	return fs.WalkDir(root.FS(), "data", func(p string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() || made[p] {
			return nil // what cannot be read was said
		}
		if x.Added = append(x.Added, p); len(x.Added) > verify.MaxProblems {
			return errEnough
		}
		return nil
	})
}
