//go:build unix

package kept_test

import (
	"bytes"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"backleaf/record"
	"backleaf/record/studio/kept"
)

// What is no whole photograph is not kept, and nothing is waited for.
func TestLoad(t *testing.T) {
	dir := t.TempDir()
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewGray(image.Rect(0, 0, 40, 30))); err != nil {
		t.Fatal(err)
	}
	put := func(name string, data []byte) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	pipe, sparse := filepath.Join(dir, "pipe"), put("sparse", nil)
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Skip(err)
	}
	if err := os.Truncate(sparse, 3<<30); err != nil {
		t.Skip(err)
	}
	for path, good := range map[string]bool{put("good", b.Bytes()): true, put("short", b.Bytes()[:b.Len()-20]): false, put("text", []byte("text")): false,
		pipe: false, sparse: false, dir: false, os.DevNull: false, "/dev/zero": false} {
		var p record.Photograph
		data, _, err := kept.Load(path, &p, false)
		if good != (err == nil) || good && (p.Width != 40 || p.Height != 30 || p.Type != "image/png" || len(data) != b.Len()) {
			t.Errorf("%s: %+v, %v", path, p, err)
		}
	}
}
