// Package photos keeps the photographs of a book: files named by their
// SHA-256 in the folder "photographs" beside it. The journal holds digest and
// size.
package photos

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"image"
	_ "image/jpeg" // the two kinds of photograph that are kept
	_ "image/png"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"backleaf/record"
	"backleaf/record/safefile"
	"backleaf/record/studio/refuse"
)

// MaxBytes bounds a kept photograph.
const MaxBytes = 64 << 20

// ErrMissing and ErrChanged say what is wrong with a kept file.
var (
	ErrMissing = errors.New("the file is missing")
	ErrChanged = errors.New("the file has been changed")
)

// Folder is where the photographs of a book are kept.
func Folder(bookPath string) string { return filepath.Join(filepath.Dir(bookPath), "photographs") }

// Path is where a photograph of a book is kept.
func Path(bookPath string, p record.Photograph) string {
	return filepath.Join(Folder(bookPath), p.SHA256+strings.Replace(p.Type, "image/", ".", 1))
}

// Load reads a picture file, and says what it is in p.
func Load(path string, p *record.Photograph) ([]byte, error) {
	st, err := os.Stat(path)
	if err != nil {
		return nil, fmt.Errorf("cannot read the photograph: %w", err)
	}
	if st.Size() > MaxBytes || !st.Mode().IsRegular() {
		return nil, fmt.Errorf("%s is not a file of at most %d MB", path, MaxBytes>>20)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("cannot read the photograph: %w", err)
	}
	return data, Identify(path, data, p)
}

// Identify says in p what a picture is; name is for the error.
func Identify(name string, data []byte, p *record.Photograph) error {
	cfg, kind, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil || kind != "jpeg" && kind != "png" {
		return refuse.Cannot("no-picture", "%s is neither a JPEG nor a PNG picture", name)
	}
	sum := sha256.Sum256(data)
	p.SHA256, p.Type = hex.EncodeToString(sum[:]), "image/"+kind
	p.Width, p.Height = int64(cfg.Width), int64(cfg.Height)
	return nil
}

// Keep writes the file unless it is there already.
func Keep(bookPath string, p record.Photograph, data []byte) error {
	path := Path(bookPath, p)
	if old, err := os.ReadFile(path); err == nil && bytes.Equal(old, data) {
		return nil
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return fmt.Errorf("cannot keep the photograph: %w", err)
	}
	err := safefile.Write(path, 0o644, func(f *os.File) error { _, err := f.Write(data); return err })
	if err != nil {
		return fmt.Errorf("cannot keep the photograph: %w", err)
	}
	return nil
}

// Kept reads a kept file as it is.
func Kept(bookPath string, p record.Photograph) ([]byte, error) {
	data, err := os.ReadFile(Path(bookPath, p))
	if err != nil {
		return nil, refuse.Because("photograph-not-read", fmt.Errorf("cannot read the photograph on record: %w", err))
	}
	return data, nil
}

// Read reads a kept file that still is what the journal says.
func Read(bookPath string, p record.Photograph) ([]byte, error) {
	data, err := os.ReadFile(Path(bookPath, p))
	sum := sha256.Sum256(data)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, ErrMissing
	case err == nil && hex.EncodeToString(sum[:]) != p.SHA256:
		return nil, ErrChanged
	}
	return data, err
}

// Check reports what is wrong with a kept file; nil if it is in order.
func Check(bookPath string, p record.Photograph) error {
	f, err := os.Open(Path(bookPath, p))
	if err != nil {
		return ErrMissing
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, io.LimitReader(f, MaxBytes+1)); err != nil {
		return err
	}
	if hex.EncodeToString(h.Sum(nil)) != p.SHA256 {
		return ErrChanged
	}
	return nil
}
