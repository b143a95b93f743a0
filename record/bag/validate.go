package bag

import (
	"encoding/hex"
	"errors"
	"fmt"
	"hash"
	"io"
	"io/fs"
	"maps"
	"os"
	"slices"
	"strconv"
	"strings"
)

// Problem is one thing that keeps a bag from being complete or valid.
type Problem struct {
	Path string // within the bag; text from outside, printed quoted if need be
	What string
}

func (p Problem) String() string {
	if q := strconv.Quote(p.Path); q != `"`+p.Path+`"` {
		return q + ": " + p.What
	}
	return p.Path + ": " + p.What
}

// Report says what was found. A bag is complete if every file that should be
// there is, and no other in data/; it is valid if moreover all checksums hold
// and nothing else is wrong (RFC 8493 section 3).
type Report struct {
	Complete, Valid bool
	Problems        []Problem
	Notes           []Problem // what a reader should know but breaks nothing
	Algorithms      []string  // of the payload manifests
	Files           int       // in data/
	Octets          int64     // in data/
	Info            []Field   // bag-info.txt
}

// Tag files are read into memory, so a stranger's may not be larger than this.
const (
	maxTextBytes     = 1 << 20
	maxManifestBytes = 64 << 20
)

// Validate reads the bag in the folder dir. The error is only for a folder that
// cannot be read at all; what is wrong with the bag is in the report.
func Validate(dir string) (Report, error) {
	root, err := os.OpenRoot(dir)
	if err != nil {
		return Report{}, fmt.Errorf("cannot read bag: %w", err)
	}
	defer root.Close()
	c := checker{root: root, complete: true, files: map[string]int64{}}
	if err := c.walk(); err != nil {
		return Report{}, fmt.Errorf("cannot read bag %s: %w", dir, err)
	}
	c.declaration()
	payload := c.manifests("manifest-")
	tags := c.manifests("tagmanifest-")
	if len(payload) == 0 {
		c.incomplete("manifest-*.txt", "there is no payload manifest")
	}
	c.fetch(payload)
	c.presence(payload, tags)
	c.info()
	c.checksums(payload, tags)
	c.report.Algorithms = slices.Sorted(maps.Keys(payload))
	slices.SortFunc(c.report.Problems, func(a, b Problem) int {
		return strings.Compare(a.Path+"\x00"+a.What, b.Path+"\x00"+b.What)
	})
	c.report.Complete = c.complete
	c.report.Valid = c.complete && len(c.report.Problems) == 0
	return c.report, nil
}

type checker struct {
	root     *os.Root
	files    map[string]int64 // every regular file and its size
	complete bool
	report   Report
}

func (c *checker) problem(path, format string, args ...any) {
	c.report.Problems = append(c.report.Problems, Problem{path, fmt.Sprintf(format, args...)})
}

func (c *checker) incomplete(path, format string, args ...any) {
	c.complete = false
	c.problem(path, format, args...)
}

// walk lists the regular files. Links, pipes and devices are reported and from
// then on not there: they are never opened.
func (c *checker) walk() error {
	hasData := false
	err := fs.WalkDir(c.root.FS(), ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			if p == "." {
				return err
			}
			c.incomplete(p, "cannot be read: %v", reason(err))
			return nil
		}
		if d.IsDir() {
			hasData = hasData || p == "data"
			return nil
		}
		info, err := d.Info()
		if err != nil {
			c.incomplete(p, "cannot be read: %v", reason(err))
			return nil
		}
		if !info.Mode().IsRegular() {
			c.incomplete(p, "is no regular file (%s) and was not read", kindOf(info.Mode()))
			return nil
		}
		c.files[p] = info.Size()
		if strings.HasPrefix(p, payloadDir) {
			c.report.Files++
			c.report.Octets += info.Size()
		}
		return nil
	})
	if err == nil && !hasData {
		c.incomplete("data", "the payload folder is missing")
	}
	return err
}

func kindOf(m fs.FileMode) string {
	switch {
	case m&fs.ModeSymlink != 0:
		return "a symbolic link"
	case m&fs.ModeNamedPipe != 0:
		return "a pipe"
	case m&fs.ModeSocket != 0:
		return "a socket"
	}
	return "a device"
}

// text reads a tag file that is known to be there.
func (c *checker) text(p string, limit int64) (string, bool) {
	f, err := c.root.Open(p)
	if err != nil {
		c.problem(p, "cannot be read: %v", reason(err))
		return "", false
	}
	defer f.Close()
	b, err := io.ReadAll(io.LimitReader(f, limit+1))
	switch {
	case err != nil:
		c.problem(p, "cannot be read: %v", reason(err))
	case int64(len(b)) > limit:
		c.problem(p, "is larger than %d MiB and was not read", limit>>20)
	default:
		return string(b), true
	}
	return "", false
}

func (c *checker) declaration() {
	if _, ok := c.files["bagit.txt"]; !ok {
		c.incomplete("bagit.txt", "is missing")
		return
	}
	if text, ok := c.text("bagit.txt", maxTextBytes); ok {
		if err := parseDeclaration(text); err != nil {
			c.problem("bagit.txt", "%v", err)
		}
	}
}

// manifests reads all manifests of one kind, by algorithm.
func (c *checker) manifests(prefix string) map[string]manifest {
	out := map[string]manifest{}
	for _, p := range slices.Sorted(maps.Keys(c.files)) {
		if !isManifest(p, prefix) {
			continue
		}
		algorithm := strings.TrimSuffix(strings.TrimPrefix(p, prefix), ".txt")
		newHash := algorithms[algorithm]
		if newHash == nil {
			c.problem(p, "uses a checksum that is not known here")
			continue
		}
		text, ok := c.text(p, maxManifestBytes)
		if !ok {
			continue
		}
		m, errs := parseManifest(text, 2*newHash().Size())
		for _, err := range errs {
			c.problem(p, "%v", err)
		}
		for _, listed := range slices.Sorted(maps.Keys(m)) {
			inData := strings.HasPrefix(listed, payloadDir)
			if inData != (prefix == "manifest-") || isManifest(listed, "tagmanifest-") {
				c.problem(p, "lists %q, which does not belong there", listed)
				delete(m, listed)
			}
		}
		out[algorithm] = m
	}
	return out
}

// fetch tells of files that the bag wants taken from the network; that is
// never done.
func (c *checker) fetch(payload map[string]manifest) {
	if _, ok := c.files["fetch.txt"]; !ok {
		return
	}
	text, ok := c.text("fetch.txt", maxManifestBytes)
	if !ok {
		return
	}
	paths, errs := parseFetch(text)
	for _, err := range errs {
		c.problem("fetch.txt", "%v", err)
	}
	for _, p := range paths {
		for algorithm, m := range payload {
			if _, ok := m[p]; !ok {
				c.problem("fetch.txt", "lists %q, which manifest-%s.txt does not", p, algorithm)
			}
		}
	}
	c.report.Notes = append(c.report.Notes, Problem{"fetch.txt", fmt.Sprintf("names %d files to be fetched; nothing was fetched", len(paths))})
}

// presence compares lists and files both ways. In version 1.0 every payload
// manifest lists every payload file.
func (c *checker) presence(payload, tags map[string]manifest) {
	for prefix, ms := range map[string]map[string]manifest{"manifest-": payload, "tagmanifest-": tags} {
		for algorithm, m := range ms {
			for p := range m {
				if _, ok := c.files[p]; !ok {
					c.incomplete(p, "is missing (listed in %s%s.txt)", prefix, algorithm)
				}
			}
		}
	}
	for p := range c.files {
		for algorithm, m := range payload {
			if _, ok := m[p]; strings.HasPrefix(p, payloadDir) && !ok {
				c.incomplete(p, "is not listed in manifest-%s.txt", algorithm)
			}
		}
	}
}

func (c *checker) info() {
	if _, ok := c.files["bag-info.txt"]; !ok {
		return
	}
	text, ok := c.text("bag-info.txt", maxTextBytes)
	if !ok {
		return
	}
	fields, errs := parseInfo(text)
	for _, err := range errs {
		c.problem("bag-info.txt", "%v", err)
	}
	c.report.Info = fields
	is := fmt.Sprintf("%d.%d", c.report.Octets, c.report.Files)
	seen := false
	for _, f := range fields {
		if !f.Is("Payload-Oxum") {
			continue
		}
		if seen {
			c.problem("bag-info.txt", "holds Payload-Oxum twice")
		}
		if seen = true; f.Value != is {
			c.problem("bag-info.txt", "Payload-Oxum is %q, but the payload is %s", f.Value, is)
		}
	}
}

// checksums reads each listed file once, for all its manifests.
func (c *checker) checksums(payload, tags map[string]manifest) {
	for _, p := range slices.Sorted(maps.Keys(c.files)) {
		ms := tags
		if strings.HasPrefix(p, payloadDir) {
			ms = payload
		}
		want := map[string]string{}
		for algorithm, m := range ms {
			if digest, ok := m[p]; ok {
				want[algorithm] = digest
			}
		}
		if len(want) > 0 {
			c.checksum(p, want)
		}
	}
}

func (c *checker) checksum(p string, want map[string]string) {
	f, err := c.root.Open(p)
	if err != nil {
		c.problem(p, "cannot be read: %v", reason(err))
		return
	}
	defer f.Close()
	sums := map[string]hash.Hash{}
	var to []io.Writer
	for algorithm := range want {
		sums[algorithm] = algorithms[algorithm]()
		to = append(to, sums[algorithm])
	}
	if _, err := io.Copy(io.MultiWriter(to...), f); err != nil {
		c.problem(p, "cannot be read: %v", reason(err))
		return
	}
	for _, algorithm := range slices.Sorted(maps.Keys(want)) {
		if hex.EncodeToString(sums[algorithm].Sum(nil)) != want[algorithm] {
			c.problem(p, "%s checksum differs", algorithm)
		}
	}
}

// reason leaves out the path, which comes from outside and is named already.
func reason(err error) error {
	if p, ok := errors.AsType[*fs.PathError](err); ok {
		return p.Err
	}
	return err
}
