package seal

import (
	"encoding/base32"
	"errors"
	"fmt"
	"strings"
)

// A recovery text is the 32-byte seed of a key for a sheet of paper: base32 (RFC 4648 section 6, A to Z and 2 to 7) without padding, 52
// characters in thirteen groups of four, and a fourteenth group of four that checks them, the first 20 bits of the seed's SHA-256 in the same
// alphabet:
//
//	FF2M EFMZ OZRW 2GQ7 …
//
// The digits 0, 1 and 8 are not in the alphabet, so they can be read as O, I and B. With openssl alone, the thirteen groups give the private
// key back: testdata/recover-key.sh.

const (
	recoveryGroups = 14
	groupSize      = 4
)

var recoveryBase32 = base32.StdEncoding.WithPadding(base32.NoPadding)

// RecoveryText returns the key's secret in fourteen groups. Whoever reads it can sign as the studio.
func (k Key) RecoveryText() string {
	seed := k.Seed()
	s := recoveryBase32.EncodeToString(seed) + recoveryCheck(seed)
	groups := make([]string, recoveryGroups)
	for i := range groups {
		groups[i] = s[i*groupSize : (i+1)*groupSize]
	}
	return strings.Join(groups, " ")
}

func recoveryCheck(seed []byte) string {
	sum := DigestOf(seed)
	return recoveryBase32.EncodeToString(sum[:])[:groupSize]
}

// KeyFromRecovery reads what RecoveryText writes, as a person types it: case, spaces, line ends and hyphens do not matter, and 0, 1, 8 count as
// O, I, B. The error says which group holds a wrong character, or that the check failed.
func KeyFromRecovery(text string) (Key, error) {
	if len(text) > maxPEMBytes {
		return Key{}, errors.New("cannot read the recovery text: it is far too long")
	}
	s := strings.NewReplacer(" ", "", "\t", "", "\n", "", "\r", "", "-", "", "0", "O", "1", "I", "8", "B").Replace(strings.ToUpper(text))
	for i, r := range s {
		if !strings.ContainsRune("ABCDEFGHIJKLMNOPQRSTUVWXYZ234567", r) {
			return Key{}, fmt.Errorf("cannot read the recovery text: %q in group %d is not a letter or a digit from 2 to 7", r, i/groupSize+1)
		}
	}
	if len(s) != recoveryGroups*groupSize {
		return Key{}, fmt.Errorf("cannot read the recovery text: the sheet has %d groups of %d characters, and %s were typed",
			recoveryGroups, groupSize, groups(len(s)))
	}
	body, check := s[:len(s)-groupSize], s[len(s)-groupSize:]
	seed, err := recoveryBase32.DecodeString(body)
	// The last character of the body carries four bits more than the seed; they must be zero.
	if err != nil || recoveryBase32.EncodeToString(seed) != body || recoveryCheck(seed) != check {
		return Key{}, errors.New("cannot read the recovery text: the check failed, so at least one character is wrong")
	}
	return KeyFromSeed(seed)
}

// groups counts characters as groups, where they are whole ones.
func groups(characters int) string {
	if characters%groupSize == 0 {
		return fmt.Sprintf("%d groups", characters/groupSize)
	}
	return fmt.Sprintf("%d characters", characters)
}
