// Package keys is the key that signs a studio's records and heads: its file
// beside the book, its life in the journal, and the page from which it can be
// made again.
package keys

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/studio/refuse"
)

// Holder is the person who holds the key: what only they know is asked of
// them.
type Holder interface {
	// Passphrase returns that of a key file; nil where there is nobody to ask.
	Passphrase(file string) ([]byte, error)
	// NewPassphrase returns one for a new key; empty for none.
	NewPassphrase() ([]byte, error)
	// Warn tells them of something about the file.
	Warn(record.Said)
}

// File returns the file of the signing key: beside the book, with its name.
func File(bookPath string) string { return named(bookPath, "") }

func named(bookPath, what string) string {
	return strings.TrimSuffix(bookPath, filepath.Ext(bookPath)) + what + ".key"
}

// There reports that the key file of a book is in its place.
func There(bookPath string) bool {
	_, err := os.Stat(File(bookPath))
	return err == nil
}

// Ring returns the keys a book knows.
func Ring(ctx context.Context, b *book.Book) (deed.Keyring, error) {
	w, err := b.WorkshopOf(ctx)
	if err != nil {
		return deed.Keyring{}, err
	}
	ring, err := deed.Keys(w.Keys)
	if err != nil {
		return ring, fmt.Errorf("the book's entries about keys do not hold: %w", err)
	}
	return ring, nil
}

// Current opens the key that signs now. It returns nil if the studio has none
// on record. A key that is not the one on record is refused.
func Current(ctx context.Context, b *book.Book, who Holder) (*seal.Key, error) {
	ring, err := Ring(ctx, b)
	if err != nil {
		return nil, err
	}
	current, ok := ring.Current()
	if !ok {
		return nil, nil
	}
	if err := Settle(b.Path(), ring); err != nil {
		return nil, err
	}
	file := File(b.Path())
	if _, err := os.Stat(file); errors.Is(err, fs.ErrNotExist) {
		return nil, refuse.Cannot("key-file-missing", "the studio's key file %s is not there", file)
	}
	k, err := open(file, who)
	if err != nil {
		return nil, err
	}
	if k.Public() != current {
		return nil, refuse.Cannot("other-key", "%s does not hold the studio's current key: it holds one that is %s", file, ring.Standing(k.Public())).
			With(record.With("key", current.Fingerprint().Short()))
	}
	return &k, nil
}

// Needed is [Current] where there must be a key.
func Needed(ctx context.Context, b *book.Book, who Holder) (seal.Key, error) {
	k, err := Current(ctx, b, who)
	if err == nil && k == nil {
		err = refuse.Cannot("no-key", "the studio has no key")
	}
	if err != nil {
		return seal.Key{}, err
	}
	return *k, nil
}

// open reads a key file and asks for its passphrase if it has one.
func open(file string, who Holder) (seal.Key, error) {
	k, loose, err := seal.LoadKey(file, nil)
	if errors.Is(err, seal.ErrPassphraseNeeded) {
		var pass []byte
		if pass, err = who.Passphrase(file); err != nil {
			return seal.Key{}, err
		}
		if pass == nil {
			return seal.Key{}, refuse.Cannot("no-passphrase", "the key %s is closed with a passphrase, and none was given", file)
		}
		k, loose, err = seal.LoadKey(file, pass)
	}
	switch {
	case errors.Is(err, seal.ErrPassphraseWrong), errors.Is(err, seal.ErrPassphraseNeeded): // an empty line was typed
		return seal.Key{}, refuse.Because("passphrase-wrong", err)
	case err != nil:
		return seal.Key{}, refuse.Because("key-not-read", err)
	}
	if loose {
		who.Warn(record.Say("key-file-open", record.With("file", file)))
	}
	return k, nil
}

// PassphraseIn reads the first line of a file.
func PassphraseIn(path string) ([]byte, error) {
	line, err := firstLine(path)
	if err != nil {
		return nil, refuse.Because("passphrase-not-read", fmt.Errorf("cannot read the passphrase: %w", err))
	}
	return line, nil
}

func firstLine(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	line, err := bufio.NewReader(io.LimitReader(f, 4096)).ReadBytes('\n')
	if err != nil && err != io.EOF {
		return nil, err
	}
	if line = bytes.TrimRight(line, "\r\n"); len(line) == 0 {
		return nil, fmt.Errorf("the first line of %s is empty", path)
	}
	return line, nil
}

func files(bookPath string) seal.KeyFiles { return seal.KeyFiles{InUse: File(bookPath)} }

// Settle ends or takes back what a run that was cut off left undone.
func Settle(bookPath string, ring deed.Keyring) error {
	current, ok := ring.Current()
	if !ok {
		return nil
	}
	var before *seal.PublicKey
	for _, p := range ring.Keys {
		if heir, ok := ring.Heir(p); ok && heir == current.Fingerprint() {
			before = &p
		}
	}
	return files(bookPath).Settle(current, before)
}
