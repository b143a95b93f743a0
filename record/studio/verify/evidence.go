// Package verify checks what somebody brings: a certificate, a record, single
// files of one, a deposit, the text of a symbol. It needs no book; what the
// studio's book knows besides is asked of a [Witness].
package verify

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/studio/bounded"
	"backleaf/record/studio/refuse"
)

// Evidence is one thing that verify is asked about.
type Evidence struct {
	Name   string
	Kind   Kind
	Files  deed.Files // of a certificate, of a record folder, or a single one
	Symbol string     // what a label's QR symbol says
	Broken error      // it cannot even be read as what it should be
}

// Kind is what a piece of evidence is.
type Kind string

const (
	Certificate Kind = "certificate"
	Folder      Kind = "record folder"
	File        Kind = "file"
	Deposit     Kind = "deposit"
	Book        Kind = "book"
	Symbol      Kind = "symbol"
)

// MaxPaper bounds what somebody else made.
const MaxPaper = 64 << 20

// Open finds out what a file or folder is by what stands in it.
func Open(name string) ([]Evidence, error) {
	info, err := os.Stat(name)
	var pe *fs.PathError
	if errors.As(err, &pe) { // without the name of the call
		err = pe.Err
	}
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", name, err)
	}
	switch {
	case info.IsDir():
		return folderEvidence(name)
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("cannot read %s: it is no regular file", name)
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, fmt.Errorf("cannot read %w", err)
	}
	defer f.Close()
	begin := make([]byte, 16)
	n, _ := f.ReadAt(begin, 0)
	if string(begin[:n]) == "SQLite format 3\x00" {
		return []Evidence{{Name: name, Kind: Book}}, nil
	}
	data, err := bounded.Read(f, MaxPaper)
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", name, err)
	}
	return Read(name, data), nil
}

func folderEvidence(name string) ([]Evidence, error) {
	root, err := os.OpenRoot(name) // no link leads out of it
	if err != nil {
		return nil, fmt.Errorf("cannot read %w", err)
	}
	defer root.Close()
	if _, err := root.Stat("bagit.txt"); err == nil {
		return []Evidence{{Name: name, Kind: Deposit}}, nil
	}
	files, any, err := deedIn(root.FS(), ".")
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", name, err)
	}
	if !any {
		return nil, refuse.Cannot("no-evidence", "%s holds neither a record nor a deposit", name).With(record.With("file", deed.RecordName))
	}
	return []Evidence{{Name: name, Kind: Folder, Files: files}}, nil
}

// Names are the files of a record.
var Names = []string{deed.RecordName, deed.SignatureName, deed.KeyName, deed.HeadName, deed.ProofName, deed.StatementName}

// deedIn reads the files of a record from a folder, and reports whether there
// are any.
func deedIn(fsys fs.FS, dir string) (files deed.Files, any bool, err error) {
	for _, n := range Names {
		f, err := fsys.Open(path.Join(dir, n))
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return files, any, err
		}
		data, err := bounded.Read(f, MaxPaper)
		f.Close()
		if err != nil {
			return files, any, fmt.Errorf("%s: %w", n, err)
		}
		*files.Named(n), any = data, true
	}
	return files, any, nil
}
