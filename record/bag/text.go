package bag

import (
	"bufio"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"
)

// maxLineBytes bounds a line of a list: a digest, a path or address, spaces.
const maxLineBytes = 16 << 10

// eachLine calls do with every line of r. Tag files may end their lines with
// LF, CR or CR LF (RFC 8493 section 2.1.1).
func eachLine(r io.Reader, do func(number int, line string)) error {
	lines := bufio.NewScanner(r)
	lines.Buffer(nil, maxLineBytes)
	lines.Split(nextLine)
	number := 0
	for lines.Scan() {
		if number++; number > maxFiles {
			return fmt.Errorf("has more than %d lines, and no more was read", maxFiles)
		}
		do(number, lines.Text())
	}
	if errors.Is(lines.Err(), bufio.ErrTooLong) {
		return fmt.Errorf("line %d: is longer than %d KB, and no more was read", number+1, maxLineBytes>>10)
	}
	return lines.Err()
}

func nextLine(data []byte, atEnd bool) (advance int, line []byte, err error) {
	for i, c := range data {
		switch {
		case c == '\n':
			return i + 1, data[:i], nil
		case c == '\r' && i+1 < len(data) && data[i+1] == '\n':
			return i + 2, data[:i], nil
		case c == '\r' && (i+1 < len(data) || atEnd):
			return i + 1, data[:i], nil
		}
	}
	if atEnd && len(data) > 0 {
		return len(data), data, nil
	}
	return 0, nil, nil
}

var newlines = strings.NewReplacer("\r\n", "\n", "\r", "\n")

// lines splits a text that is small.
func lines(text string) []string {
	text = strings.TrimSuffix(newlines.Replace(text), "\n")
	if text == "" {
		return nil
	}
	return strings.Split(text, "\n")
}

// manifest is path to lower-case hexadecimal digest.
type manifest map[string]string

func (m manifest) String() string {
	var b strings.Builder
	for _, p := range slices.Sorted(maps.Keys(m)) {
		b.WriteString(m[p] + "  " + encodePath.Replace(p) + "\n")
	}
	return b.String()
}

// readManifest reads all lines it can, hands each to entry, and reports those
// it cannot read and those that entry refuses. digits is the length of a digest
// in hexadecimal.
func readManifest(r io.Reader, digits int, entry func(path, digest string) error, bad func(error)) {
	err := eachLine(r, func(number int, line string) {
		p, digest, err := parseManifestLine(line, digits)
		if err == nil {
			err = entry(p, digest)
		}
		if err != nil {
			bad(fmt.Errorf("line %d: %w", number, err))
		}
	})
	if err != nil {
		bad(err)
	}
}

// parseManifestLine gives the digest as its bytes.
func parseManifestLine(line string, digits int) (p, digest string, err error) {
	end := strings.IndexAny(line, " \t")
	if end < 0 {
		return "", "", errors.New("is not a checksum, spaces and a path")
	}
	sum, err := hex.DecodeString(line[:end])
	if err != nil || end != digits {
		return "", "", fmt.Errorf("checksum is not %d hexadecimal digits", digits)
	}
	p = strings.TrimLeft(line[end:], " \t")
	// The checksum tools mark binary mode with a star before the path.
	if rest, ok := strings.CutPrefix(p, "*"+payloadDir); ok {
		p = payloadDir + rest
	}
	if p, err = decodePath(strings.TrimPrefix(p, "./")); err != nil {
		return "", "", err
	}
	if err := checkRead(p); err != nil {
		return "", "", fmt.Errorf("%w: %q", err, p)
	}
	return p, string(sum), nil
}

// parseDeclaration checks bagit.txt: two lines, nothing else, no white space
// but the one after the colon (RFC 8493 section 2.1.1).
func parseDeclaration(text string) error {
	l := lines(text)
	if len(l) != 2 {
		return errors.New("does not hold exactly two lines")
	}
	version, ok := strings.CutPrefix(l[0], "BagIt-Version: ")
	if !ok {
		return errors.New("does not begin with BagIt-Version")
	}
	if version != "1.0" {
		return fmt.Errorf("is of version %q, only 1.0 is known here", version)
	}
	encoding, ok := strings.CutPrefix(l[1], "Tag-File-Character-Encoding: ")
	if !ok {
		return errors.New("does not name the Tag-File-Character-Encoding")
	}
	if encoding != "UTF-8" {
		return fmt.Errorf("names the encoding %q, only UTF-8 is known here", encoding)
	}
	return nil
}

// parseInfo reads bag-info.txt: label, colon, one space or tab, value; lines
// that begin with white space continue the one before (RFC 8493 section 2.2.2).
func parseInfo(text string) ([]Field, []error) {
	if !utf8.ValidString(text) {
		return nil, []error{errors.New("is not UTF-8")}
	}
	var fields []Field
	var errs []error
	var parts []string // of the last value; joined at once, a hostile file may hold many
	finish := func() {
		if len(fields) > 0 {
			fields[len(fields)-1].Value = strings.Trim(strings.Join(parts, " "), " \t")
		}
	}
	for i, line := range lines(text) {
		if strings.HasPrefix(line, " ") || strings.HasPrefix(line, "\t") {
			if len(fields) == 0 {
				errs = append(errs, fmt.Errorf("line %d: continues nothing", i+1))
			}
			parts = append(parts, strings.Trim(line, " \t"))
			continue
		}
		label, rest, ok := strings.Cut(line, ":")
		if !ok || label == "" || strings.TrimRight(label, " \t") != label || rest == "" || rest[0] != ' ' && rest[0] != '\t' {
			errs = append(errs, fmt.Errorf("line %d: is not a label, a colon, a space and a value", i+1))
			continue
		}
		finish()
		fields, parts = append(fields, Field{Label: label}), []string{strings.Trim(rest, " \t")}
	}
	finish()
	return fields, errs
}

func formatInfo(fields []Field) string {
	var b strings.Builder
	for _, f := range fields {
		b.WriteString(f.Label + ": " + f.Value + "\n")
	}
	return b.String()
}

// readFetch reads fetch.txt: URL, length or "-", path (RFC 8493 section 2.2.3).
// Only the paths matter here, since nothing is fetched.
func readFetch(r io.Reader, entry func(path string), bad func(error)) {
	err := eachLine(r, func(number int, line string) {
		p, err := parseFetchLine(line)
		if err != nil {
			bad(fmt.Errorf("line %d: %w", number, err))
			return
		}
		entry(p)
	})
	if err != nil {
		bad(err)
	}
}

func parseFetchLine(line string) (string, error) {
	f := strings.Fields(line)
	if len(f) < 3 {
		return "", errors.New("is not a URL, a length and a path")
	}
	_, rest, _ := strings.Cut(line, f[0])
	_, rest, _ = strings.Cut(rest, f[1])
	p, err := decodePath(strings.TrimLeft(rest, " \t"))
	if err != nil {
		return "", err
	}
	return p, checkRead(p)
}
