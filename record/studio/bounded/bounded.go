// Package bounded reads what somebody else made, up to a bound.
package bounded

import (
	"fmt"
	"io"
)

// Read reads all of r, and refuses more than most bytes.
func Read(r io.Reader, most int64) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, most+1))
	if err == nil && int64(len(data)) > most {
		err = fmt.Errorf("it is larger than %d MB", most>>20)
	}
	return data, err
}
