package seal

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
)

// LoadKey reads a private key file. loose reports that others than the owner may read the file, which deserves a warning.
// Errors: as ParsePrivatePEM, and those of the file system.
func LoadKey(path string, passphrase []byte) (key Key, loose bool, err error) {
	f, err := os.Open(path)
	if err != nil {
		return Key{}, false, fmt.Errorf("cannot read the private key: %w", err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return Key{}, false, fmt.Errorf("cannot read the private key: %w", err)
	}
	if !info.Mode().IsRegular() {
		return Key{}, false, fmt.Errorf("cannot read the private key: %s is not a plain file", path)
	}
	data, err := io.ReadAll(io.LimitReader(f, maxPEMBytes+1))
	if err != nil {
		return Key{}, false, fmt.Errorf("cannot read the private key: %w", err)
	}
	// Windows reports made-up permission bits.
	loose = runtime.GOOS != "windows" && info.Mode().Perm()&0o077 != 0
	key, err = ParsePrivatePEM(data, passphrase)
	if err != nil {
		return Key{}, loose, fmt.Errorf("cannot read the private key %s: %w", path, err)
	}
	return key, loose, nil
}

// Create writes the private key to a new file that only its owner can read. It refuses to overwrite anything.
// The file appears whole or not at all, and is on the disk when Create returns.
func (k Key) Create(path string, passphrase []byte) error {
	return k.write(path, passphrase, func(temp string) error {
		// A hard link, unlike a rename, fails if the name is taken.
		err := os.Link(temp, path)
		if err == nil || errors.Is(err, fs.ErrExist) {
			return err
		}
		// Some file systems (FAT on a memory stick) have no hard links.
		if _, err := os.Lstat(path); err == nil {
			return fs.ErrExist
		}
		return os.Rename(temp, path)
	})
}

// Replace writes the private key over an existing key file, to change its passphrase. The file must exist; it holds the old bytes or the new
// ones, never a mixture. The caller makes sure that it is the same key.
func (k Key) Replace(path string, passphrase []byte) error {
	return k.write(path, passphrase, func(temp string) error {
		if _, err := os.Lstat(path); err != nil {
			return err
		}
		return os.Rename(temp, path)
	})
}

// write puts the key into a temporary file beside path, lets place give it its name, and makes both durable.
func (k Key) write(path string, passphrase []byte, place func(temp string) error) error {
	data, err := k.PrivatePEM(passphrase)
	if err != nil {
		return err
	}
	dir := filepath.Dir(path)
	f, err := os.CreateTemp(dir, ".key-*") // made with mode 0600
	if err != nil {
		return fmt.Errorf("cannot write the private key: %w", err)
	}
	temp := f.Name()
	defer os.Remove(temp)
	_, err = f.Write(data)
	if err == nil {
		err = f.Sync()
	}
	if closeErr := f.Close(); err == nil {
		err = closeErr
	}
	if err == nil {
		err = place(temp)
	}
	if err == nil {
		err = syncDir(dir)
	}
	if err != nil {
		return fmt.Errorf("cannot write the private key %s: %w", path, err)
	}
	return nil
}

// syncDir makes a new name in a directory durable; Windows has no such call and needs none.
func syncDir(dir string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	defer d.Close()
	return d.Sync()
}
