package deposit

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/form"
	"backleaf/record/safefile"
	"backleaf/record/seal"
	"backleaf/record/studio/exchange"
)

// Journal is the journal of a deposit as read.
type Journal struct {
	Name    string
	Entries []form.Stored
	Lines   []int
	Root    seal.Hash
	Signed  bool // its head is signed with a key of the journal
}

// ReadJournal reads the journal of a deposit. What says something of it
// elsewhere in the deposit, the book and the signed head, must say the same:
// checksums alone can be made anew by anyone.
func ReadJournal(ctx context.Context, dir string, root *os.Root) (j Journal, err error) {
	data, err := safefile.ReadIn(root, "data/journal.json", exchange.MaxBytes)
	if err != nil {
		return j, err
	}
	j.Name = filepath.Join(dir, "data", "journal.json")
	if j.Entries, j.Lines, err = exchange.ReadJournal(j.Name, data); err != nil {
		return j, err
	}
	var tree seal.Tree
	for _, e := range j.Entries {
		if err := tree.Append(e.Bytes); err != nil {
			return j, err
		}
	}
	if j.Root, err = seal.Root(tree.Size(), &tree); err != nil {
		return j, err
	}
	if err := j.agreesWithBook(ctx, filepath.Join(dir, "data", "book.sqlite")); err != nil {
		return j, err
	}
	note, err := safefile.ReadIn(root, "data/keys/head.txt", seal.MaxNoteBytes)
	if errors.Is(err, fs.ErrNotExist) {
		return j, nil // nothing in the deposit is signed
	}
	if err != nil {
		return j, err
	}
	return j, j.agreesWithHead(note)
}

func (j *Journal) agreesWithBook(ctx context.Context, path string) error {
	b, err := book.OpenReadOnly(ctx, path)
	if err != nil {
		return err
	}
	defer b.Close()
	size, root, err := b.Tree(ctx)
	if err == nil && (size != int64(len(j.Entries)) || root != j.Root) {
		err = errors.New("journal.json and book.sqlite in the deposit are not the same journal")
	}
	return err
}

// Fold folds the journal.
func (j *Journal) Fold() (*record.Workshop, error) { return record.Fold(form.Entries(j.Entries)) }

func (j *Journal) agreesWithHead(note []byte) error {
	w, err := j.Fold()
	if err != nil {
		return err
	}
	ring, err := deed.Keys(w.Keys)
	if err != nil {
		return err
	}
	for _, key := range ring.Keys {
		h, err := seal.OpenHead(note, key)
		if errors.Is(err, seal.ErrOtherKey) {
			continue
		}
		if err == nil && (h.Size != int64(len(j.Entries)) || h.Root != j.Root) {
			err = errors.New("it is not the head of journal.json")
		}
		if err != nil {
			return fmt.Errorf("keys/head.txt: %w", err)
		}
		j.Signed = true
		return nil
	}
	return errors.New("keys/head.txt is not signed with a key of the journal")
}
