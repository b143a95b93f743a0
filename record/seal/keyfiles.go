package seal

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"backleaf/record/safefile"
)

// KeyFiles are the private key files of a studio: the one that signs and, beside it, the one that is to take its place and those that signed once. All
// but the first are named by what they are and by their key, so that a file need not be opened to know what it holds:
//
//	studio.key                   signs
//	studio-new-5b3a90c2.key      waits until the journal has its key
//	studio-retired-41c7d0ee.key  was followed by another
//	studio-lost-41c7d0ee.key     was declared lost
//
// The journal decides. A change of key lays the new file down first, then writes the entry, then calls Settle; a loss moves the file away first. Whatever
// is cut off where, no file is gone, and Settle at the next start leads to what the journal says: the change is finished if its entry was written, and
// did not happen if it was not.
type KeyFiles struct {
	// InUse is the path of the file that signs.
	InUse string
}

// What a file beside that one may be.
const (
	newKey     = "new"
	retiredKey = "retired"
	lostKey    = "lost"
)

func (f KeyFiles) named(what string, p PublicKey) string {
	ext := filepath.Ext(f.InUse)
	return strings.TrimSuffix(f.InUse, ext) + "-" + what + "-" + p.Fingerprint().String()[:8] + ext
}

// Lay writes a key that is not on record yet beside the one that signs, and returns where.
func (f KeyFiles) Lay(k Key, passphrase []byte) (string, error) {
	path := f.named(newKey, k.Public())
	return path, k.Create(path, passphrase)
}

// Lose moves the file that signs away, before its key is declared lost, and returns where; empty if there is none.
func (f KeyFiles) Lose(p PublicKey) (to string, err error) {
	err = safefile.Alone(filepath.Dir(f.InUse), func() error {
		there, err := regular(f.InUse)
		if err != nil || !there {
			return err
		}
		to = f.named(lostKey, p)
		return safefile.Move(f.InUse, to)
	})
	return to, err
}

// Settle brings the files in line with the journal, in which current is the key that signs and before the key that it follows, if it follows one. It
// changes nothing where nothing was cut off.
func (f KeyFiles) Settle(current PublicKey, before *PublicKey) error {
	return safefile.Alone(filepath.Dir(f.InUse), func() error { return f.settle(current, before) })
}

func (f KeyFiles) settle(current PublicKey, before *PublicKey) error {
	waiting, lost := f.named(newKey, current), f.named(lostKey, current)
	switch there, err := regular(waiting); {
	case err != nil:
		return err
	case there:
		if err := f.clear(waiting, before); err != nil {
			return err
		}
		return safefile.Move(waiting, f.InUse)
	}
	// A loss that the journal does not have.
	inUse, err1 := regular(f.InUse)
	away, err2 := regular(lost)
	if err := errors.Join(err1, err2); err != nil || inUse || !away {
		return err
	}
	return safefile.Move(lost, f.InUse)
}

// clear makes room for the file that waits.
func (f KeyFiles) clear(waiting string, before *PublicKey) error {
	there, err := regular(f.InUse)
	if err != nil || !there {
		return err
	}
	if same(waiting, f.InUse) {
		return nil // it has both names
	}
	if before == nil {
		return fmt.Errorf("cannot put the key %s in its place: %s is there, and the journal knows no key before it", waiting, f.InUse)
	}
	return safefile.Move(f.InUse, f.named(retiredKey, *before))
}

// Retired returns where the file of a key that was followed by another is kept.
func (f KeyFiles) Retired(p PublicKey) string { return f.named(retiredKey, p) }

func same(a, b string) bool {
	x, err1 := os.Lstat(a)
	y, err2 := os.Lstat(b)
	return err1 == nil && err2 == nil && os.SameFile(x, y)
}

func regular(path string) (bool, error) {
	info, err := os.Lstat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return false, nil
	case err != nil:
		return false, err
	case !info.Mode().IsRegular():
		return false, fmt.Errorf("%s is %s and no key file", path, safefile.Kind(info.Mode()))
	}
	return true, nil
}
