package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/seal"
)

// passphraseVariable holds the passphrase for scripts.
const passphraseVariable = "BACKLEAF_PASSPHRASE"

// keyPath returns the file of the signing key: beside the book, with its name.
func (a *app) keyPath() string { return a.keyNamed("") }

func (a *app) keyNamed(what string) string {
	p := a.path()
	return strings.TrimSuffix(p, filepath.Ext(p)) + what + ".key"
}

// passphraseFlag adds --passphrase-file to a command that signs.
func (a *app) passphraseFlag(c *cobra.Command) *cobra.Command {
	c.Flags().StringVar(&a.passphraseFile, "passphrase-file", "", "file whose first line is the passphrase of the key (else $"+passphraseVariable+", else you are asked)")
	return c
}

// studioKey opens the key that signs now. It returns nil if the studio has
// none on record. A key that is not the one on record is refused.
func (a *app) studioKey(ctx context.Context, b *book.Book) (*seal.Key, error) {
	ring, err := keyring(ctx, b)
	if err != nil {
		return nil, err
	}
	current, ok := ring.Current()
	if !ok {
		return nil, nil
	}
	k, err := a.openKey(a.keyPath())
	if errors.Is(err, fs.ErrNotExist) {
		return nil, hinted(fmt.Errorf("the studio's key file %s is not there", a.keyPath()),
			"put it back, or \"backleaf studio key recover\" from the recovery sheet; if it is gone: \"backleaf studio key lost\"")
	}
	if err != nil {
		return nil, err
	}
	if k.Public() != current {
		return nil, hinted(fmt.Errorf("%s does not hold the studio's current key: it holds one that is %s", a.keyPath(), ring.Standing(k.Public())),
			"the key on record is "+current.Fingerprint().Short()+" …; put that file back")
	}
	return &k, nil
}

func keyring(ctx context.Context, b *book.Book) (deed.Keyring, error) {
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

// openKey reads a key file and asks for its passphrase if it has one.
func (a *app) openKey(path string) (seal.Key, error) {
	k, loose, err := seal.LoadKey(path, nil)
	if errors.Is(err, seal.ErrPassphraseNeeded) {
		var pass []byte
		if pass, err = a.passphrase("passphrase of " + path); err != nil {
			return seal.Key{}, err
		}
		if pass == nil {
			return seal.Key{}, hinted(fmt.Errorf("the key %s has a passphrase, and there is nobody to ask", path),
				"set "+passphraseVariable+" or give --passphrase-file")
		}
		k, loose, err = seal.LoadKey(path, pass)
	}
	if err != nil {
		return seal.Key{}, err
	}
	if loose {
		a.talk("note: others than you may read %s: \"chmod 600 %s\" closes it", path, path)
	}
	return k, nil
}

// passphrase takes the passphrase from where scripts put it, else from the
// terminal, unseen. Without any of these it is nil.
func (a *app) passphrase(prompt string) ([]byte, error) {
	if a.passphraseFile != "" {
		return passphraseFrom(a.passphraseFile)
	}
	if s := a.env(passphraseVariable); s != "" {
		return []byte(s), nil
	}
	return a.ask(prompt)
}

// passphraseFrom reads the first line of a file.
func passphraseFrom(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("cannot read the passphrase: %w", err)
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, 4096))
	if err != nil {
		return nil, fmt.Errorf("cannot read the passphrase: %w", err)
	}
	line, _, _ := bytes.Cut(data, []byte("\n"))
	if line = bytes.TrimSuffix(line, []byte("\r")); len(line) == 0 {
		return nil, fmt.Errorf("cannot read the passphrase: the first line of %s is empty", path)
	}
	return line, nil
}

// newPassphrase asks for a passphrase twice; nil if there is to be none.
func (a *app) newPassphrase() ([]byte, error) {
	if a.passphraseFile != "" || a.env(passphraseVariable) != "" {
		return a.passphrase("")
	}
	for {
		p, err := a.ask("new passphrase (empty: none)")
		if err != nil || len(p) == 0 {
			return nil, err
		}
		again, err := a.ask("the same once more")
		if err != nil {
			return nil, err
		}
		if bytes.Equal(p, again) {
			return p, nil
		}
		a.talk("these were two different ones")
	}
}

// ask reads a line from the terminal without showing it; nil where there is no
// terminal.
func (a *app) ask(prompt string) ([]byte, error) {
	f, ok := a.in.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return nil, nil
	}
	shown, err := term.GetState(int(f.Fd()))
	if err != nil {
		return nil, fmt.Errorf("cannot read the passphrase: %w", err)
	}
	fmt.Fprintf(a.err, "%s: ", clean(prompt))
	p, err := waiting(a, func() ([]byte, error) { return term.ReadPassword(int(f.Fd())) })
	fmt.Fprintln(a.err)
	if errors.Is(err, context.Canceled) { // the read is still there, and the typing unseen
		err = errors.Join(err, term.Restore(int(f.Fd()), shown))
	}
	if err != nil {
		return nil, fmt.Errorf("cannot read the passphrase: %w", err)
	}
	return p, nil
}

// shelve moves the key file aside under a name that says what became of it.
func (a *app) shelve(what string, p seal.PublicKey) (string, error) {
	to := a.keyNamed("-" + what + "-" + p.Fingerprint().String()[:8])
	if _, err := os.Lstat(to); err == nil {
		return "", fmt.Errorf("cannot move %s aside: %s is there already", a.keyPath(), to)
	}
	return to, os.Rename(a.keyPath(), to)
}
