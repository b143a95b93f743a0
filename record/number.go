package record

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
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

// CheckCharacter returns the NOID check character of a zone: the sum of each
// character's place (from 1) times its ordinal, modulo 29. Characters outside
// the alphabet, such as "/", count nothing.
func CheckCharacter(zone string) byte {
	sum := 0
	for i := 0; i < len(zone); i++ {
		if o := strings.IndexByte(betanumeric, zone[i]); o > 0 {
			sum = (sum + (i+1)*o) % 29
		}
	}
	return betanumeric[sum%29]
}

var numberParts = regexp.MustCompile(`^([BCDFGHJKMNPQRSTVWXZ]{1,4})([0-9]{2})-?((?:0[0-9]{3}|[1-9][0-9]{3,6}))-?([0-9BCDFGHJKMNPQRSTVWXZ])$`)

// NewNumber makes the number of a panel. The mark is one to four capitals of
// the betanumeric set; year is 0 to 99 or a full year; serial 1 to 9999999.
// naan is the studio's ARK prefix or empty.
func NewNumber(mark string, year, serial int, naan string) (Number, error) {
	if err := ValidMark(mark); err != nil {
		return "", err
	}
	if serial < 1 || serial > 9999999 {
		return "", fmt.Errorf("serial %d is outside 1 to 9999999", serial)
	}
	head := fmt.Sprintf("%s%02d-%04d", mark, ((year%100)+100)%100, serial)
	return Number(head + "-" + strings.ToUpper(string(CheckCharacter(zone(head, naan))))), nil
}

func zone(head, naan string) string {
	z := strings.ToLower(strings.ReplaceAll(head, "-", ""))
	if naan != "" {
		z = naan + "/" + z
	}
	return z
}

// ValidMark says why a studio mark cannot be used, or nil.
func ValidMark(mark string) error {
	if !regexp.MustCompile(`^[BCDFGHJKMNPQRSTVWXZ]{1,4}$`).MatchString(mark) {
		return fmt.Errorf("mark %q: expected one to four capital consonants without L and Y, for example KB", mark)
	}
	return nil
}

// ParseNumber reads a whole number in any case, with or without hyphens, and
// checks its check character.
func ParseNumber(s, naan string) (Number, error) {
	m := numberParts.FindStringSubmatch(strings.ToUpper(strings.TrimSpace(s)))
	if m == nil {
		return "", fmt.Errorf("%q is not a panel number: expected something like KB26-0142-1", clip(s))
	}
	head := m[1] + m[2] + "-" + m[3]
	if want := strings.ToUpper(string(CheckCharacter(zone(head, naan)))); want != m[4] {
		return "", fmt.Errorf("%q has a wrong check character", clip(s))
	}
	return Number(head + "-" + m[4]), nil
}

// WellFormed reports that n has the shape of a number in its one spelling.
func (n Number) WellFormed() bool {
	m := numberParts.FindStringSubmatch(string(n))
	return m != nil && string(n) == m[1]+m[2]+"-"+m[3]+"-"+m[4]
}

// Year returns the two figures of the year, and Serial the running number.
func (n Number) Year() int { y, _ := n.parts(); return y }

// Serial returns the running number within the year.
func (n Number) Serial() int { _, s := n.parts(); return s }

func (n Number) parts() (year, serial int) {
	if m := numberParts.FindStringSubmatch(string(n)); m != nil {
		year, _ = strconv.Atoi(m[2])
		serial, _ = strconv.Atoi(m[3])
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
