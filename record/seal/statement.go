package seal

import (
	"errors"
	"fmt"
	"strings"
	"time"
)

// MaxStatementBytes bounds a signed statement, so that its QR symbol stays readable on paper.
const MaxStatementBytes = 900

const (
	statementTitle = " panel statement"
	demoNotice     = "anyone can sign with this key"
)

// A Statement is what a certificate's second QR symbol says: enough to check the paper by itself. Signed, it reads
//
//	backleaf/KB panel statement
//	number: KB26-0142-1
//	title: Evening, Low Tide
//	maker: Ada Example
//	size: 400 x 300 x 22 mm
//	made: 2026-03/2026-05
//	issued: 2026-06-01
//	record: e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855
//	key: MCowBQYDK2VwAyEA11qYAYKxCrfVS/7TyWQHOg7hcvPapiMlrwIaaPcHURo=
//
//	— backleaf/KB AbCd…
//
// The lines stand in this order; a line without a value is left out, which only title, size and made may be. record is what sha256sum prints for
// record.json, key the middle line of studio.pem. A statement signed with the demonstration's key has a last line that says so.
type Statement struct {
	Origin string // see Origin
	Number string
	Title  string
	Maker  string
	Size   string // as printed
	Made   string // EDTF
	Issued string // YYYY-MM-DD
	Record Digest
	Key    PublicKey // set by Sign
}

var errStatement = errors.New("not a panel statement: its lines are not those of one, or not in their order")

// Sign returns the statement as a note signed with the key, of at most MaxStatementBytes. White space in a value becomes single spaces.
func (s Statement) Sign(k Key) ([]byte, error) {
	if k.private == nil {
		return nil, errors.New("cannot sign the statement: there is no key")
	}
	s.Key = k.Public()
	text, err := s.text()
	if err == nil {
		_, err = parseStatement(text)
	}
	if err != nil {
		return nil, fmt.Errorf("cannot sign the statement: %w", err)
	}
	msg, err := k.signNote(text)
	if err != nil {
		return nil, fmt.Errorf("cannot sign the statement: %w", err)
	}
	if len(msg) > MaxStatementBytes {
		return nil, fmt.Errorf("cannot sign the statement: it has %d bytes, at most %d fit the QR symbol; shorten title or maker", len(msg), MaxStatementBytes)
	}
	return msg, nil
}

// OpenStatement reads a statement and checks its signature with the key that it names itself. Whether that is the studio's key is for the
// caller to find out, by its fingerprint.
func OpenStatement(msg []byte) (Statement, error) {
	if len(msg) > MaxStatementBytes {
		return Statement{}, fmt.Errorf("a statement has at most %d bytes", MaxStatementBytes)
	}
	text, err := unsignedText(msg)
	if err != nil {
		return Statement{}, err
	}
	s, err := parseStatement(text)
	if err != nil {
		return Statement{}, err
	}
	if _, err := openNote(msg, s.Key); err != nil {
		return Statement{}, err
	}
	return s, nil
}

func (s Statement) text() (string, error) {
	demo := ""
	if s.Key.IsDemo() {
		demo = demoNotice
	}
	return formatFields(s.Origin+statementTitle, []field{
		{"number", s.Number}, {"title", s.Title}, {"maker", s.Maker}, {"size", s.Size}, {"made", s.Made}, {"issued", s.Issued},
		{"record", s.Record.String()}, {"key", s.Key.line()}, {"demonstration", demo},
	})
}

func parseStatement(text string) (Statement, error) {
	first, values := parseFields(text)
	origin, ok := strings.CutSuffix(first, statementTitle)
	if !ok || !validOrigin(origin) {
		return Statement{}, errStatement
	}
	s := Statement{Origin: origin, Number: values["number"], Title: values["title"], Maker: values["maker"], Size: values["size"],
		Made: values["made"], Issued: values["issued"]}
	if s.Number == "" || s.Maker == "" {
		return Statement{}, errors.New("a panel statement needs a number and a maker")
	}
	if !isDate(s.Issued) {
		return Statement{}, errors.New("a panel statement needs its date of issue as YYYY-MM-DD")
	}
	var err error
	if s.Record, err = ParseDigest(values["record"]); err != nil {
		return Statement{}, err
	}
	if s.Key, err = parsePublicLine(values["key"]); err != nil {
		return Statement{}, err
	}
	if again, err := s.text(); err != nil || again != text {
		return Statement{}, errStatement
	}
	return s, nil
}

// isDate reports whether s is a calendar day in the one spelling YYYY-MM-DD.
func isDate(s string) bool {
	t, err := time.Parse(time.DateOnly, s)
	return err == nil && t.Format(time.DateOnly) == s
}
