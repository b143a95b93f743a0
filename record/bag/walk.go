package bag

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"strings"

	"backleaf/record/safefile"
)

// Bounds of a bag. A deposit of ten thousand panels has some two hundred thousand
// files.
const (
	maxFiles    = 300000 // files, folders, and files that are listed but not there
	maxFolders  = 100    // inside each other
	maxProblems = 1000   // told one by one
)

var errTooMany = fmt.Errorf("it holds or lists more than %d files and folders", maxFiles)

// A file is there, is listed, or both. There may be many: it is kept small.
type file struct {
	size   int64
	sums   string // the digests that manifests give, one behind the other in the order of algorithms
	listed [len(algorithms)]bool
	there  bool
}

// list adds a digest; they are added in the order of algorithms.
func (f *file) list(algorithm int, digest string) {
	f.sums += digest
	f.listed[algorithm] = true
}

// sum returns the digest that the manifests of an algorithm give.
func (f *file) sum(algorithm int) string {
	rest := f.sums
	for i, a := range algorithms {
		if n := a.new().Size(); f.listed[i] && i < algorithm {
			rest = rest[n:]
		} else if i == algorithm {
			rest = rest[:n]
		}
	}
	return rest
}

// at returns the file at a path, which is new if nobody has asked for it before.
func (c *checker) at(p string) (*file, error) {
	f, ok := c.files[p]
	if ok {
		return f, nil
	}
	if c.left--; c.left < 0 {
		return nil, errTooMany
	}
	f = &file{}
	c.files[p] = f
	return f, nil
}

// walk notes the regular files below a folder. Links, pipes and devices are
// reported and from then on not there: they are never opened.
func (c *checker) walk(dir string, depth int) error {
	if depth > maxFolders {
		c.incomplete(dir, "lies in more than %d folders and was not read", maxFolders)
		return nil
	}
	before := c.left
	folders, err := c.folder(dir)
	if err != nil {
		return err
	}
	if c.left == before && dir != "." && len(c.report.Empty) < maxProblems {
		c.report.Empty = append(c.report.Empty, dir)
	}
	for _, p := range folders {
		if err := c.walk(p, depth+1); err != nil {
			return err
		}
	}
	return nil
}

// folder notes the files of one folder and returns the folders in it.
func (c *checker) folder(dir string) (folders []string, err error) {
	d, err := c.root.Open(dir)
	if err != nil {
		return nil, c.unreadable(dir, err)
	}
	defer d.Close()
	for {
		const some = 1000
		entries, err := d.ReadDir(some)
		for _, e := range entries {
			p := path.Join(dir, e.Name())
			if e.IsDir() {
				if c.left--; c.left < 0 {
					return nil, errTooMany
				}
				folders = append(folders, p)
				c.hasData = c.hasData || p == "data"
			} else if err := c.note(p, e); err != nil {
				return nil, err
			}
		}
		if err == io.EOF {
			return folders, nil
		}
		if err != nil {
			return folders, c.unreadable(dir, err)
		}
	}
}

func (c *checker) note(p string, e fs.DirEntry) error {
	info, err := e.Info()
	if err != nil {
		return c.unreadable(p, err)
	}
	f, err := c.at(p)
	if err != nil {
		return err
	}
	if !info.Mode().IsRegular() {
		c.incomplete(p, "is no file of its own (%s) and was not read", safefile.Kind(info.Mode()))
		return nil
	}
	f.there, f.size = true, info.Size()
	if strings.HasPrefix(p, payloadDir) {
		c.report.Files++
		c.report.Octets += info.Size()
	}
	return nil
}

// unreadable reports what cannot be read; only the bag itself is an error.
func (c *checker) unreadable(p string, err error) error {
	if p == "." {
		return err
	}
	c.incomplete(p, "cannot be read: %v", reason(err))
	return nil
}

// reason leaves out the path, which comes from outside and is named already.
func reason(err error) error {
	if p, ok := errors.AsType[*fs.PathError](err); ok {
		return p.Err
	}
	return err
}

// open opens a file that is there, however large.
func (c *checker) open(p string) (*os.File, bool) {
	f, err := safefile.OpenIn(c.root, p, safefile.Unbounded)
	if err != nil {
		c.problem(p, "cannot be read: %v", reason(err))
		return nil, false
	}
	return f, true
}
