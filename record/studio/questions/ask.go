package questions

import (
	"cmp"
	"context"
	"errors"

	"backleaf/record"
	"backleaf/record/ask"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/tell"
)

// Answer is what the record says to a question.
type Answer struct {
	Topic    record.Code `json:"topic"`
	Lines    []string    `json:"lines"`
	Entries  []int64     `json:"entries"`
	Recorded bool        `json:"recorded"`
}

// Ask answers a short question about a panel in the words of a catalogue.
func Ask(ctx context.Context, c *tell.Catalogue, b *book.Book, panel, question string) ([]Answer, error) {
	_, p, err := One(ctx, b, panel)
	if err == nil {
		err = cmp.Or(studio.Known(b), studio.Readable(p))
	}
	if err != nil {
		return nil, err
	}
	w, err := Around(ctx, b, p.Number)
	if err != nil {
		return nil, err
	}
	as, err := ask.Ask(c, w, w.Panel(p.Number), question)
	if _, ok := errors.AsType[*ask.NotUnderstood](err); ok {
		return nil, refuse.Unclearly("not-understood", "%w", err)
	}
	out := []Answer{}
	for _, x := range as {
		out = append(out, Answer{x.Topic, x.Lines, append([]int64{}, x.Entries...), x.Recorded})
	}
	return out, err
}
