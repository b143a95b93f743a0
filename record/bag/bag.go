// Package bag writes and checks bags: folders that carry their own checksums,
// as in "The BagIt File Packaging Format (V1.0)", RFC 8493. It knows nothing of
// panels.
//
// A bag is written with SHA-256 and SHA-512 manifests, so that `sha256sum -c`
// and `sha512sum -c` alone can check it (TestSumTools runs both). Checking
// reads a stranger's bag safely: links are never followed, nothing is ever
// fetched, large files are streamed.
//
// TestSuite holds the checker against the bags of the public BagIt conformance
// suite (Library of Congress, v1.0 folder).
package bag

import (
	"bytes"
	"crypto/md5"
	"crypto/sha1"
	"crypto/sha256"
	"crypto/sha512"
	"hash"
	"io"
	"strings"

	"backleaf/record/safefile"
)

const (
	declaration = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"
	payloadDir  = "data/"
)

// File is one file to be put into a bag. Path is slash-separated and relative;
// Open is called once.
type File struct {
	Path string
	Open func() (io.ReadCloser, error)
}

// Bytes is a file with this content.
func Bytes(path string, content []byte) File {
	return File{path, func() (io.ReadCloser, error) { return io.NopCloser(bytes.NewReader(content)), nil }}
}

// FromDisk is the file that stands at name on the disk.
func FromDisk(path, name string) File {
	return File{path, func() (io.ReadCloser, error) { return safefile.Open(name, safefile.Unbounded) }}
}

// Field is one line of bag-info.txt. Labels compare without regard to case and
// may repeat.
type Field struct{ Label, Value string }

// Is reports whether f has this label.
func (f Field) Is(label string) bool { return strings.EqualFold(f.Label, label) }

// An algorithm of checksums.
type algorithm struct {
	name string
	new  func() hash.Hash
}

// algorithms are those a stranger's bag may use; the writer uses the last two.
var algorithms = [...]algorithm{{"md5", md5.New}, {"sha1", sha1.New}, {"sha256", sha256.New}, {"sha512", sha512.New}}

var written = algorithms[2:]
