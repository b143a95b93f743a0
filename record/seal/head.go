package seal

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"golang.org/x/mod/sumdb/tlog"
)

// A Head states the size and root of a journal at one moment, in the form of a C2SP tlog-checkpoint:
//
//	backleaf/KB
//	142
//	CsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=
//
//	— backleaf/KB Az3grlgtzPICa5OS8npVmf1Myq/5…
//
// The root is base64. Further lines may follow it; this program writes none.
type Head struct {
	Origin     string // see Origin
	Size       int64  // number of entries
	Root       Hash
	Extensions []string // further lines, none empty
}

var errHead = errors.New("not a head: journal name, size and root, one a line")

// Sign returns the head as a note signed with the key.
func (h Head) Sign(k Key) ([]byte, error) {
	text := h.text()
	if again, err := parseHead(text); err != nil || again.text() != text {
		return nil, fmt.Errorf("cannot sign the head: %w", errHead)
	}
	msg, err := k.signNote(text)
	if err != nil {
		return nil, fmt.Errorf("cannot sign the head: %w", err)
	}
	return msg, nil
}

// OpenHead reads a head that the key signed. Errors: ErrOtherKey, ErrSignature, or what is wrong with its form.
func OpenHead(msg []byte, p PublicKey) (Head, error) {
	text, err := openNote(msg, p)
	if err != nil {
		return Head{}, err
	}
	return parseHead(text)
}

// UnverifiedHead reads a head without asking who signed it: nothing vouches for what it says.
func UnverifiedHead(msg []byte) (Head, error) {
	text, err := unsignedText(msg)
	if err != nil {
		return Head{}, err
	}
	return parseHead(text)
}

func (h Head) text() string {
	lines := append([]string{h.Origin, strconv.FormatInt(h.Size, 10), h.Root.String()}, h.Extensions...)
	return strings.Join(lines, "\n") + "\n"
}

// parseHead reads the text of a head in its one spelling.
func parseHead(text string) (Head, error) {
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	if len(lines) < 3 || !validOrigin(lines[0]) {
		return Head{}, errHead
	}
	size, err := strconv.ParseInt(lines[1], 10, 64)
	if err != nil || size < 0 || size > MaxSize {
		return Head{}, errHead
	}
	root, err := tlog.ParseHash(lines[2])
	if err != nil || (size == 0 && root != emptyRoot) {
		return Head{}, errHead
	}
	h := Head{Origin: lines[0], Size: size, Root: root}
	for _, line := range lines[3:] {
		if line == "" {
			return Head{}, errHead
		}
		h.Extensions = append(h.Extensions, line)
	}
	if h.text() != text {
		return Head{}, errHead
	}
	return h, nil
}

// CheckPrefix returns nil if path proves that the journal of the older head is the beginning of the journal of h: nothing in it was changed or
// removed since. The path is that of ProvePrefix.
func (h Head) CheckPrefix(older Head, path []Hash) error {
	if h.Origin != older.Origin {
		return fmt.Errorf("the heads are of two journals: %s and %s", older.Origin, h.Origin)
	}
	if older.Size > h.Size {
		return fmt.Errorf("the older head has more entries (%d) than the newer (%d)", older.Size, h.Size)
	}
	return checkPrefix(path, h.Size, h.Root, older.Size, older.Root)
}
