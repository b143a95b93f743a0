package seal

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"strings"
)

// A Digest is a SHA-256 value: of a record's bytes, or of a public key.
type Digest [sha256.Size]byte

// DigestOf returns the SHA-256 of the given bytes, the number that sha256sum prints.
func DigestOf(data []byte) Digest { return sha256.Sum256(data) }

// String returns 64 lower-case hexadecimal digits.
func (d Digest) String() string { return hex.EncodeToString(d[:]) }

// Groups returns the digits in sixteen groups of four, for print.
func (d Digest) Groups() string {
	s := d.String()
	groups := make([]string, 0, len(s)/4)
	for ; s != ""; s = s[4:] {
		groups = append(groups, s[:4])
	}
	return strings.Join(groups, " ")
}

// Short returns the first four groups (64 bits): enough to tell keys apart by eye, not enough to prove one.
func (d Digest) Short() string { return d.Groups()[:19] }

// ParseDigest reads what String writes, and no other spelling.
func ParseDigest(s string) (Digest, error) {
	var d Digest
	raw, err := hex.DecodeString(s)
	if err != nil || len(raw) != len(d) || s != strings.ToLower(s) {
		return Digest{}, errors.New("a SHA-256 value must be 64 lower-case hexadecimal digits")
	}
	copy(d[:], raw)
	return d, nil
}
