package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"time"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/seal"
)

func newKey(a *app) *cobra.Command {
	return folder("key", "the key that signs the studio's records",
		keyNew(a), keyShow(a), keyPassphrase(a), keyRetire(a), keyLost(a), keySheet(a), keyRecover(a))
}

func keyNew(a *app) *cobra.Command {
	var demo bool
	c := a.passphraseFlag(&cobra.Command{
		Use: "new", Short: "make the studio's signing key",
		Long: `Make the key that signs records and heads. Its file lies beside the book, with the
book's name, and only you can read it; the book holds the public half. Whoever has
the file and its passphrase signs as the studio. Print a recovery sheet next.

If a key file lies there already and the book knows no key, it is taken as it is.`,
		Example: `  backleaf studio key new
  backleaf studio key new --passphrase-file ~/passphrase`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.write(c.Context(), func(b *book.Book) error { return a.makeKey(c.Context(), b, demo) })
		},
	})
	c.Flags().BoolVar(&demo, "demonstration", false, "the public key of the demonstration")
	c.Flags().MarkHidden("demonstration")
	return c
}

func (a *app) makeKey(ctx context.Context, b *book.Book, demo bool) error {
	w, err := b.WorkshopOf(ctx)
	if err != nil {
		return err
	}
	ring, err := keyring(ctx, b)
	if err != nil {
		return err
	}
	if p, ok := ring.Current(); ok {
		return hinted(fmt.Errorf("the studio has a key already: %s …", p.Fingerprint().Short()), "\"backleaf studio key retire\" changes it, \"backleaf studio key lost\" declares it lost")
	}
	if demo && !w.Studio.Demo {
		return errors.New("the demonstration's key is public: it is for the demonstration only")
	}
	if _, err := os.Lstat(a.keyPath()); err == nil {
		k, err := a.openKey(a.keyPath())
		if err != nil {
			return err
		}
		if s := ring.Standing(k.Public()); s != deed.Unrecorded {
			return hinted(fmt.Errorf("the key in %s is %s", a.keyPath(), s), "move that file away")
		}
		if k.Public().IsDemo() && !w.Studio.Demo {
			return fmt.Errorf("%s holds the demonstration's key, with which anyone can sign", a.keyPath())
		}
		return a.recordKey(ctx, b, w.Studio, k, "was there already")
	}
	k := seal.DemoKey()
	var pass []byte
	if !demo {
		if k, err = seal.NewKey(); err != nil {
			return err
		}
		if pass, err = a.newPassphrase(); err != nil {
			return err
		}
	}
	// The file first: a key on record that nobody has would help nobody.
	if err := k.Create(a.keyPath(), pass); err != nil {
		return err
	}
	how := "with a passphrase"
	if len(pass) == 0 {
		how = "without a passphrase: whoever has the file signs as the studio"
	}
	return a.recordKey(ctx, b, w.Studio, k, how)
}

func (a *app) recordKey(ctx context.Context, b *book.Book, s record.Studio, k seal.Key, how string) error {
	now := a.now().In(zone(s))
	es, err := b.Append(ctx, now, record.Entry{At: record.Moment(now), Body: deed.KeyMade(k.Public())})
	if err != nil {
		return hinted(err, "the key file stays; run \"backleaf studio key new\" again")
	}
	a.say("E%d  signing key %s", es[0].Seq, k.Public().Fingerprint().Groups())
	a.say("%s  the private key, %s", a.keyPath(), how)
	if !k.Public().IsDemo() {
		a.say("next: backleaf studio key recovery-sheet sheet.pdf, print it, and keep it away from this computer")
	}
	return nil
}

func keyShow(a *app) *cobra.Command {
	var asPEM bool
	c := a.jsonFlag(&cobra.Command{
		Use: "show", Short: "show the studio's keys and their fingerprints",
		Example: `  backleaf studio key show
  backleaf studio key show --pem > studio.pem`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.read(c.Context(), func(b *book.Book) error {
				ring, err := keyring(c.Context(), b)
				if err != nil {
					return err
				}
				if asPEM {
					p, ok := ring.Current()
					if !ok {
						return hinted(errors.New("the studio has no key"), "\"backleaf studio key new\" makes one")
					}
					_, err := a.out.Write(p.PEM())
					return err
				}
				return a.sayKeys(ring)
			})
		},
	})
	c.Flags().BoolVar(&asPEM, "pem", false, "print the current public key as a PEM file")
	return c
}

func (a *app) sayKeys(ring deed.Keyring) error {
	type row struct {
		Fingerprint string        `json:"fingerprint"`
		Standing    deed.Standing `json:"standing"`
		Demo        bool          `json:"demonstration,omitzero"`
	}
	rows := []row{}
	for _, p := range ring.Keys {
		rows = append(rows, row{p.Fingerprint().String(), ring.Standing(p), p.IsDemo()})
	}
	if a.asJSON {
		return a.sayJSON(rows)
	}
	if len(rows) == 0 {
		a.talk("the studio has no key: what it prints is not signed; \"backleaf studio key new\" makes one")
		return nil
	}
	for i, p := range ring.Keys {
		a.say("%s  %s", p.Fingerprint().Groups(), rows[i].Standing)
		if rows[i].Demo {
			a.say("  this key is public: anyone can sign with it")
		}
	}
	if _, ok := ring.Current(); ok {
		what := "in place"
		if _, err := os.Stat(a.keyPath()); err != nil {
			what = "not there"
		}
		a.say("%s  the private key, %s", a.keyPath(), what)
	}
	return nil
}

func keyPassphrase(a *app) *cobra.Command {
	var file string
	var none bool
	c := a.passphraseFlag(&cobra.Command{
		Use: "passphrase", Short: "set, change or take away the passphrase of the key",
		Example: `  backleaf studio key passphrase
  backleaf studio key passphrase --passphrase-file old --new-passphrase-file new
  backleaf studio key passphrase --none`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.withKey(c.Context(), func(_ *book.Book, _ record.Studio, k seal.Key) error {
				var pass []byte
				var err error
				switch {
				case none:
				case file != "":
					pass, err = passphraseFrom(file)
				default:
					a.passphraseFile = ""
					silent := *a
					silent.env = func(string) string { return "" } // that is the old one
					if pass, err = silent.newPassphrase(); err == nil && pass == nil {
						err = usage("give --new-passphrase-file FILE, or --none to take it away", "there is no new passphrase")
					}
				}
				if err != nil {
					return err
				}
				if err := k.Replace(a.keyPath(), pass); err != nil {
					return err
				}
				if len(pass) == 0 {
					a.say("%s  now without a passphrase", a.keyPath())
				} else {
					a.say("%s  now with the new passphrase; copies of the file made before keep the old one", a.keyPath())
				}
				return nil
			})
		},
	})
	c.Flags().StringVar(&file, "new-passphrase-file", "", "file whose first line is the new passphrase")
	c.Flags().BoolVar(&none, "none", false, "take the passphrase away")
	c.MarkFlagsMutuallyExclusive("none", "new-passphrase-file")
	return c
}

// withKey opens the book and the studio's current key.
func (a *app) withKey(ctx context.Context, do func(*book.Book, record.Studio, seal.Key) error) error {
	return a.write(ctx, func(b *book.Book) error {
		k, err := a.studioKey(ctx, b)
		if err == nil && k == nil {
			err = hinted(errors.New("the studio has no key"), "\"backleaf studio key new\" makes one")
		}
		if err != nil {
			return err
		}
		w, err := b.WorkshopOf(ctx)
		if err != nil {
			return err
		}
		return do(b, w.Studio, *k)
	})
}

func keyRetire(a *app) *cobra.Command {
	var because string
	c := a.passphraseFlag(&cobra.Command{
		Use: "retire", Short: "change to a new key, which the old one names as its successor",
		Long: `Make a new key and let the old one sign for it, so that papers of both can be told
to be of one studio. What the old key signed stays good; it signs nothing more.`,
		Example: `  backleaf studio key retire --because "a new computer"
  backleaf studio key retire --because "the studio moves" --passphrase-file ~/passphrase`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			if because == "" {
				return usage("for example --because \"a new computer\"", "say --because")
			}
			return a.withKey(c.Context(), func(b *book.Book, s record.Studio, old seal.Key) error {
				return a.retireKey(c.Context(), b, s, old, because)
			})
		},
	})
	c.Flags().StringVar(&because, "because", "", "why")
	return c
}

func (a *app) retireKey(ctx context.Context, b *book.Book, s record.Studio, old seal.Key, because string) error {
	heir, err := seal.NewKey()
	if err != nil {
		return err
	}
	now := a.now().In(zone(s))
	retired, err := deed.KeyRetired(s.Mark, old, heir.Public(), now.Format(time.DateOnly), because)
	if err != nil {
		return err
	}
	pass, err := a.newPassphrase()
	if err != nil {
		return err
	}
	// The new key lies beside the old one until the book knows it.
	waiting := a.keyNamed("-new")
	if err := heir.Create(waiting, pass); err != nil {
		return hinted(err, "if this is left over from a change that failed, move it away")
	}
	at := record.Moment(now)
	es, err := b.Append(ctx, now, record.Entry{At: at, Body: deed.KeyMade(heir.Public())}, record.Entry{At: at, Body: retired})
	if err != nil {
		return errors.Join(err, os.Remove(waiting))
	}
	moved, err := a.shelve("retired", old.Public())
	if err == nil {
		err = os.Rename(waiting, a.keyPath())
	}
	if err != nil {
		return hinted(fmt.Errorf("the key is changed, but its file has not its name yet: %w", err), fmt.Sprintf("move %s to %s", waiting, a.keyPath()))
	}
	a.say("E%d and E%d  the old key %s … named its successor", es[0].Seq, es[1].Seq, old.Public().Fingerprint().Short())
	a.say("signing key %s", heir.Public().Fingerprint().Groups())
	a.say("%s  the retired key, which signs nothing more", moved)
	a.say("next: backleaf studio key recovery-sheet sheet.pdf; the old sheet is of no use now")
	return nil
}

func keyLost(a *app) *cobra.Command {
	var because string
	c := &cobra.Command{
		Use: "lost", Short: "declare the key lost or stolen",
		Long: `Write into the book that the key is lost or in wrong hands. A lost key can sign for
no successor, so tell buyers the fingerprint of the new one by another way.`,
		Example: `  backleaf studio key lost --because "the computer was stolen"
  backleaf studio key lost --because "the passphrase is forgotten"`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			if because == "" {
				return usage("for example --because \"the computer was stolen\"", "say --because")
			}
			return a.write(c.Context(), func(b *book.Book) error { return a.loseKey(c.Context(), b, because) })
		},
	}
	c.Flags().StringVar(&because, "because", "", "why")
	return c
}

func (a *app) loseKey(ctx context.Context, b *book.Book, because string) error {
	w, err := b.WorkshopOf(ctx)
	if err != nil {
		return err
	}
	ring, err := keyring(ctx, b)
	if err != nil {
		return err
	}
	p, ok := ring.Current()
	if !ok {
		return errors.New("the studio has no key that could be lost")
	}
	now := a.now().In(zone(w.Studio))
	es, err := b.Append(ctx, now, record.Entry{At: record.Moment(now), Body: record.KeyLost{Fingerprint: p.Fingerprint().String(), Because: because}})
	if err != nil {
		return fieldHint(err)
	}
	a.say("E%d  key %s … is declared lost: what it signs from now on is not the studio's", es[0].Seq, p.Fingerprint().Short())
	switch moved, err := a.shelve("lost", p); {
	case err == nil:
		a.say("%s  the key file that was there", moved)
	case !errors.Is(err, fs.ErrNotExist):
		return err
	}
	a.say("next: backleaf studio key new")
	return nil
}

func keyRecover(a *app) *cobra.Command {
	return a.passphraseFlag(&cobra.Command{
		Use: "recover [FILE]", Short: "write the key file again from the words of the recovery sheet",
		Long: `Read the fourteen groups of the recovery sheet from a file or standard input and
write the key file again. It must be the key that the book names.`,
		Example: `  backleaf studio key recover
  backleaf studio key recover words.txt`,
		Args: wanted(0, 1, "at most one file"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.read(c.Context(), func(b *book.Book) error {
				ring, err := keyring(c.Context(), b)
				if err != nil {
					return err
				}
				in := a.in
				if len(args) == 1 && args[0] != "-" {
					f, err := os.Open(args[0])
					if err != nil {
						return fmt.Errorf("cannot read the recovery text: %w", err)
					}
					defer f.Close()
					in = f
				} else {
					a.talk("type the fourteen groups, then end the input (Ctrl-D)")
				}
				text, err := waiting(a, func() ([]byte, error) { return io.ReadAll(io.LimitReader(in, 1<<16)) })
				if err != nil {
					return fmt.Errorf("cannot read the recovery text: %w", err)
				}
				k, err := seal.KeyFromRecovery(string(text))
				if err != nil {
					return err
				}
				if s := ring.Standing(k.Public()); s != deed.Current {
					return fmt.Errorf("this is not the studio's current key: it is %s", s)
				}
				pass, err := a.newPassphrase()
				if err != nil {
					return err
				}
				if err := k.Create(a.keyPath(), pass); err != nil {
					return err
				}
				a.say("%s  the key %s …, as it was", a.keyPath(), k.Public().Fingerprint().Short())
				return nil
			})
		},
	})
}
