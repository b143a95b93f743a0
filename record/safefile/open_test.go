package safefile_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"backleaf/record/safefile"
)

func TestRead(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "file")
	if err := os.WriteFile(path, []byte("0123456789"), 0o600); err != nil {
		t.Fatal(err)
	}
	for most, good := range map[int64]bool{9: false, 10: true, 11: true, safefile.Unbounded: true} {
		data, err := safefile.Read(path, most)
		if good != (err == nil) || good && string(data) != "0123456789" || !good && data != nil {
			t.Errorf("at most %d: %q, %v", most, data, err)
		}
	}
	sparse := filepath.Join(dir, "sparse")
	if err := os.WriteFile(sparse, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(sparse, 3<<30); err != nil {
		t.Skip(err)
	}
	link := filepath.Join(dir, "link")
	if err := os.Symlink(path, link); err != nil {
		t.Fatal(err)
	}
	if data, err := safefile.Read(link, 10); err != nil || len(data) != 10 {
		t.Errorf("through a link: %q, %v", data, err)
	}
	for place, want := range map[string]string{
		sparse:                      "cannot read " + sparse + ": it is larger than 32 MB",
		dir:                         "cannot read " + dir + ": it is a folder and no regular file",
		filepath.Join(dir, "no"):    "cannot read " + filepath.Join(dir, "no") + ": no such file or directory",
		filepath.Join(path, "file"): "cannot read " + filepath.Join(path, "file") + ": not a directory",
		os.DevNull:                  "cannot read " + os.DevNull + ": it is a device and no regular file",
	} {
		if _, err := safefile.Read(place, 32<<20); err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", place, err, want)
		}
	}
	if _, err := safefile.Read(filepath.Join(dir, "no"), 1); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("%v does not say that there is no file", err)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	for place, good := range map[string]bool{"file": true, "../file": false, "sparse": false} {
		f, err := safefile.OpenIn(root, place, 10)
		if good != (err == nil) {
			t.Errorf("%s: %v", place, err)
		}
		if f != nil {
			f.Close()
		}
	}
	if data, err := safefile.ReadAll(strings.NewReader("0123456789"), 9); err == nil || data != nil {
		t.Errorf("more than asked for: %q", data)
	}
}
