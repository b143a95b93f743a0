package record

import (
	"fmt"
	"io"
)

// NewJournal makes the name of a new journal out of 26 characters of the
// betanumeric alphabet (126 bits), so that no two studios share one. It stands
// in the first entry, and in every record, head and proof.
func NewJournal(random io.Reader) (string, error) {
	name := make([]byte, 26)
	for i := 0; i < len(name); {
		var b [1]byte
		if _, err := io.ReadFull(random, b[:]); err != nil {
			return "", fmt.Errorf("cannot name the journal: %w", err)
		}
		if n := int(b[0] & 31); n < len(betanumeric) { // every character alike often
			name[i] = betanumeric[n]
			i++
		}
	}
	return string(name), nil
}
