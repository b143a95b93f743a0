package record

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

// Number is the number of a panel, for example "KB26-0142-1": the studio's
// mark, two figures of the year, a serial of at least four figures and a
// check character.
//
// The characters are the ARK betanumeric set. The check character is that of
// the NOID scheme over what stands before it, hyphens and case ignored; a
// studio with an ARK prefix puts "NAAN/" in front of the check zone.
type Number string

// betanumeric is the alphabet of the NOID check character: digits and
// consonants without l, so that no number spells a word or looks like another.
const betanumeric = "0123456789bcdfghjkmnpqrstvwxz"

// checkCharacter returns the NOID check character of a zone: the sum of each
// character's place (from 1) times its ordinal, modulo 29. Characters outside
// the alphabet, such as "/", count nothing.
func checkCharacter(zone string) byte {
	sum := 0
	for i := 0; i < len(zone); i++ {
		if o := strings.IndexByte(betanumeric, zone[i]); o > 0 {
			sum = (sum + (i+1)*o) % 29
		}
	}
	return betanumeric[sum%29]
}

// hyphens are the hyphen and what text programs put in its place.
var hyphens = strings.NewReplacer("-", "", "\u2010", "", "\u2011", "", "\u2012", "", "\u2013", "", "\u2212", "")

// bare returns what is typed in capitals, without hyphens.
func bare(s string) string {
	return strings.Map(func(r rune) rune {
		if 'a' <= r && r <= 'z' {
			return r - 'a' + 'A'
		}
		return r
	}, hyphens.Replace(strings.TrimSpace(s)))
}

// isMark reports one to four capitals of the alphabet.
func isMark(s string) bool { return len(s) >= 1 && len(s) <= 4 && consists(s, capitals[10:]) }

const capitals = "0123456789BCDFGHJKMNPQRSTVWXZ"

func consists(s, of string) bool {
	for i := 0; i < len(s); i++ {
		if strings.IndexByte(of, s[i]) < 0 {
			return false
		}
	}
	return true
}

// scan takes a bare number apart.
func scan(s string) (mark, year, serial, check string, ok bool) {
	m := strings.IndexAny(s, "0123456789")
	if m < 0 || len(s) < m+7 || len(s) > m+10 {
		return "", "", "", "", false
	}
	last := len(s) - 1
	mark, year, serial, check = s[:m], s[m:m+2], s[m+2:last], s[last:]
	ok = isMark(mark) && consists(year+serial, capitals[:10]) && consists(check, capitals) &&
		strings.Trim(serial, "0") != "" && (len(serial) == 4 || serial[0] != '0')
	return mark, year, serial, check, ok
}

// NewNumber makes the number of a panel. The mark is one to four capitals of
// the betanumeric set; year is 0 to 99 or a full year; serial 1 to 9999999.
// naan is the studio's ARK prefix or empty.
func NewNumber(mark string, year, serial int, naan string) (Number, error) {
	if err := validMark(mark); err != nil {
		return "", err
	}
	if serial < 1 || serial > 9999999 {
		return "", fmt.Errorf("serial %d is outside 1 to 9999999", serial)
	}
	head := fmt.Sprintf("%s%02d-%04d", mark, ((year%100)+100)%100, serial)
	return Number(head + "-" + strings.ToUpper(string(checkCharacter(zone(head, naan))))), nil
}

func zone(head, naan string) string {
	z := strings.ToLower(strings.ReplaceAll(head, "-", ""))
	if naan != "" {
		z = naan + "/" + z
	}
	return z
}

// validMark says why a studio mark cannot be used, or nil.
func validMark(mark string) error {
	if !isMark(mark) {
		return fmt.Errorf("mark %q: expected one to four capital consonants without L and Y, for example KB", clip(mark))
	}
	return nil
}

// ParseNumber reads a whole number in any case, with or without hyphens, and
// checks its check character.
func ParseNumber(s, naan string) (Number, error) {
	mark, year, serial, check, ok := scan(bare(s))
	if !ok {
		return "", fmt.Errorf("%q is not a panel number: expected something like KB26-0142-1", clip(s))
	}
	head := mark + year + "-" + serial
	if want := strings.ToUpper(string(checkCharacter(zone(head, naan)))); want != check {
		return "", fmt.Errorf("the last character of %q does not fit the number: did you mean %s-%s?", clip(s), head, want)
	}
	return Number(head + "-" + check), nil
}

// WellFormed reports that n has the shape of a number in its one spelling.
func (n Number) WellFormed() bool {
	mark, year, serial, check, ok := scan(n.Bare())
	return ok && string(n) == mark+year+"-"+serial+"-"+check
}

// Year returns the two figures of the year, and Serial the running number.
func (n Number) Year() int { y, _ := n.parts(); return y }

// Serial returns the running number within the year.
func (n Number) Serial() int { _, s := n.parts(); return s }

func (n Number) parts() (year, serial int) {
	if _, y, s, _, ok := scan(n.Bare()); ok {
		year, _ = strconv.Atoi(y)
		serial, _ = strconv.Atoi(s)
	}
	return year, serial
}

// Bare returns the number without hyphens, as it stands in a link.
func (n Number) Bare() string { return strings.ReplaceAll(string(n), "-", "") }

// UnmarshalText accepts only the one spelling of a number. The check
// character is tested where the studio's ARK prefix is known: in [Fold].
func (n *Number) UnmarshalText(b []byte) error {
	if !Number(b).WellFormed() {
		return fmt.Errorf("%q is not a panel number: expected something like KB26-0142-1", clip(string(b)))
	}
	*n = Number(b)
	return nil
}

// MarshalText returns the number.
func (n Number) MarshalText() ([]byte, error) { return []byte(n), nil }

func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}

// UnmarshalJSONFrom reads what stands in an entry; see [Number.Fault].
func (n *Number) UnmarshalJSONFrom(d *jsontext.Decoder) error {
	s, err := textFrom(d)
	*n = Number(s)
	return err
}

// Fault says why n is no number in its one spelling; nil if it is.
func (n Number) Fault() error { return new(Number).UnmarshalText([]byte(n)) }
