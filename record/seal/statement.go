package seal

import (
	"errors"
	"fmt"
)

// MaxStatementBytes bounds a signed statement, so that its QR symbol stays readable on paper.
const MaxStatementBytes = 900

const demoNotice = "anyone can sign with this key"

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

var statements = word[Statement]{
	what: "the statement", title: " panel statement", wrong: errors.New("not a panel statement: its lines are not those of one, or not in their order"),
	fields: func(s Statement) (string, []field) {
		demo := ""
		if s.Key.IsDemo() {
			demo = demoNotice
		}
		return s.Origin, []field{
			{"number", s.Number}, {"title", s.Title}, {"maker", s.Maker}, {"size", s.Size}, {"made", s.Made}, {"issued", s.Issued},
			{"record", s.Record.String()}, {"key", s.Key.line()}, {"demonstration", demo},
		}
	},
	read: func(origin string, v *values) Statement {
		return Statement{Origin: origin, Number: v.needed("number"), Title: v.of["title"], Maker: v.needed("maker"), Size: v.of["size"],
			Made: v.of["made"], Issued: v.day("issued"), Record: v.digest("record"), Key: v.key("key")}
	},
}

// Sign returns the statement as a note signed with the key, of at most MaxStatementBytes. White space in a value becomes single spaces.
func (s Statement) Sign(k Key) ([]byte, error) {
	s.Key = k.public()
	msg, err := statements.sign(s, k)
	if err == nil && len(msg) > MaxStatementBytes {
		return nil, fmt.Errorf("cannot sign the statement: it has %d bytes, at most %d fit the QR symbol; shorten title or maker", len(msg), MaxStatementBytes)
	}
	return msg, err
}

// OpenStatement reads a statement and checks its signature with the key that it names itself. Whether that is the studio's key is for the
// caller to find out, by its fingerprint.
func OpenStatement(msg []byte) (Statement, error) {
	if len(msg) > MaxStatementBytes {
		return Statement{}, fmt.Errorf("a statement has at most %d bytes", MaxStatementBytes)
	}
	return statements.open(msg, func(s Statement) PublicKey { return s.Key })
}
