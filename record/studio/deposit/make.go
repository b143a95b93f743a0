// Package deposit puts the whole record of a studio into one folder that a
// stranger can read and check, and reads it back. What such a folder holds is
// told by the README in it, made by record/deposit.
package deposit

import (
	"bytes"
	"cmp"
	"context"
	"encoding/hex"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"backleaf/record"
	"backleaf/record/bag"
	"backleaf/record/book"
	"backleaf/record/deed"
	parts "backleaf/record/deposit"
	"backleaf/record/form"
	"backleaf/record/safefile"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/exchange"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/verify"
	"backleaf/record/tell"
)

// depositor puts a deposit together. It reads a copy of the book that never
// held the private parts and that nobody writes to.
type depositor struct {
	from     string       // path of the studio's own book, beside its photographs
	book     *book.Book   // the copy
	stored   deed.Journal // what the copy holds
	put      put
	undrawn  bool // papers that take long to draw are left out
	shop     *record.Workshop
	ring     deed.Keyring
	key      *seal.Key // nil: nothing is signed
	signer   string    // fingerprint of that key
	now      time.Time
	about    parts.About
	head     book.Head
	progress studio.Progress
	words    *tell.Catalogue

	mu       sync.Mutex
	files    []bag.File
	leftOut  []string // papers that could not be drawn, and why
	warnings []record.Said
}

// Check makes sure that a deposit can be made under a name.
func Check(dir string) error {
	if err := free(dir); err != nil {
		return refuse.Because("deposit-there", fmt.Errorf("no deposit was made: %w", err))
	}
	return nil
}

// free makes sure that a folder can be made under a name.
func free(dir string) error {
	if _, err := os.Lstat(dir); err == nil {
		return fmt.Errorf("%s is there already", dir)
	}
	if info, err := os.Stat(filepath.Dir(dir)); err != nil || !info.IsDir() {
		return fmt.Errorf("there is no folder %s", filepath.Dir(dir))
	}
	return nil
}

// Make writes everything on record into the new folder dir. key signs it; nil
// signs nothing. Where kept files are missing it is made, and refused as broken. Others may write to the book meanwhile.
func Make(ctx context.Context, s *studio.Session, dir string, key *seal.Key, progress studio.Progress) (w studio.Written, err error) {
	if err := studio.Known(s.Book); err != nil {
		return w, err
	}
	d := &depositor{from: s.Book.Path(), key: key, now: s.Clock(), progress: progress, words: s.Catalogue()}
	err = safefile.Scratch(dir, func(scratch string) error {
		d.put = d.onDisk(filepath.Join(scratch, "parts"))
		end := progress.Busy("copying-book", 0)
		copied := filepath.Join(scratch, "book.sqlite")
		err := s.Book.Backup(ctx, s.Clock(), copied, book.WithoutPrivate, progress.Of("entries"))
		end()
		if err != nil {
			return err
		}
		if d.book, err = book.OpenReadOnly(ctx, copied); err != nil {
			return err
		}
		err = errors.Join(d.gather(ctx), d.book.Close())
		if err != nil {
			return err
		}
		d.add(bag.FromDisk("book.sqlite", copied))
		return d.write(ctx, dir)
	})
	w.Warnings = d.warnings
	if err != nil {
		return w, fmt.Errorf("no deposit was made: %w", err)
	}
	w.Mean("deposit-made", record.With("folder", dir), record.With("panels", d.about.Panels), record.With("entries", d.about.Entries),
		record.With("photographs", d.about.Photographs), record.With("root", d.about.Root))
	switch {
	case key != nil:
		w.Mean("signed", record.With("key", key.Public().Fingerprint().Short()))
		if err := s.Book.KeepHead(ctx, d.head); err != nil {
			w.Warn("head-not-kept", record.With("why", err.Error()))
		}
	case d.about.KeyOnRecord:
		w.Mean("not-signed-as-asked")
	default:
		w.Mean("not-signed")
	}
	for i, s := range d.leftOut {
		if i == verify.MaxProblems {
			w.Warn("and-more-in", record.With("n", len(d.leftOut)-i), record.With("file", filepath.Join(dir, "data", "papers", "left-out.txt")))
			break
		}
		w.Warn("paper-left-out", record.With("what", s))
	}
	w.Mean("check-deposit", record.With("folder", dir))
	if n := len(d.about.Missing); n > 0 {
		return w, refuse.Breaks("deposit-incomplete", "%s missing or changed and could not be deposited", kept.Count(n, "photograph"))
	}
	return w, nil
}

// gather makes all parts from the copy of the book.
func (d *depositor) gather(ctx context.Context) (err error) {
	d.stored = d.book
	if d.shop, err = d.book.Workshop(ctx); err != nil {
		return err
	}
	if d.ring, err = deed.Keys(d.shop.Keys); err != nil {
		return err
	}
	d.now = d.now.In(studio.Zone(d.shop.Studio)).Truncate(time.Second)
	size, root, err := d.book.Tree(ctx)
	if err != nil {
		return err
	}
	s := d.shop.Studio
	_, known := d.ring.Current()
	d.about = parts.About{Maker: cmp.Or(s.Maker, "a studio without a name"), Mark: s.Mark, Place: s.Place, Date: d.now, Panels: len(d.shop.Panels),
		Entries: size, Root: hex.EncodeToString(root[:]), KeyOnRecord: known, Demo: s.Demo}
	if d.key != nil {
		d.signer = d.key.Public().Fingerprint().Groups()
		d.head = book.Head{Size: size, Root: root}
	}
	d.about.Key = d.signer
	if len(d.shop.Panels) > 0 {
		d.about.Example = string(d.shop.Panels[0].Number)
	}
	stored, err := d.book.Entries(ctx, book.Filter{})
	if err != nil {
		return err
	}
	for _, step := range []func() error{
		func() error { return d.journal(stored) },
		func() error { return d.keys(ctx) },
		func() error { return d.keptFiles(ctx) },
		func() error { return d.panels(ctx) },
	} {
		if err := step(); err != nil {
			return err
		}
	}
	if slices.Sort(d.leftOut); len(d.leftOut) > 0 && !d.undrawn {
		return d.put("papers/left-out.txt", []byte(strings.Join(d.leftOut, "\n")+"\n"))
	}
	return nil
}

// journal adds the journal, its tables, and what is the same in every deposit.
func (d *depositor) journal(stored []form.Stored) error {
	for _, t := range append(parts.Tables(d.shop, stored), parts.Table{Name: "glossary", Rows: d.words.Glossary()}) {
		data, err := t.CSV()
		if err != nil {
			return err
		}
		if err := d.put("tables/"+t.Name+".csv", data); err != nil {
			return err
		}
	}
	index, err := parts.Index(d.words, d.shop)
	if err != nil {
		return err
	}
	for _, f := range append(parts.Fixed(), parts.File{Path: "index.html", Data: index}) {
		if err := d.put(f.Path, f.Data); err != nil {
			return err
		}
	}
	var b bytes.Buffer
	if err := exchange.Write(&b, stored); err != nil {
		return err
	}
	return d.put("journal.json", b.Bytes())
}
