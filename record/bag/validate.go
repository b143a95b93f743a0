package bag

import (
	"context"
	"errors"
	"fmt"
	"hash"
	"hash/maphash"
	"io"
	"maps"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/text/unicode/norm"

	"backleaf/record/safefile"
)

// Tag files are read into memory but for the lists, which are read line by
// line; a stranger's may not be larger than this.
const (
	maxTextBytes = 1 << 20
	maxListBytes = 256 << 20
)

// Validate reads the bag in the folder dir. The error is only for a folder that
// cannot be read at all; what is wrong with the bag is in the report.
//
// What it takes is bounded but for the time to read the listed files once: some
// 200 MB of memory, however many files the bag lists. A file that is larger than
// all are said to be is not read.
func Validate(ctx context.Context, dir string) (Report, error) {
	root, err := os.OpenRoot(dir)
	if err != nil {
		return Report{}, fmt.Errorf("cannot read bag: %w", err)
	}
	defer root.Close()
	c := checker{ctx: ctx, root: root, said: math.MaxInt64, complete: true, files: map[string]*file{}, left: maxFiles, wrong: map[string][2]string{}}
	if err := c.check(); err != nil {
		return Report{}, fmt.Errorf("cannot read bag %s: %w", dir, err)
	}
	return c.report, nil
}

// check goes from what costs little to what costs much: what is there, what the
// lists say of it, and last what the files hold.
func (c *checker) check() error {
	if err := c.walk(".", 0); err != nil {
		return err
	}
	if !c.hasData {
		c.incomplete("data", "the payload folder is missing")
	}
	c.declaration()
	for _, prefix := range []string{"manifest-", "tagmanifest-"} {
		if err := c.manifests(prefix); err != nil {
			return err
		}
	}
	if len(c.report.Algorithms) == 0 {
		c.incomplete("manifest-*.txt", "there is no payload manifest")
	}
	c.fetch()
	paths := slices.Sorted(maps.Keys(c.files))
	c.presence(paths)
	c.alike(paths)
	c.info()
	if err := c.checksums(paths); err != nil {
		return err
	}
	c.swapped(paths)
	slices.SortFunc(c.report.Problems, func(a, b Problem) int {
		return strings.Compare(a.Path+"\x00"+a.What, b.Path+"\x00"+b.What)
	})
	c.report.Complete = c.complete
	c.report.Valid = c.complete && len(c.report.Problems) == 0
	return nil
}

type checker struct {
	ctx      context.Context
	root     *os.Root
	said     int64 // octets of all files in data/, as Payload-Oxum says
	files    map[string]*file
	left     int                   // files that may still be added
	hasData  bool                  // there is a payload folder
	payload  [len(algorithms)]bool // of which there is a manifest
	complete bool
	wrong    map[string][2]string // of an altered file: algorithm and checksum
	report   Report
}

func (c *checker) problem(path, format string, args ...any) { c.found("", path, format, args...) }

func (c *checker) found(kind Kind, path, format string, args ...any) {
	if len(c.report.Problems) == maxProblems {
		c.report.More++
		return
	}
	c.report.Problems = append(c.report.Problems, Problem{Path: path, What: fmt.Sprintf(format, args...), Kind: kind})
}

func (c *checker) incomplete(path, format string, args ...any) {
	c.complete = false
	c.problem(path, format, args...)
}

// unfit is what is missing or was added.
func (c *checker) unfit(kind Kind, path, format string, args ...any) {
	c.complete = false
	c.found(kind, path, format, args...)
}

func (c *checker) there(p string) bool {
	f, ok := c.files[p]
	return ok && f.there
}

// text reads a small tag file, if it is there.
func (c *checker) text(p string) (string, bool) {
	f, ok := c.open(p)
	if !ok {
		return "", false
	}
	defer f.Close()
	b, err := safefile.ReadAll(f, maxTextBytes)
	if err != nil {
		c.problem(p, "was not read: %v", reason(err))
		return "", false
	}
	return string(b), true
}

func (c *checker) declaration() {
	if !c.there("bagit.txt") {
		c.incomplete("bagit.txt", "is missing")
		return
	}
	if text, ok := c.text("bagit.txt"); ok {
		if err := parseDeclaration(text); err != nil {
			c.problem("bagit.txt", "%v", err)
		}
	}
}

// list reads a list of files line by line, if it is not too large.
func (c *checker) list(p string, read func(io.Reader)) bool {
	if c.files[p].size > maxListBytes {
		c.problem(p, "is larger than %d MB and was not read", maxListBytes>>20)
		return false
	}
	f, ok := c.open(p)
	if !ok {
		return false
	}
	defer f.Close()
	read(io.LimitReader(f, maxListBytes))
	return true
}

// manifests reads all manifests of one kind.
func (c *checker) manifests(prefix string) error {
	for _, p := range slices.Sorted(maps.Keys(c.files)) { // that is the order of algorithms
		if !isManifest(p, prefix) || !c.there(p) {
			continue
		}
		name := strings.TrimSuffix(strings.TrimPrefix(p, prefix), ".txt")
		i := slices.IndexFunc(algorithms[:], func(a algorithm) bool { return a.name == name })
		if i < 0 {
			c.problem(p, "uses a checksum that is not known here")
			continue
		}
		var full error
		entry := func(listed, digest string) error {
			f, err := c.listed(prefix, listed)
			switch {
			case errors.Is(err, errTooMany):
				full = err
				return nil
			case err != nil:
				return err
			case f.listed[i]:
				return fmt.Errorf("%q is listed twice", listed)
			}
			f.list(i, digest)
			return nil
		}
		read := c.list(p, func(r io.Reader) {
			readManifest(r, 2*algorithms[i].new().Size(), entry, func(err error) { c.problem(p, "%v", err) })
		})
		if full != nil {
			return full
		}
		if read && prefix == "manifest-" {
			c.payload[i] = true
			c.report.Algorithms = append(c.report.Algorithms, name)
		}
	}
	return nil
}

// listed returns the file that a manifest of a kind lists.
func (c *checker) listed(prefix, p string) (*file, error) {
	if strings.HasPrefix(p, payloadDir) != (prefix == "manifest-") || isManifest(p, "tagmanifest-") {
		return nil, fmt.Errorf("lists %q, which does not belong there", p)
	}
	return c.at(p)
}

// fetch tells of files that the bag wants taken from the network; that is
// never done.
func (c *checker) fetch() {
	const name = "fetch.txt"
	if !c.there(name) {
		return
	}
	n := 0
	c.list(name, func(r io.Reader) {
		readFetch(r, func(p string) {
			n++
			for i, a := range algorithms {
				if f, ok := c.files[p]; c.payload[i] && (!ok || !f.listed[i]) {
					c.problem(name, "lists %q, which manifest-%s.txt does not", p, a.name)
				}
			}
		}, func(err error) { c.problem(name, "%v", err) })
	})
	c.remark(Problem{Path: name, What: fmt.Sprintf("names %d files to be fetched; nothing was fetched", n)})
}

func (c *checker) remark(p Problem) {
	if len(c.report.Notes) < maxProblems {
		c.report.Notes = append(c.report.Notes, p)
	}
}

// presence compares lists and files both ways. In version 1.0 every payload
// manifest lists every payload file.
func (c *checker) presence(paths []string) {
	for _, p := range paths {
		f, inData := c.files[p], strings.HasPrefix(p, payloadDir)
		list := "tagmanifest-"
		if inData {
			list = "manifest-"
		}
		const strongest = len(algorithms) - 1
		if !inData && f.there && !f.listed[strongest] && !isManifest(p, "tagmanifest-") && len(c.report.Unlisted) < maxProblems {
			c.report.Unlisted = append(c.report.Unlisted, p)
		}
		for i, a := range algorithms {
			switch {
			case f.listed[i] && !f.there:
				c.unfit(Missing, p, "is missing (listed in %s%s.txt)", list, a.name)
			case !f.listed[i] && f.there && inData && c.payload[i]:
				c.unfit(Added, p, "is not listed in manifest-%s.txt", a.name)
			}
		}
	}
}

// alike notes files that some systems cannot tell apart (RFC 8493 sections 5.2
// and 6.1).
func (c *checker) alike(paths []string) {
	seed, seen := maphash.MakeSeed(), map[uint64]bool{}
	for _, p := range paths {
		if !c.files[p].there {
			continue
		}
		alike := maphash.String(seed, fold(norm.NFC.String(p)))
		if seen[alike] {
			c.remark(Problem{Path: p, What: "differs from another file only in case or in how accents are spelled; not every system keeps both"})
		}
		seen[alike] = true
	}
}

func (c *checker) info() {
	const name = "bag-info.txt"
	if !c.there(name) {
		return
	}
	text, ok := c.text(name)
	if !ok {
		return
	}
	fields, errs := parseInfo(text)
	for _, err := range errs {
		c.problem(name, "%v", err)
	}
	c.report.Info = fields
	is := fmt.Sprintf("%d.%d", c.report.Octets, c.report.Files)
	seen := false
	for _, f := range fields {
		if !f.Is("Payload-Oxum") {
			continue
		}
		if seen {
			c.problem(name, "holds Payload-Oxum twice")
		}
		octets, _, _ := strings.Cut(f.Value, ".")
		if n, err := strconv.ParseInt(octets, 10, 64); err == nil {
			c.said = n
		}
		if seen = true; f.Value != is {
			c.found(Miscounted, name, "Payload-Oxum is %q, but the payload is %s", f.Value, is)
		}
	}
}

// checksums reads each listed file once, for all its manifests.
func (c *checker) checksums(paths []string) error {
	for _, p := range paths {
		most := int64(maxListBytes)
		if strings.HasPrefix(p, payloadDir) {
			most = c.said
		}
		switch f := c.files[p]; {
		case c.ctx.Err() != nil:
			return c.ctx.Err()
		case !f.there:
		case f.size > most:
			c.found(Altered, p, "is far too large, and was not read")
		default:
			c.checksum(p, f)
		}
	}
	return c.ctx.Err()
}

// attentive is a file that is read until somebody interrupts.
type attentive struct {
	ctx context.Context
	io.Reader
}

func (a attentive) Read(b []byte) (int, error) {
	if err := a.ctx.Err(); err != nil {
		return 0, err
	}
	return a.Reader.Read(b)
}

func (c *checker) checksum(p string, want *file) {
	sums := map[int]hash.Hash{}
	var to []io.Writer
	for i, a := range algorithms {
		if want.listed[i] {
			sums[i] = a.new()
			to = append(to, sums[i])
		}
	}
	if len(to) == 0 {
		return
	}
	f, ok := c.open(p)
	if !ok {
		return
	}
	defer f.Close()
	if _, err := io.Copy(io.MultiWriter(to...), attentive{c.ctx, f}); err != nil {
		c.problem(p, "cannot be read: %v", reason(err))
		return
	}
	for i, a := range algorithms {
		if sums[i] != nil && string(sums[i].Sum(nil)) != want.sum(i) {
			c.found(Altered, p, "%s checksum differs", a.name)
			if len(c.wrong) < maxProblems {
				c.wrong[p] = [2]string{a.name, string(sums[i].Sum(nil))}
			}
		}
	}
}

// swapped finds, of altered files, those that hold what another one should.
func (c *checker) swapped(paths []string) {
	if len(c.wrong) == 0 {
		return
	}
	owner := map[[2]string]string{}
	for _, got := range c.wrong {
		owner[got] = ""
	}
	for _, p := range paths {
		for i, a := range algorithms {
			if f := c.files[p]; f.listed[i] {
				if _, wanted := owner[[2]string{a.name, f.sum(i)}]; wanted {
					owner[[2]string{a.name, f.sum(i)}] = p
				}
			}
		}
	}
	for i, x := range c.report.Problems {
		if of := owner[c.wrong[x.Path]]; x.Kind == Altered && of != "" {
			c.report.Problems[i].Kind, c.report.Problems[i].With = Swapped, of
			c.report.Problems[i].What += fmt.Sprintf("; it is that of %q", of)
		}
	}
}
