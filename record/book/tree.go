package book

import (
	"context"
	"fmt"

	"golang.org/x/mod/sumdb/tlog"
)

// ReadHashes implements [tlog.HashReader].
func (s *session) ReadHashes(indexes []int64) ([]tlog.Hash, error) {
	out := make([]tlog.Hash, len(indexes))
	for i, idx := range indexes {
		var node []byte
		ok, err := s.one("SELECT node FROM hash WHERE idx = ?", []any{idx}, &node)
		switch {
		case err != nil:
			return nil, err
		case !ok || len(node) != tlog.HashSize:
			return nil, fmt.Errorf("%w: hash %d of the tree is missing", ErrBroken, idx)
		}
		copy(out[i][:], node)
	}
	return out, nil
}

// Tree returns the number of entries and the root of the hash tree over them
// (RFC 6962 section 2.1).
func (b *Book) Tree(ctx context.Context) (size int64, root tlog.Hash, err error) {
	err = b.view(ctx, func(s *session) error {
		if _, err := s.one("SELECT coalesce(max(seq), 0) FROM entry", nil, &size); err != nil {
			return err
		}
		root, err = tlog.TreeHash(size, s)
		return err
	})
	return size, root, err
}

// HashReader reads the stored hashes of the tree, for proofs. Index 0 is the
// leaf of entry 1.
func (b *Book) HashReader(ctx context.Context) tlog.HashReader {
	return tlog.HashReaderFunc(func(indexes []int64) (out []tlog.Hash, err error) {
		err = b.view(ctx, func(s *session) error { out, err = s.ReadHashes(indexes); return err })
		return out, err
	})
}

// Hash returns the leaf hash of an entry.
func (b *Book) Hash(ctx context.Context, seq int64) (tlog.Hash, error) {
	h, err := b.HashReader(ctx).ReadHashes([]int64{tlog.StoredHashIndex(0, seq-1)})
	if err != nil {
		return tlog.Hash{}, err
	}
	return h[0], nil
}

// Head is a signed head kept in the book.
type Head struct {
	Size int64
	Root tlog.Hash
	Note string
}

// KeepHead keeps a signed head. Its root must be that of the journal at its size.
func (b *Book) KeepHead(ctx context.Context, h Head) error {
	return b.update(ctx, func(s *session) error {
		var size int64
		if _, err := s.one("SELECT coalesce(max(seq), 0) FROM entry", nil, &size); err != nil {
			return err
		}
		if h.Size < 0 || h.Size > size {
			return fmt.Errorf("the head is not one of this journal: it has %d entries", size)
		}
		root, err := tlog.TreeHash(h.Size, s)
		if err != nil {
			return err
		}
		if root != h.Root {
			return fmt.Errorf("the head is not one of this journal")
		}
		return s.exec("INSERT INTO head (size, root, note) VALUES (?, ?, ?) ON CONFLICT DO NOTHING", h.Size, h.Root[:], h.Note)
	})
}

// Heads returns the signed heads kept in the book, smallest first.
func (b *Book) Heads(ctx context.Context) (out []Head, err error) {
	err = b.view(ctx, func(s *session) error { out, err = s.heads(); return err })
	return out, err
}

func (s *session) heads() (out []Head, err error) {
	err = s.each("SELECT size, root, note FROM head ORDER BY size, note", nil, func(scan func(...any) error) error {
		var h Head
		var root []byte
		if err := scan(&h.Size, &root, &h.Note); err != nil {
			return err
		}
		copy(h.Root[:], root)
		out = append(out, h)
		return nil
	})
	return out, err
}
