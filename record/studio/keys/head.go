package keys

import (
	"context"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/seal"
)

// SignHead signs size and root of the journal as it stands, for the studio of
// that studio, and keeps the head in the book.
func SignHead(ctx context.Context, b *book.Book, st record.Studio, k seal.Key) ([]byte, error) {
	size, root, err := b.Tree(ctx)
	if err != nil {
		return nil, err
	}
	note, err := Head(st, size, root, k)
	if err != nil {
		return nil, err
	}
	return note, b.KeepHead(ctx, book.Head{Size: size, Root: root, Note: string(note)})
}

// Head signs a size and root.
func Head(st record.Studio, size int64, root seal.Hash, k seal.Key) ([]byte, error) {
	origin, err := seal.Origin(st.Mark, st.Journal)
	if err != nil {
		return nil, err
	}
	return seal.Head{Origin: origin, Size: size, Root: root}.Sign(k)
}
