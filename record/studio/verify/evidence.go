package verify

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/safefile"
	"backleaf/record/seal"
	"backleaf/record/studio/refuse"
)

// Evidence is one thing that verify is asked about.
type Evidence struct {
	Name    string
	Kind    Kind
	Files   deed.Files    // of a certificate, of a record folder, or a single one
	Digest  seal.Digest   // of a PDF as a whole
	Symbol  string        // what a label's QR symbol says
	Remarks []deed.Result // on what it was read from
	Unread  *deed.Result  // why it cannot be read as what it should be
}

// Kind is what a piece of evidence is.
type Kind string

const (
	Certificate Kind = "certificate"
	Bare        Kind = "PDF without a record"
	Folder      Kind = "record folder"
	File        Kind = "file"
	Deposit     Kind = "deposit"
	Book        Kind = "book"
	Symbol      Kind = "symbol"
	Foreign     Kind = "no paper"
)

// MaxPaper bounds what somebody else made; maxPart what is one part of a record.
const (
	MaxPaper = 64 << 20
	maxPart  = seal.MaxRecordBytes + 1
)

// Open finds out what a file or folder is by what stands in it.
func Open(name string) ([]Evidence, error) {
	if info, err := os.Stat(name); err == nil && info.IsDir() {
		return folderEvidence(name)
	}
	f, err := safefile.Open(name, safefile.Unbounded)
	if errors.Is(err, fs.ErrNotExist) {
		number := ""
		if typed := Typed(name); meantNumber().MatchString(typed) || digits().MatchString(typed) {
			number = typed
		}
		return nil, refuse.Because("no-such-file", err, record.With("number", number))
	}
	if err != nil {
		return nil, err
	}
	defer f.Close()
	begin := make([]byte, 16)
	n, _ := f.ReadAt(begin, 0)
	if string(begin[:n]) == "SQLite format 3\x00" {
		return []Evidence{{Name: name, Kind: Book}}, nil
	}
	data, err := safefile.ReadAll(f, MaxPaper)
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", name, err)
	}
	return Read(name, data), nil
}

// ReadFrom reads a text or file from a stream.
func ReadFrom(name string, r io.Reader) ([]Evidence, error) {
	data, err := safefile.ReadAll(r, MaxPaper)
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
	for _, part := range []string{"bagit.txt", "manifest-sha512.txt", DepositSignature} {
		if _, err := root.Stat(part); err == nil {
			return []Evidence{{Name: name, Kind: Deposit}}, nil
		}
	}
	files, any, err := deedIn(root, ".")
	if err != nil {
		return nil, err
	}
	if !any {
		return []Evidence{{Name: name, Kind: Foreign, Unread: unread(deed.Unknown, "folder")}}, nil
	}
	e := Evidence{Name: name, Kind: Folder, Files: files}
	e.Remarks = mended(&e.Files)
	return []Evidence{e}, nil
}

// Names are the files of a record.
var Names = []string{deed.RecordName, deed.SignatureName, deed.KeyName, deed.HeadName, deed.ProofName, deed.StatementName}

// deedIn reads the files of a record from a folder, and reports whether there
// are any.
func deedIn(root *os.Root, dir string) (files deed.Files, any bool, err error) {
	for _, n := range Names {
		data, err := safefile.ReadIn(root, path.Join(dir, n), maxPart)
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return files, any, err
		}
		*files.Named(n), any = data, true
	}
	return files, any, nil
}
