package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"

	"backleaf/record/deed"
	"backleaf/record/paper"
	"backleaf/record/seal"
)

// evidence is one thing that verify is asked about.
type evidence struct {
	name   string
	what   evidenceKind
	files  deed.Files // of a certificate, of a record folder, or a single one
	symbol string     // what a label's QR symbol says
	broken error      // it cannot even be read as what it should be
}

type evidenceKind string

const (
	aCertificate evidenceKind = "certificate"
	aFolder      evidenceKind = "record folder"
	aFile        evidenceKind = "file"
	aDeposit     evidenceKind = "deposit"
	aBook        evidenceKind = "book"
	aSymbol      evidenceKind = "symbol"
)

// maxPaper bounds what somebody else made.
const maxPaper = 64 << 20

// evidenceOf finds out what a file or folder is by what stands in it.
func (a *app) evidenceOf(name string) ([]evidence, error) {
	if name == "-" {
		data, err := waiting(a, func() ([]byte, error) { return readAtMost(a.in, maxPaper) })
		if err != nil {
			return nil, fmt.Errorf("cannot read standard input: %w", err)
		}
		return evidenceIn("standard input", data), nil
	}
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
		return []evidence{{name: name, what: aBook}}, nil
	}
	data, err := readAtMost(f, maxPaper)
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", name, err)
	}
	return evidenceIn(name, data), nil
}

func readAtMost(r io.Reader, most int64) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, most+1))
	if err == nil && int64(len(data)) > most {
		err = fmt.Errorf("it is larger than %d MB", most>>20)
	}
	return data, err
}

func folderEvidence(name string) ([]evidence, error) {
	root, err := os.OpenRoot(name) // no link leads out of it
	if err != nil {
		return nil, fmt.Errorf("cannot read %w", err)
	}
	defer root.Close()
	if _, err := root.Stat("bagit.txt"); err == nil {
		return []evidence{{name: name, what: aDeposit}}, nil
	}
	files, any, err := deedIn(root.FS(), ".")
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", name, err)
	}
	if !any {
		return nil, hinted(fmt.Errorf("%s holds neither a record nor a deposit", name), "a record folder holds "+deed.RecordName+" and the files that belong to it")
	}
	return []evidence{{name: name, what: aFolder, files: files}}, nil
}

// deedNames are the files of a record.
var deedNames = []string{deed.RecordName, deed.SignatureName, deed.KeyName, deed.HeadName, deed.ProofName, deed.StatementName}

// deedIn reads the files of a record from a folder, and reports whether there
// are any.
func deedIn(fsys fs.FS, dir string) (files deed.Files, any bool, err error) {
	for _, n := range deedNames {
		f, err := fsys.Open(path.Join(dir, n))
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return files, any, err
		}
		data, err := readAtMost(f, maxPaper)
		f.Close()
		if err != nil {
			return files, any, fmt.Errorf("%s: %w", n, err)
		}
		*files.Named(n), any = data, true
	}
	return files, any, nil
}

// evidenceIn finds out what data is. A text may hold several things: a camera
// reads all symbols of a page at once.
func evidenceIn(name string, data []byte) []evidence {
	one := evidence{name: name, what: aFile}
	if place := one.files.Named(filepath.Base(name)); place != nil {
		*place = data
		return []evidence{one}
	}
	switch text := string(data); {
	case strings.HasPrefix(text, "%PDF-"):
		return []evidence{certificateIn(name, data)}
	case strings.HasPrefix(text, seal.RecordPrefix):
		one.files.Record = data
	case strings.HasPrefix(text, `{"backleaf":"inclusion/`):
		one.files.Proof = data
	case strings.HasPrefix(text, "-----BEGIN PUBLIC KEY-----"):
		one.files.Key = data
	case strings.Contains(text, "PRIVATE KEY-----"): // not a line of it is repeated
		one.what, one.broken = aSymbol, errors.New("it is a private key: show it to nobody; what it signed is checked with the public one, studio.pem")
	case len(data) == seal.SignatureSize && bytes.ContainsFunc(data, func(r rune) bool { return r < ' ' || r == '\uFFFD' }):
		one.files.Signature = data
	default:
		return symbolsIn(name, text)
	}
	return []evidence{one}
}

func certificateIn(name string, pdf []byte) evidence {
	e := evidence{name: name, what: aCertificate}
	attached, err := paper.Attachments(pdf)
	if err != nil {
		e.broken = err
		return e
	}
	for _, a := range attached {
		if place := e.files.Named(a.Name); place != nil {
			*place = a.Data
		}
	}
	if e.files.Record == nil {
		e.broken = errors.New("it carries no record: it is a preview, another paper, or not from here")
	}
	return e
}

var (
	noteBegins = regexp.MustCompile(`^backleaf/[^ ]+( panel statement| key succession)?$`)
	noteEnds   = regexp.MustCompile(`^— `)
)

// symbolsIn takes apart a text as it comes from QR symbols.
func symbolsIn(name, text string) []evidence {
	var out []evidence
	var note []string
	end := func() {
		if note == nil {
			return
		}
		e := evidence{name: name, what: aFile}
		if strings.HasSuffix(note[0], " panel statement") {
			e.files.Statement = []byte(strings.Join(note, "\n") + "\n")
		} else {
			e.files.Head = []byte(strings.Join(note, "\n") + "\n")
		}
		out, note = append(out, e), nil
	}
	for line := range strings.Lines(strings.TrimPrefix(text, "\ufeff")) {
		line = strings.TrimRight(line, "\r\n")
		bare := strings.TrimPrefix(line, "QR-Code:") // so a program that reads symbols marks them
		switch {
		case noteBegins.MatchString(bare):
			end()
			note = []string{bare}
		case note != nil:
			if note = append(note, line); noteEnds.MatchString(line) {
				end()
			}
		case strings.TrimSpace(bare) != "":
			out = append(out, evidence{name: name, what: aSymbol, symbol: strings.TrimSpace(bare)})
		}
	}
	end()
	if out == nil {
		out = []evidence{{name: name, what: aSymbol, broken: errors.New("it is empty")}}
	}
	return out
}
