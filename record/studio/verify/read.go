package verify

import (
	"bytes"
	"errors"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/pattern"
	"backleaf/record/pdf"
	"backleaf/record/seal"
)

const byteOrderMark = "\ufeff"

// Read finds out what data is. A text may hold several things: a camera
// reads all symbols of a page at once.
func Read(name string, data []byte) []Evidence {
	one := Evidence{Name: name, Kind: File}
	if place := one.Files.Named(filepath.Base(name)); place != nil {
		*place = data
		one.Remarks = mended(&one.Files)
		return []Evidence{one}
	}
	switch text := strings.TrimPrefix(string(data), byteOrderMark); {
	case bytes.HasPrefix(onlyPDF(data), []byte("%PDF-")):
		return []Evidence{certificateIn(name, data)}
	case strings.HasPrefix(text, seal.RecordPrefix):
		one.Files.Record = data
	case strings.HasPrefix(text, `{"backleaf":"inclusion/`):
		one.Files.Proof = data
	case strings.HasPrefix(text, "-----BEGIN PUBLIC KEY-----"):
		one.Files.Key = data
	case strings.Contains(text, "PRIVATE KEY-----"): // not a line of it is repeated
		one.Kind, one.Unread = Foreign, unread(deed.Unknown, "private-key")
	case len(data) == seal.SignatureSize && bytes.ContainsFunc(data, func(r rune) bool { return r < ' ' || r == '\uFFFD' }):
		one.Files.Signature = data
	case !utf8.Valid(data), strings.ContainsRune(text, 0):
		return []Evidence{noPaper(name, kindOf(text))}
	case page().MatchString(text):
		return []Evidence{noPaper(name, "page")}
	case export().MatchString(text):
		return []Evidence{noPaper(name, "export")}
	case len(data) > maxText:
		one.Kind, one.Unread = Symbol, unread(deed.Unknown, "text-too-long", record.With("most", maxText))
	default:
		return symbolsIn(name, text)
	}
	one.Remarks = mended(&one.Files)
	return []Evidence{one}
}

// onlyPDF leaves out what a way through other programs may put before and after
// a PDF: blank lines, a byte order mark, zero bytes. It hides no object.
func onlyPDF(data []byte) []byte {
	data = bytes.TrimLeft(bytes.TrimPrefix(data, []byte(byteOrderMark)), " \t\r\n")
	return bytes.TrimRight(data, " \t\r\n\x00")
}

func unread(v deed.Verdict, code string, values ...record.Value) *deed.Result {
	r := deed.Found(v, code, values...)
	return &r
}

// noPaper is what carries nothing of this program, so that nothing can be said
// about it.
func noPaper(name, kind string) Evidence {
	return Evidence{Name: name, Kind: Foreign, Unread: unread(deed.Unknown, "no-paper", record.With("kind", record.Code(kind)))}
}

// kindOf is what a person would call a file of another program, by its first
// bytes (ISO 10918-1, ISO 15948, APPNOTE.TXT of ZIP); "other" where it is none of these.
func kindOf(data string) string {
	switch {
	case strings.HasPrefix(data, "\xff\xd8\xff"), strings.HasPrefix(data, "\x89PNG\r\n"):
		return "picture"
	case strings.HasPrefix(data, "PK\x03\x04"):
		return "packed"
	}
	return "other"
}

// mended takes away what an editor or the mail puts into key, head and
// statement: other line ends, blank lines around them, a byte order mark. Their
// text has one spelling, so nothing else can be meant. A record is signed byte
// by byte: a byte order mark in it is named.
func mended(f *deed.Files) (out []deed.Result) {
	for _, n := range Names {
		place := f.Named(n)
		switch n {
		case deed.KeyName, deed.HeadName, deed.StatementName:
			if as := seal.FromPaper(*place); *place != nil && !bytes.Equal(as, *place) {
				*place = as
				out = append(out, deed.Found(deed.Since, "line-ends-mended", record.With("file", n)))
			}
		default:
			if bytes.HasPrefix(*place, []byte(byteOrderMark)) {
				out = append(out, deed.Found(deed.Fails, "byte-order-mark", record.With("file", n)))
			}
		}
	}
	return out
}

// certificateIn takes the attachments out of a PDF.
func certificateIn(name string, data []byte) Evidence {
	e := Evidence{Name: name, Kind: Certificate, Digest: seal.DigestOf(data)}
	attached, err := pdf.Attachments(onlyPDF(data))
	switch {
	case errors.Is(err, pdf.ErrEncrypted):
		e.Unread = unread(deed.Unknown, "pdf-encrypted")
	case errors.Is(err, pdf.ErrAmbiguous):
		e.Unread = unread(deed.Fails, "pdf-ambiguous", deed.Why(err))
	case err != nil:
		e.Unread = unread(deed.Unknown, "pdf-not-read", deed.Why(err))
	}
	if err != nil {
		return e
	}
	any := false
	strays := attached.Strays
	for _, a := range attached.Files {
		if place := e.Files.Named(a.Name); place != nil {
			*place, any = a.Data, true
		} else {
			strays = append(strays, a.Name)
		}
	}
	switch {
	case !any:
		e.Kind, e.Unread = Bare, unread(deed.Unknown, "pdf-without-record")
	case e.Files.Record == nil:
		e.Unread = unread(deed.Fails, "parts-missing")
	}
	for _, name := range strays {
		if passesForPart(name) {
			e.Remarks = append(e.Remarks, deed.Found(deed.Fails, "stray-alike", record.With("file", name)))
		}
	}
	if most := 20; len(strays) > most {
		strays = append(strays[:most], "…")
	}
	if len(strays) > 0 {
		e.Remarks = append(e.Remarks, deed.Found(deed.Unknown, "strays", record.With("files", strays)))
	}
	if attached.Updates > 0 {
		e.Remarks = append(e.Remarks, deed.Found(deed.Unknown, "appended", record.With("times", attached.Updates)))
	}
	return e
}

var (
	noteBegins = pattern.Of(`^backleaf/[^ ]+( panel statement)?$`)
	// Words of the studio that belong to other things than a panel's papers.
	noteElsewhere = pattern.Of(`^backleaf/[^ ]+ (status|deposit|panel page|key succession)$`)

	noteEnds = pattern.Of(`^— `)

	// What a symbol without a link says after its number is in further lines.
	symbolBegins = pattern.Of(`(?i)^(https?:|ark:|\x{feff}?[bcdfghjkmnpqrstvwxz]{1,4}[0-9]{2}-?[0-9a-z-]+$)`)

	// What was meant as a panel number, letters taken for figures among them.
	meantNumber = pattern.Of(`(?i)^[a-z]{1,4}[0-9oil]{2}-?[0-9oil]{3,}-?[0-9a-z]?$`)

	page   = pattern.Of(`(?i)^\s*<!doctype html`)
	export = pattern.Of(`^\s*\{\s*"backleaf":\s*"entries"`)

	// The short end of one.
	digits = pattern.Of(`^[0-9]+$`)
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
	for line := range strings.Lines(text) {
		line = strings.TrimRight(line, "\r\n")
		bare := strings.TrimPrefix(line, "QR-Code:") // so a program that reads symbols marks them
		switch {
		case len(out) >= maxSymbols:
			out = append(out[:maxSymbols], Evidence{Name: name, Kind: Symbol, Unread: unread(deed.Unknown, "too-many-lines", record.With("n", maxSymbols))})
			return out
		case noteElsewhere().MatchString(bare):
			end()
			kind := record.Code(bare[strings.LastIndex(bare, " ")+1:])
			return append(out, Evidence{Name: name, Kind: Symbol, Unread: unread(deed.Unknown, "note-elsewhere", record.With("kind", kind))})
		case noteBegins().MatchString(bare):
			end()
			note = []string{bare}
		case note != nil:
			if note = append(note, line); noteEnds().MatchString(line) {
				end()
			}
		case len(out) > 0 && out[len(out)-1].Kind == Symbol && !symbolBegins().MatchString(strings.TrimSpace(bare)):
			if last := &out[len(out)-1]; len(last.Symbol) <= maxSymbol { // beyond, it is none
				last.Symbol += "\n" + strings.TrimSpace(bare)
			}
		case strings.TrimSpace(bare) != "":
			out = append(out, Evidence{Name: name, Kind: Symbol, Symbol: strings.TrimSpace(bare)})
		}
	}
	end()
	if out == nil {
		out = []Evidence{noPaper(name, "empty")}
	}
	return out
}

// maxSymbols bounds the symbols and notes of one text, maxText all of it.
const (
	maxSymbols = 100
	maxText    = 1 << 20
)
