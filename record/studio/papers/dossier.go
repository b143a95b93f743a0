package papers

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"io/fs"

	"backleaf/certificate/dossier"
	"backleaf/record"
	"backleaf/record/safefile"
	"backleaf/record/studio"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/questions"
	"backleaf/record/studio/refuse"
)

// Dossier gathers all that is recorded of a panel.
func Dossier(ctx context.Context, s *studio.Session, panel string) (record.Number, *dossier.Document, error) {
	b := s.Book
	_, p, err := questions.One(ctx, b, panel)
	if err == nil {
		err = cmp.Or(studio.Known(b), studio.Readable(p))
	}
	if err != nil {
		return "", nil, err
	}
	w, err := questions.Around(ctx, b, p.Number)
	if err != nil {
		return "", nil, err
	}
	size, root, err := b.Tree(ctx)
	if err != nil {
		return "", nil, err
	}
	return p.Number, dossier.New(s.Catalogue(), w, w.Panel(p.Number), dossier.Book{Entries: size, Root: fmt.Sprintf("%x", root[:]),
		Photograph: func(ph record.Photograph) ([]byte, error) { return kept.AsItIs(b.Path(), kept.Photograph(ph)) }}), nil
}

// WriteDossier writes a dossier in one of its forms. It takes the place of an
// old one, told by the kind of the document, and of nothing else.
func WriteDossier(path, kind string, data []byte) error {
	old, err := safefile.Read(path, maxOld)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("cannot write the dossier: %w", err)
	}
	if err == nil && !bytes.Contains(old, []byte(kind)) {
		return refuse.Cannot("no-dossier-there", "%s is there already, and it is no dossier", path)
	}
	return safefile.Write(path, 0o644, safefile.Bytes(data))
}
