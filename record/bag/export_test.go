package bag

import (
	"encoding/hex"
	"errors"
	"strings"
)

// What the fuzz targets reach for.

func ParseManifest(text string, digits int) (m map[string]string, errs []error) {
	m = map[string]string{}
	readManifest(strings.NewReader(text), digits, func(p, digest string) error {
		if _, twice := m[p]; twice {
			return errors.New("twice")
		}
		m[p] = hex.EncodeToString([]byte(digest))
		return nil
	}, func(err error) { errs = append(errs, err) })
	return m, errs
}

func FormatManifest(m map[string]string) string { return manifest(m).String() }

func ParseFetch(text string) (paths []string) {
	readFetch(strings.NewReader(text), func(p string) { paths = append(paths, p) }, func(error) {})
	return paths
}

var (
	ParseInfo        = parseInfo
	FormatInfo       = formatInfo
	ParseDeclaration = parseDeclaration
)
