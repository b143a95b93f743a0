package seal

import (
	"errors"
	"fmt"

	"golang.org/x/mod/sumdb/tlog"
)

// MaxSize bounds the number of entries of a journal (2⁴⁰): far above any studio, and far below where the arithmetic of the tree library overflows.
const MaxSize = 1 << 40

// A Hash is a node of the tree; it prints as base64.
type Hash = tlog.Hash

// A HashReader gives stored hashes by their index (see StoredHashIndex).
type HashReader = tlog.HashReader

// ErrProof: the proof does not lead from the entry, or the older head, to the root.
var ErrProof = errors.New("the proof does not lead to the root of the journal")

// emptyRoot is the root of the empty tree (RFC 6962 section 2.1): SHA-256 of nothing.
var emptyRoot = Hash(DigestOf(nil))

// LeafHash returns SHA-256(0x00 || entry).
func LeafHash(entry []byte) Hash { return tlog.RecordHash(entry) }

// StoredHashIndex returns the index at which the hash of entry seq (counted from 0) is stored. The hashes of NewHashes stand there and at the
// indexes that follow.
func StoredHashIndex(seq int64) int64 { return tlog.StoredHashIndex(0, seq) }

// NewHashes returns the hashes to store when the entry becomes number seq, counted from 0: that of the leaf and those of the subtrees it completes.
func NewHashes(seq int64, entry []byte, r HashReader) ([]Hash, error) {
	if seq < 0 || seq >= MaxSize {
		return nil, fmt.Errorf("no entry can have number %d", seq)
	}
	return tlog.StoredHashes(seq, entry, r)
}

// Root returns the root of the first size entries.
func Root(size int64, r HashReader) (Hash, error) {
	if size < 0 || size > MaxSize {
		return Hash{}, fmt.Errorf("no journal can have %d entries", size)
	}
	return tlog.TreeHash(size, r)
}

// ProvePrefix returns the path (RFC 6962 section 2.1.2) that leads from the root of the first older entries to that of the first size entries.
func ProvePrefix(size, older int64, r HashReader) ([]Hash, error) {
	if older < 0 || older > size || size > MaxSize {
		return nil, fmt.Errorf("%d entries cannot be the beginning of %d", older, size)
	}
	if older == 0 {
		return nil, nil
	}
	return tlog.ProveTree(size, older, r)
}

func checkPrefix(path []Hash, size int64, root Hash, older int64, olderRoot Hash) error {
	if older < 0 || older > size || size > MaxSize {
		return fmt.Errorf("%d entries cannot be the beginning of %d", older, size)
	}
	if older == 0 { // every journal begins with the empty one
		if len(path) != 0 || olderRoot != emptyRoot {
			return ErrProof
		}
		return nil
	}
	if tlog.CheckTree(path, size, root, older, olderRoot) != nil {
		return ErrProof
	}
	return nil
}

// A Tree holds all hashes of a journal in memory: to rebuild a root from entries, and for tests. The zero Tree is empty.
type Tree struct {
	size   int64
	hashes []Hash
}

// Append adds an entry.
func (t *Tree) Append(entry []byte) error {
	hashes, err := NewHashes(t.size, entry, t)
	if err != nil {
		return err
	}
	t.hashes = append(t.hashes, hashes...)
	t.size++
	return nil
}

// Size returns the number of entries.
func (t *Tree) Size() int64 { return t.size }

// ReadHashes implements HashReader.
func (t *Tree) ReadHashes(indexes []int64) ([]Hash, error) {
	hashes := make([]Hash, len(indexes))
	for i, index := range indexes {
		if index < 0 || index >= int64(len(t.hashes)) {
			return nil, fmt.Errorf("no hash is stored at index %d", index)
		}
		hashes[i] = t.hashes[index]
	}
	return hashes, nil
}
