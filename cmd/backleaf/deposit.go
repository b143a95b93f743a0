package main

import (
	"cmp"
	"context"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/bag"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/deposit"
	"backleaf/record/safefile"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
	"backleaf/record/tell"
)

func newDeposit(a *app) *cobra.Command {
	var unsigned bool
	c := a.passphraseFlag(&cobra.Command{
		Use: "deposit DIR", Short: "write all of the record into a folder that a stranger can read and check",
		Long: `Write everything on record into the new folder DIR: for an archive, a museum or an
heir. It is a bag (BagIt 1.0) with its own checksums: the journal, the book, a page,
a signed record and a dossier of every panel, photographs, tables, labels and
certificates drawn anew, and a README that tells a stranger how to read and check all
of it without backleaf. Others may write to the book meanwhile.

Private parts (buyers, prices) are not in it. Photographs are the exact files, with
whatever the camera wrote into them, such as a place.

Without a key nothing in it is signed, and its README says so.`,
		Example: `  backleaf deposit /media/stick/deposit-2026
  backleaf deposit ../for-the-archive --unsigned`,
		Args: wanted(1, 1, "the folder to make"),
		RunE: func(c *cobra.Command, args []string) error {
			ctx, dir := c.Context(), filepath.Clean(args[0])
			if err := freeName(dir); err != nil {
				return hinted(fmt.Errorf("cannot make the deposit: %w", err), "name a folder that is not there yet; nothing is overwritten")
			}
			b, err := a.open(ctx)
			if err != nil { // a book that cannot be written to can be deposited
				if b, err = book.OpenReadOnly(ctx, a.path()); err != nil {
					return err
				}
			}
			err = a.deposit(ctx, b, dir, unsigned)
			return errors.Join(err, b.Close())
		},
	})
	c.Flags().BoolVar(&unsigned, "unsigned", false, "sign nothing: where the key is not at hand")
	return c
}

// freeName makes sure that a folder can be made under a name.
func freeName(dir string) error {
	if _, err := os.Lstat(dir); err == nil {
		return fmt.Errorf("%s: %w", dir, fs.ErrExist)
	}
	if info, err := os.Stat(filepath.Dir(dir)); err != nil || !info.IsDir() {
		return fmt.Errorf("there is no folder %s", filepath.Dir(dir))
	}
	return nil
}

// depositor puts a deposit together. It reads a copy of the book that never
// held the private parts and that nobody writes to.
type depositor struct {
	app     *app
	book    *book.Book // the copy
	shop    *record.Workshop
	ring    deed.Keyring
	key     *seal.Key // nil: nothing is signed
	now     time.Time
	scratch string // folder for parts that are ready
	about   deposit.About
	head    book.Head

	mu      sync.Mutex
	parts   []bag.File
	leftOut []string // papers that could not be drawn, and why
}

func (a *app) deposit(ctx context.Context, b *book.Book, dir string, unsigned bool) error {
	d := &depositor{app: a}
	if !unsigned {
		var err error
		if d.key, err = keys.Current(ctx, b, holder{a}); err != nil {
			if _, hint, code := refused(err); hint != "" {
				return &failure{err, hint + "; or --unsigned", code}
			}
			return err
		}
	}
	err := safefile.Scratch(dir, func(scratch string) error {
		d.scratch = scratch
		a.busy("copying and verifying the book")
		copied := filepath.Join(scratch, "book.sqlite")
		err := b.Backup(ctx, a.now(), copied, book.WithoutPrivate)
		a.idle()
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
	if err != nil {
		return fmt.Errorf("cannot make the deposit: %w", err)
	}
	if d.key != nil {
		if err := b.KeepHead(ctx, d.head); err != nil {
			a.talk("note: the deposit is made, but the book cannot keep its head: %v", err)
		}
	}
	return d.say(dir)
}

// gather makes all parts from the copy of the book.
func (d *depositor) gather(ctx context.Context) (err error) {
	if d.shop, err = d.book.Workshop(ctx); err != nil {
		return err
	}
	if d.ring, err = deed.Keys(d.shop.Keys); err != nil {
		return err
	}
	d.now = d.app.now().In(studio.Zone(d.shop.Studio)).Truncate(time.Second)
	size, root, err := d.book.Tree(ctx)
	if err != nil {
		return err
	}
	s := d.shop.Studio
	_, known := d.ring.Current()
	d.about = deposit.About{Maker: cmp.Or(s.Maker, "a studio without a name"), Mark: s.Mark, Place: s.Place, Date: d.now, Panels: len(d.shop.Panels),
		Entries: size, Root: hex.EncodeToString(root[:]), KeyOnRecord: known, Demo: s.Demo}
	if d.key != nil {
		d.about.Key = d.key.Public().Fingerprint().Groups()
		d.head = book.Head{Size: size, Root: root}
	}
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
		func() error { return d.photographs(ctx) },
		func() error { return d.panels(ctx) },
		func() error { return d.certificates(ctx, stored) },
	} {
		if err := step(); err != nil {
			return err
		}
	}
	if slices.Sort(d.leftOut); len(d.leftOut) > 0 {
		return d.put("papers/left-out.txt", []byte(strings.Join(d.leftOut, "\n")+"\n"))
	}
	return nil
}

// journal adds the journal, its tables, and what is the same in every deposit.
func (d *depositor) journal(stored []book.Stored) error {
	entries := make([]record.Entry, len(stored))
	for i, s := range stored {
		entries[i] = s.Entry
	}
	tables, err := deposit.Tables(d.shop, entries)
	if err != nil {
		return err
	}
	for _, t := range tables {
		data, err := t.CSV()
		if err != nil {
			return err
		}
		if err := d.put("tables/"+t.Name+".csv", data); err != nil {
			return err
		}
	}
	index, err := deposit.Index(tell.English, d.shop)
	if err != nil {
		return err
	}
	for _, f := range append(deposit.Fixed(), deposit.File{Path: "index.html", Data: index}) {
		if err := d.put(f.Path, f.Data); err != nil {
			return err
		}
	}
	return d.fill("journal.json", func(w io.Writer) error { return writeExchange(w, stored) })
}

// put adds a part.
func (d *depositor) put(path string, data []byte) error {
	return d.fill(path, func(w io.Writer) error { _, err := w.Write(data); return err })
}

// fill adds a part that is kept on the disk until the bag is written, however
// many there are.
func (d *depositor) fill(path string, fill func(io.Writer) error) error {
	name := filepath.Join(d.scratch, "parts", filepath.FromSlash(path))
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		return err
	}
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	if err := errors.Join(fill(f), f.Close()); err != nil {
		return err
	}
	d.add(bag.FromDisk(path, name))
	return nil
}

func (d *depositor) add(f bag.File) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.parts = append(d.parts, f)
}

func (d *depositor) leaveOut(path string, why error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.leftOut = append(d.leftOut, path+": "+why.Error())
}

// write makes the bag, which can be interrupted before each file.
func (d *depositor) write(ctx context.Context, dir string) error {
	readme, err := deposit.Readme(d.about)
	if err != nil {
		return err
	}
	show, done := d.app.progress("files"), int64(0)
	for i, f := range d.parts {
		d.parts[i].Open = func() (io.ReadCloser, error) {
			if err := ctx.Err(); err != nil {
				return nil, err
			}
			if done++; show != nil {
				show(done, int64(len(d.parts)))
			}
			return f.Open()
		}
	}
	return bag.Write(dir, bag.Bag{
		Payload: d.parts, Tags: []bag.File{bag.Bytes("README.txt", readme)}, Agent: "backleaf", Date: d.now,
		Info: []bag.Field{
			{Label: "Source-Organization", Value: d.about.Maker},
			{Label: "External-Identifier", Value: fmt.Sprintf("%s-%d-%s", cmp.Or(d.about.Mark, "empty"), d.about.Entries, d.about.Root[:16])},
			{Label: "External-Description", Value: fmt.Sprintf("The record of %s by %s: journal, book, photographs and papers. Begin with README.txt.", countOf(d.about.Panels, "painting panel"), d.about.Maker)},
			{Label: "Number-of-Panels", Value: fmt.Sprint(d.about.Panels)},
			{Label: "Number-of-Entries", Value: fmt.Sprint(d.about.Entries)},
			{Label: "Signed", Value: signedWords(d.about.Key)},
		},
	})
}

func signedWords(fingerprint string) string {
	if fingerprint == "" {
		return "no"
	}
	return "with key " + fingerprint
}

func countOf(n int, noun string) string {
	if n != 1 {
		noun += "s"
	}
	return fmt.Sprintf("%d %s", n, noun)
}

// say tells what was deposited.
func (d *depositor) say(dir string) error {
	a := d.app
	a.say("%s  deposit: %s, %d entries, %s, root %s", dir, countOf(d.about.Panels, "panel"), d.about.Entries, countOf(d.about.Photographs, "photograph"), d.about.Root)
	switch {
	case d.key != nil:
		a.say("signed with key %s …", d.key.Public().Fingerprint().Short())
	case d.about.KeyOnRecord:
		a.say("not signed, as you asked: nobody can tell later who made it")
	default:
		a.say("not signed: the studio has no key (\"backleaf studio key new\" makes one)")
	}
	for i, s := range d.leftOut {
		if i == maxProblems {
			a.talk("and %d more: %s", len(d.leftOut)-i, filepath.Join(dir, "data", "papers", "left-out.txt"))
			break
		}
		a.talk("left out: %s", s)
	}
	a.say("to check it: backleaf verify %s, or there: sha512sum --quiet -c manifest-sha512.txt", dir)
	if lost := len(d.about.Missing); lost > 0 {
		return &failure{fmt.Errorf("%s missing or changed and could not be deposited", countOf(lost, "photograph")), "the rest is good; look for these photographs in a backup: README.txt names them", exitIntegrity}
	}
	return nil
}
