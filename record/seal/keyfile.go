package seal

import (
	"fmt"
	"io/fs"
	"os"
	"runtime"

	"backleaf/record/safefile"
)

// LoadKey reads a private key file. loose reports that others than the owner may read the file, which deserves a warning.
// Errors: as ParsePrivatePEM, and those of the file system.
func LoadKey(path string, passphrase []byte) (key Key, loose bool, err error) {
	f, err := safefile.Open(path, maxPEMBytes)
	if err != nil {
		return Key{}, false, fmt.Errorf("cannot read the private key: %w", err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return Key{}, false, fmt.Errorf("cannot read the private key: %w", err)
	}
	data, err := safefile.ReadAll(f, maxPEMBytes)
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
	return k.write(path, passphrase, safefile.Create)
}

// Replace writes the private key over an existing key file, to change its passphrase. The file must exist; it holds the old bytes or the new
// ones, never a mixture. The caller makes sure that it is the same key.
func (k Key) Replace(path string, passphrase []byte) error {
	if _, err := os.Lstat(path); err != nil {
		return fmt.Errorf("cannot write the private key: %w", err)
	}
	return k.write(path, passphrase, safefile.Write)
}

// write lets put make the file. What a killed run leaves unfinished, which holds the key too, goes with the next write beside it.
func (k Key) write(path string, passphrase []byte, put func(string, fs.FileMode, func(*os.File) error) error) error {
	data, err := k.PrivatePEM(passphrase)
	if err == nil {
		err = put(path, 0o600, safefile.Bytes(data))
	}
	if err != nil {
		return fmt.Errorf("cannot write the private key: %w", err)
	}
	return nil
}
