package bag

import (
	"errors"
	"fmt"
	"path"
	"strings"
	"unicode"
	"unicode/utf8"
)

// maxPathBytes is what most systems take.
const maxPathBytes = 4096

// checkRead refuses paths that could lead out of a bag (RFC 8493 section 5.1).
func checkRead(p string) error {
	switch {
	case len(p) > maxPathBytes:
		return fmt.Errorf("path is longer than %d bytes", maxPathBytes)
	case !utf8.ValidString(p):
		return errors.New("path is not UTF-8")
	case strings.ContainsRune(p, 0):
		return errors.New("path holds a zero byte")
	case strings.HasPrefix(p, "/") || strings.HasPrefix(p, "~") || strings.Contains(p, `\`) || len(p) > 1 && p[1] == ':':
		return errors.New("path is not relative with forward slashes")
	case p == "" || p == "." || path.Clean(p) != p || p == ".." || strings.HasPrefix(p, "../"):
		return errors.New("path has empty, . or .. parts")
	}
	return nil
}

// checkWrite refuses, beyond that, what some file system could not hold: the
// names Windows reserves, control characters, and letters spelled with
// separate accents, which some systems silently join (RFC 8493 sections 5.2
// and 6.1; write them composed, Unicode form NFC).
func checkWrite(p string) error {
	if err := checkRead(p); err != nil {
		return err
	}
	for _, r := range p {
		switch {
		case strings.ContainsRune(`<>:"|?*`, r) || !unicode.IsPrint(r):
			return fmt.Errorf("path holds %q, which not every file system takes", r)
		case r >= 0x300 && r <= 0x36f:
			return errors.New("path holds a separate accent, write the letter composed (NFC)")
		}
	}
	for part := range strings.SplitSeq(p, "/") {
		switch {
		case len(part) > 255:
			return errors.New("path has a part longer than 255 bytes")
		case strings.HasSuffix(part, ".") || strings.HasSuffix(part, " ") || strings.HasPrefix(part, " "):
			return errors.New("path has a part that begins with a space or ends with a space or a dot")
		case reserved(part):
			return fmt.Errorf("path has the part %s, which Windows reserves", part)
		}
	}
	return nil
}

func reserved(part string) bool {
	stem, _, _ := strings.Cut(strings.ToUpper(part), ".")
	stem = strings.TrimRight(stem, " ")
	switch stem {
	case "CON", "PRN", "AUX", "NUL", "CONIN$", "CONOUT$":
		return true
	}
	r := []rune(stem)
	return len(r) == 4 && (strings.HasPrefix(stem, "COM") || strings.HasPrefix(stem, "LPT")) && strings.ContainsRune("0123456789¹²³", r[3])
}

// fold gives equal text for paths that a file system without regard to case
// would confuse.
func fold(p string) string { return strings.ToLower(strings.ToUpper(p)) }

// names refuses two paths that would be the same file, or a file and its own folder.
type names map[string]bool // folded path: whether it is a file

func (n names) add(p string) error {
	f := fold(p)
	if _, taken := n[f]; taken {
		return errors.New("another file has this path, or one that differs only in case")
	}
	n[f] = true
	for dir := path.Dir(f); dir != "."; dir = path.Dir(dir) {
		if n[dir] {
			return fmt.Errorf("its folder %s is also a file", dir)
		}
		n[dir] = false
	}
	return nil
}

// In a manifest exactly these three are percent-encoded (RFC 8493 section 2.1.3).
var encodePath = strings.NewReplacer("%", "%25", "\n", "%0A", "\r", "%0D")

func decodePath(s string) (string, error) {
	var b strings.Builder
	for {
		before, after, found := strings.Cut(s, "%")
		b.WriteString(before)
		if !found {
			return b.String(), nil
		}
		if len(after) < 2 {
			return "", errors.New("percent sign is not written %25")
		}
		switch strings.ToUpper(after[:2]) {
		case "25":
			b.WriteByte('%')
		case "0A":
			b.WriteByte('\n')
		case "0D":
			b.WriteByte('\r')
		default:
			return "", errors.New("percent sign is not written %25")
		}
		s = after[2:]
	}
}
