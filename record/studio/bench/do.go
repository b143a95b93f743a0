// Package bench is what is done at the bench: panels numbered, coated, worked,
// looked at, described, and what was written down wrong put right. Values come
// typed; what a person types is read by package typed.
package bench

import (
	"context"

	"backleaf/record"
	"backleaf/record/paper"
	"backleaf/record/studio"
)

// Do writes down what was done on the panels of a view. The body is judged
// first: it may be refused, completed, or doubted in a warning.
func Do(ctx context.Context, v *studio.View, at record.When, body record.Body) (studio.Written, error) {
	left, err := atHand(v, body)
	if err != nil {
		return studio.Written{}, err
	}
	body, doubts, err := judge(v, body)
	doubts = append(left, doubts...)
	if err != nil {
		return studio.Written{Warnings: doubts}, err
	}
	doubts = append(doubts, doubt(v, at, body)...)
	w, err := v.Write(ctx, record.Entry{At: at, Panels: v.Panels, Body: body})
	w.Warnings, w.Means = append(doubts, w.Warnings...), means(v, body)
	if d, ok := body.(record.Described); ok && err == nil {
		w.Warnings = append(w.Warnings, Unprintable(d.Title, d.Subject, d.Inscription, d.Signed, d.Features, d.Medium)...)
	}
	return w, err
}

// Unprintable warns of texts with a character that no face at hand has: they
// are recorded as they are, but no label or certificate can be drawn.
func Unprintable(texts ...string) (ws []record.Said) {
	for _, t := range texts {
		if _, err := paper.Compose(0, paper.Span{Style: paper.Body, Text: t, Field: "“" + t + "”"}); err != nil {
			ws = append(ws, record.Say("not-printable", record.With("why", err.Error())))
		}
	}
	return ws
}
