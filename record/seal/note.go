package seal

import (
	"crypto/ed25519"
	"encoding/base64"
	"errors"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/mod/sumdb/note"
)

const (
	// MaxNoteBytes bounds a note; a head takes about 250 bytes, a statement about 450.
	MaxNoteBytes = 4096
)

// ErrOtherKey: the note is well formed but was signed with another key than the one given, so nothing can be said about it.
var ErrOtherKey = errors.New("signed with another key")

var errNote = errors.New("not a signed note with one signature as this program writes it")

// Origin returns what names a studio's journal, and the key in its notes: "backleaf/", the studio mark, "/" and the name of the journal.
// The mark has one to sixteen capitals and digits, the name 26 characters of the betanumeric set; it is empty for a journal without one.
func Origin(mark, journal string) (string, error) {
	origin := "backleaf/" + mark
	if journal != "" {
		origin += "/" + journal
	}
	if !validOrigin(origin) {
		return "", fmt.Errorf("the studio mark %q and the name %q cannot name a journal", mark, journal)
	}
	return origin, nil
}

func validOrigin(origin string) bool {
	mark, ok := strings.CutPrefix(origin, "backleaf/")
	mark, journal, named := strings.Cut(mark, "/")
	return ok && (!named || len(journal) == 26 && strings.Trim(journal, "0123456789bcdfghjkmnpqrstvwxz") == "") && len(mark) >= 1 && len(mark) <= 16 && strings.Trim(mark, "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ") == ""
}

// noteSigner lets the note library sign with a Key.
type noteSigner struct {
	note.Verifier
	key Key
}

func (s noteSigner) Sign(text []byte) ([]byte, error) { return ed25519.Sign(s.key.private, text), nil }

// noteVerifier makes the library's verifier from the name and the public key.
func noteVerifier(name string, p PublicKey) (note.Verifier, error) {
	vkey, err := note.NewEd25519VerifierKey(name, p[:])
	if err != nil {
		return nil, err
	}
	return note.NewVerifier(vkey)
}

// signNote signs a text under the name that its first line begins with.
func (k Key) signNote(text string) ([]byte, error) {
	msg, err := k.sign(text)
	if err == nil && len(msg) > MaxNoteBytes {
		err = fmt.Errorf("a note has at most %d bytes", MaxNoteBytes)
	}
	return msg, err
}

// sign signs a note of any length.
func (k Key) sign(text string) ([]byte, error) {
	if k.private == nil {
		return nil, errors.New("there is no key")
	}
	name := firstWord(text)
	// An origin begins with "backleaf/", a record with "{": here is where one cannot be signed as the other.
	if !validOrigin(name) || !validNoteText(text) {
		return nil, errors.New("the text is not that of a note")
	}
	verifier, err := noteVerifier(name, k.Public())
	if err != nil {
		return nil, err
	}
	return note.Sign(&note.Note{Text: text}, noteSigner{verifier, k})
}

// openNote returns the text of a note that the key signed under the name its first line begins with.
func openNote(msg []byte, p PublicKey) (string, error) {
	text, err := unsignedText(msg)
	if err != nil {
		return "", err
	}
	name := firstWord(text)
	if !validOrigin(name) {
		return "", errNote
	}
	return text, checkNote(msg, text, name, p)
}

// checkNote verifies the one signature and refuses a second spelling of it.
func checkNote(msg []byte, text, name string, p PublicKey) error {
	verifier, err := noteVerifier(name, p)
	if err != nil {
		return errNote
	}
	opened, err := note.Open(msg, note.VerifierList(verifier))
	var unverified *note.UnverifiedNoteError
	var invalid *note.InvalidSignatureError
	switch {
	case errors.As(err, &unverified):
		return ErrOtherKey
	case errors.As(err, &invalid):
		return ErrSignature
	case err != nil || len(opened.Sigs) != 1:
		return errNote
	}
	raw, err := base64.StdEncoding.Strict().DecodeString(opened.Sigs[0].Base64)
	if err != nil || len(raw) != 4+SignatureSize {
		return errNote
	}
	if opened.Text != text || string(msg) != text+"\n— "+name+" "+opened.Sigs[0].Base64+"\n" {
		return errNote
	}
	return nil
}

// unsignedText returns the part of a note before its blank line. Nothing vouches for it yet.
func unsignedText(msg []byte) (string, error) {
	if len(msg) > MaxNoteBytes {
		return "", fmt.Errorf("a note has at most %d bytes", MaxNoteBytes)
	}
	text, _, ok := strings.Cut(string(msg), "\n\n")
	text += "\n"
	if !ok || !validNoteText(text) {
		return "", errNote
	}
	return text, nil
}

// validNoteText reports whether a text can be signed as a note: UTF-8 lines, none empty, no control characters.
func validNoteText(text string) bool {
	if !utf8.ValidString(text) || strings.HasPrefix(text, "\n") || !strings.HasSuffix(text, "\n") ||
		strings.Contains(text, "\n\n") {
		return false
	}
	return strings.IndexFunc(text, func(r rune) bool { return r != '\n' && unicode.IsControl(r) }) < 0
}

// firstWord returns the first line up to its first space.
func firstWord(text string) string {
	line, _, _ := strings.Cut(text, "\n")
	word, _, _ := strings.Cut(line, " ")
	return word
}

// FromPaper makes the text read from a QR symbol or typed from paper into the bytes of a note: carriage returns and outer blank lines go, and
// the text ends with one newline. Nothing else is mended.
func FromPaper(text []byte) []byte {
	s := strings.ReplaceAll(string(text), "\r\n", "\n")
	return []byte(strings.Trim(s, "\n \t\ufeff") + "\n")
}
