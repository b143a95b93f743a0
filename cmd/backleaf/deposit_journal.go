package main

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
	"backleaf/record/seal"
)

// depositJournal is the journal of a deposit as read.
type depositJournal struct {
	name    string
	entries []record.Entry
	lines   []int
	root    seal.Hash
	signed  bool // its head is signed with a key of the journal
}

// readDeposit reads the journal of a deposit. What says something of it
// elsewhere in the deposit, the book and the signed head, must say the same:
// checksums alone can be made anew by anyone.
func readDeposit(ctx context.Context, dir string, root *os.Root) (j depositJournal, err error) {
	data, err := readPart(root, "data/journal.json", maxImport)
	if err != nil {
		return j, err
	}
	j.name = filepath.Join(dir, "data", "journal.json")
	if j.entries, j.lines, err = readExchange(j.name, data); err != nil {
		return j, err
	}
	var tree seal.Tree
	for _, e := range j.entries {
		b, err := record.Encode(e)
		if err != nil {
			return j, err
		}
		if err := tree.Append(b); err != nil {
			return j, err
		}
	}
	if j.root, err = seal.Root(tree.Size(), &tree); err != nil {
		return j, err
	}
	if err := j.agreesWithBook(ctx, filepath.Join(dir, "data", "book.sqlite")); err != nil {
		return j, err
	}
	note, err := readPart(root, "data/keys/head.txt", maxPaper)
	if errors.Is(err, fs.ErrNotExist) {
		return j, nil // nothing in the deposit is signed
	}
	if err != nil {
		return j, err
	}
	return j, j.agreesWithHead(note)
}

func (j *depositJournal) agreesWithBook(ctx context.Context, path string) error {
	b, err := book.OpenReadOnly(ctx, path)
	if err != nil {
		return err
	}
	defer b.Close()
	size, root, err := b.Tree(ctx)
	if err == nil && (size != int64(len(j.entries)) || root != j.root) {
		err = errors.New("journal.json and book.sqlite in the deposit are not the same journal")
	}
	return err
}

func (j *depositJournal) agreesWithHead(note []byte) error {
	w, err := record.Fold(j.entries)
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
		if err == nil && (h.Size != int64(len(j.entries)) || h.Root != j.root) {
			err = errors.New("it is not the head of journal.json")
		}
		if err != nil {
			return fmt.Errorf("keys/head.txt: %w", err)
		}
		j.signed = true
		return nil
	}
	return errors.New("keys/head.txt is not signed with a key of the journal")
}
