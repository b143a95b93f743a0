package papers

import (
	"cmp"
	"context"
	"fmt"

	"backleaf/certificate/dossier"
	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/questions"
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
	w, err := b.Around(ctx, p.Number)
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
