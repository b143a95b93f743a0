package bag

import "strconv"

// Problem is one thing that keeps a bag from being complete or valid.
type Problem struct {
	Path string // within the bag; text from outside, printed quoted if need be
	What string
	Kind Kind
	With string // of a file that is swapped: the file whose content it has
}

// Kind says what sort of problem it is; empty for one of another sort.
type Kind string

const (
	Missing Kind = "missing" // listed, and not there
	Added   Kind = "added"   // there, and not listed
	Altered Kind = "altered" // another content than is listed
	Swapped Kind = "swapped" // the content that is listed for another file

	Miscounted Kind = "miscounted" // the count of all is another one
)

func (p Problem) String() string { return p.File() + ": " + p.What }

// File is the path, quoted where it could be read otherwise.
func (p Problem) File() string {
	if q := strconv.Quote(p.Path); q != `"`+p.Path+`"` {
		return q
	}
	return p.Path
}

// Report says what was found. A bag is complete if every file that should be
// there is, and no other in data/; it is valid if moreover all checksums hold
// and nothing else is wrong (RFC 8493 section 3).
type Report struct {
	Complete, Valid bool
	Problems        []Problem // by path; a thousand at most
	More            int       // problems beyond those
	Notes           []Problem // what a reader should know but breaks nothing; a thousand at most
	Algorithms      []string  // of the payload manifests
	Files           int       // in data/
	Octets          int64     // in data/
	Info            []Field   // bag-info.txt
	Empty           []string  // folders without any file; a thousand at most
	Unlisted        []string  // files beside data/ that tagmanifest-sha512.txt does not list, without tag manifests; a thousand at most
}
