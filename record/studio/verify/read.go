package verify

import (
	"bytes"
	"errors"
	"path/filepath"
	"regexp"
	"strings"

	"backleaf/record/pdf"
	"backleaf/record/seal"
)

// Read finds out what data is. A text may hold several things: a camera
// reads all symbols of a page at once.
func Read(name string, data []byte) []Evidence {
	one := Evidence{Name: name, Kind: File}
	if place := one.Files.Named(filepath.Base(name)); place != nil {
		*place = data
		return []Evidence{one}
	}
	switch text := string(data); {
	case strings.HasPrefix(text, "%PDF-"):
		return []Evidence{certificateIn(name, data)}
	case strings.HasPrefix(text, seal.RecordPrefix):
		one.Files.Record = data
	case strings.HasPrefix(text, `{"backleaf":"inclusion/`):
		one.Files.Proof = data
	case strings.HasPrefix(text, "-----BEGIN PUBLIC KEY-----"):
		one.Files.Key = data
	case strings.Contains(text, "PRIVATE KEY-----"): // not a line of it is repeated
		one.Kind, one.Broken = Symbol, errors.New("it is a private key: show it to nobody; what it signed is checked with the public one, studio.pem")
	case len(data) == seal.SignatureSize && bytes.ContainsFunc(data, func(r rune) bool { return r < ' ' || r == '\uFFFD' }):
		one.Files.Signature = data
	default:
		return symbolsIn(name, text)
	}
	return []Evidence{one}
}

func certificateIn(name string, data []byte) Evidence {
	e := Evidence{Name: name, Kind: Certificate}
	attached, err := pdf.Attachments(data)
	if err != nil {
		e.Broken = err
		return e
	}
	for _, a := range attached.Files {
		if place := e.Files.Named(a.Name); place != nil {
			*place = a.Data
		}
	}
	if e.Files.Record == nil {
		e.Broken = errors.New("it carries no record: it is a preview, another paper, or not from here")
	}
	return e
}

var (
	noteBegins = regexp.MustCompile(`^backleaf/[^ ]+( panel statement| key succession)?$`)
	noteEnds   = regexp.MustCompile(`^— `)
)

// symbolsIn takes apart a text as it comes from QR symbols.
func symbolsIn(name, text string) []Evidence {
	var out []Evidence
	var note []string
	end := func() {
		if note == nil {
			return
		}
		e := Evidence{Name: name, Kind: File}
		if strings.HasSuffix(note[0], " panel statement") {
			e.Files.Statement = []byte(strings.Join(note, "\n") + "\n")
		} else {
			e.Files.Head = []byte(strings.Join(note, "\n") + "\n")
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
			out = append(out, Evidence{Name: name, Kind: Symbol, Symbol: strings.TrimSpace(bare)})
		}
	}
	end()
	if out == nil {
		out = []Evidence{{Name: name, Kind: Symbol, Broken: errors.New("it is empty")}}
	}
	return out
}
