// Package kept holds the files that belong to a book and stand beside it: the
// photographs, and every paper that left the studio, byte for byte. Each is
// named by its SHA-256; the journal holds the digest.
package kept

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/safefile"
	"backleaf/record/studio/refuse"
)

// MaxBytes bounds a kept file.
const MaxBytes = 64 << 20

// ErrMissing and ErrChanged say what is wrong with a kept file.
var (
	ErrMissing = errors.New("the file is missing")
	ErrChanged = errors.New("the file has been changed")
)

// Folders beside the book.
const (
	Photographs = "photographs"
	Papers      = "papers"
)

// File is a kept file as the journal names it.
type File struct {
	Folder  string
	Name    string
	SHA256  string
	Entry   int64         // that names it; 0 where no entry does yet
	Panel   record.Number // empty: of the studio, or of several
	Private bool          // it prints the owner's name or a price
}

// Photograph is the file of a photograph.
func Photograph(p record.Photograph) File { return picture(p.SHA256, p.Type) }

func picture(sum, media string) File {
	return File{Folder: Photographs, Name: sum + strings.Replace(media, "image/", ".", 1), SHA256: sum}
}

// Paper is the file of a paper that left the studio.
func Paper(sum string) File { return File{Folder: Papers, Name: sum + ".pdf", SHA256: sum} }

// PaperOf is the file of a paper with these bytes.
func PaperOf(data []byte) File {
	sum := sha256.Sum256(data)
	return Paper(hex.EncodeToString(sum[:]))
}

// naming are the kinds of entries that name files.
var naming = []record.Kind{record.Photograph{}.Kind(), record.Issued{}.Kind(), record.LabelPrinted{}.Kind()}

// Each gives the files that a journal names to f, each once, in the order of
// panels.
func Each(ctx context.Context, b *book.Book, f func(File) error) error {
	w, err := b.Shelf(ctx)
	if err != nil {
		return err
	}
	seen := map[File]bool{}
	once := func(file File, entry int64, panel record.Number) error {
		if file.SHA256 == "" || seen[file] {
			return nil
		}
		seen[file] = true
		file.Entry, file.Panel = entry, panel
		return f(file)
	}
	if p := w.Studio.Picture; p != (record.Picture{}) {
		err = once(Mark(p), 0, "")
	}
	if err != nil {
		return err
	}
	return b.Walk(ctx, book.Narrow{Kinds: naming}, func(p *record.Panel) error {
		for _, e := range p.Events {
			if file, ok := Named(e.Body); ok && err == nil {
				err = once(file, e.Seq, p.Number)
			}
		}
		return err
	})
}

// Find returns a file that the events of a panel name.
func Find(w *record.Workshop, is func(File) bool) (File, bool) {
	for _, p := range w.Panels {
		for _, e := range p.Events {
			if f, ok := Named(e.Body); ok && is(f) {
				return f, true
			}
		}
	}
	return File{}, false
}

// Named returns the kept file that an entry names.
func Named(b record.Body) (File, bool) {
	switch b := b.(type) {
	case record.Photograph:
		return Photograph(b), true
	case record.Issued:
		f := Paper(b.PDF)
		f.Private = b.Private == record.Yes
		return f, b.PDF != ""
	case record.LabelPrinted:
		return Paper(b.PDF), b.PDF != ""
	}
	return File{}, false
}

// Folder is where files of a kind are kept for a book.
func Folder(bookPath, folder string) string { return filepath.Join(filepath.Dir(bookPath), folder) }

// Path is where a file of a book is kept.
func Path(bookPath string, f File) string { return filepath.Join(Folder(bookPath, f.Folder), f.Name) }

// Keep writes a file unless it is there already.
func Keep(bookPath string, f File, data []byte) error {
	path := Path(bookPath, f)
	if old, err := safefile.Read(path, MaxBytes); err == nil && bytes.Equal(old, data) {
		return nil
	}
	err := os.MkdirAll(filepath.Dir(path), 0o755)
	if err == nil {
		err = safefile.Write(path, 0o644, func(to *os.File) error { _, err := to.Write(data); return err })
	}
	if err != nil {
		return fmt.Errorf("cannot keep %s: %w", path, err)
	}
	return nil
}

// Read reads a kept file that still is what the journal says.
func Read(bookPath string, f File) ([]byte, error) {
	data, err := safefile.Read(Path(bookPath, f), MaxBytes)
	sum := sha256.Sum256(data)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, ErrMissing
	case err == nil && hex.EncodeToString(sum[:]) != f.SHA256:
		return nil, ErrChanged
	}
	return data, err
}

// AsItIs reads a kept file without looking at its digest: what is drawn from it
// compares.
func AsItIs(bookPath string, f File) ([]byte, error) {
	data, err := safefile.Read(Path(bookPath, f), MaxBytes)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, refuse.Cannot("photograph-not-read", "the photograph %s/%s… on record is missing", f.Folder, f.Name[:min(12, len(f.Name))])
	case err != nil:
		return nil, refuse.Because("photograph-not-read", fmt.Errorf("cannot read the photograph on record: %w", err))
	}
	return data, nil
}

// Check reports what is wrong with a kept file; nil if it is in order.
func Check(bookPath string, f File) error {
	in, err := safefile.Open(Path(bookPath, f), MaxBytes)
	if errors.Is(err, fs.ErrNotExist) {
		return ErrMissing
	} else if err != nil {
		return err
	}
	defer in.Close()
	h := sha256.New()
	if _, err := io.Copy(h, in); err != nil {
		return err
	}
	if hex.EncodeToString(h.Sum(nil)) != f.SHA256 {
		return ErrChanged
	}
	return nil
}

// Count counts things in words: "1 panel", "3 panels".
func Count(n int, noun string) string {
	if n != 1 {
		noun += "s"
	}
	return fmt.Sprintf("%d %s", n, noun)
}
