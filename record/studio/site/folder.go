package site

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync/atomic"

	"backleaf/certificate/page"
	"backleaf/record"
	"backleaf/record/pattern"
	"backleaf/record/safefile"
	"backleaf/record/seal"
)

// Names in the folder of a site.
const (
	assets   = page.Assets
	index    = "index.html"
	notFound = "404.html"
	status   = "status"
)

// maxPage bounds a page that is read back.
const maxPage = 64 << 20

// folder is the site as it stands.
type folder struct {
	dir     string
	assets  map[string]bool
	scratch string // beside the site's files, for those that are not yet whole
	begun   atomic.Int64
}

func newFolder(dir string) *folder { return &folder{dir: dir, assets: map[string]bool{}} }

func (f *folder) path(name string) string { return filepath.Join(f.dir, filepath.FromSlash(name)) }

// mark is what the last line of a page says: what it was drawn from, the record
// that it carries, and the digest of all that stands above.
type mark struct {
	From, Record seal.Digest
	page         []byte
}

var markLine = pattern.Of(`^<!-- backleaf ([0-9a-f]{64}) ([0-9a-f]{64}) ([0-9a-f]{64}) -->$`)

// marked adds the last line.
func marked(page []byte, from, record seal.Digest) []byte {
	page = append(bytes.TrimRight(page, "\n"), '\n')
	return append(page, "<!-- backleaf "+from.String()+" "+record.String()+" "+seal.DigestOf(page).String()+" -->"...)
}

// mark reads a page of ours; not ok if there is none, or if it was changed.
func (f *folder) mark(name string) (mark, bool) {
	data, err := safefile.Read(f.path(name), maxPage)
	if err != nil {
		return mark{}, false
	}
	at := bytes.LastIndexByte(data, '\n') + 1
	m := markLine().FindSubmatch(data[at:])
	if m == nil || seal.DigestOf(data[:at]).String() != string(m[3]) {
		return mark{}, false
	}
	from, _ := seal.ParseDigest(string(m[1]))
	record, _ := seal.ParseDigest(string(m[2]))
	return mark{from, record, data}, true
}

// readAssets lists the assets that are there.
func (f *folder) readAssets() error {
	names, err := os.ReadDir(f.path(assets))
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	for _, n := range names {
		if assetName().MatchString(n.Name()) {
			f.assets[n.Name()] = true
		}
	}
	return err
}

var assetName = pattern.Of(`^[0-9a-f]{64}\.[a-z]+$`)

// named lists the assets that a page names.
func named(page []byte) (names []string) {
	for {
		_, rest, ok := bytes.Cut(page, []byte(assets+"/"))
		if !ok {
			return names
		}
		end := bytes.IndexAny(rest, "\" ,")
		if end > 64 && assetName().Match(rest[:end]) {
			names = append(names, string(rest[:end]))
		}
		page = rest
	}
}

// others lists the folders that hold a page of ours, but for those of some names.
func (f *folder) others(known map[string]bool) (names []string) {
	all, _ := os.ReadDir(f.dir) // not there: nothing in it
	for _, n := range all {
		if !n.IsDir() || known[n.Name()] || n.Name() != strings.ToUpper(n.Name()) {
			continue
		}
		if _, err := record.ParseNumber(n.Name(), ""); err != nil && !bareName().MatchString(n.Name()) {
			continue
		}
		if _, ok := f.mark(n.Name() + "/" + index); ok {
			names = append(names, n.Name())
		}
	}
	return names
}

// bareName is a number without hyphens, whatever ARK prefix it is checked with.
var bareName = pattern.Of(`^[B-Z0-9]{8,15}$`)

// holds reports that a file is there, byte for byte.
func (f *folder) holds(name string, data []byte) bool {
	old, err := safefile.Read(f.path(name), maxPage)
	return err == nil && bytes.Equal(old, data)
}

// put writes a file unless it is there.
func (f *folder) put(name string, data []byte) (written bool, err error) {
	if f.holds(name, data) {
		return false, nil
	}
	path := f.path(name)
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return false, err
	}
	if info, err := os.Lstat(path); err == nil && !info.Mode().IsRegular() {
		return false, fmt.Errorf("cannot write %s: it is there already and is no regular file", path)
	}
	unfinished := filepath.Join(f.scratch, strconv.FormatInt(f.begun.Add(1), 10))
	to, err := os.OpenFile(unfinished, os.O_CREATE|os.O_TRUNC|os.O_WRONLY, 0o644)
	if err != nil {
		return false, err
	}
	_, err = to.Write(data)
	if err = errors.Join(err, to.Sync(), to.Close()); err != nil {
		return false, err
	}
	return true, os.Rename(unfinished, path)
}
