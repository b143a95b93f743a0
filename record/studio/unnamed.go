package studio

import (
	"slices"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
)

// NameInJournal refuses a text with the name of whom a panel went to.
func NameInJournal(field string) error {
	return refuse.Input(field, "name-in-journal", "the name stands in it, and every reader of the journal sees it, for ever")
}

// unnamed refuses texts with the name of whom one of their panels went to: it
// stands outside the journal, where it can be erased. In the entry that keeps it
// apart a word of it is too much.
func unnamed(d *book.Draft, es []record.Entry, secrets map[int]book.Private) error {
	for i, e := range es {
		texts := record.FreeText(e.Body)
		if a, ok := e.Body.(record.Amended); ok {
			texts = append(texts, string(a.Change))
		}
		if texts == nil {
			continue
		}
		if own, err := private.Read(secrets[i]); err == nil && slices.ContainsFunc(texts, own.Named) {
			return NameInJournal("note")
		}
		for of, found := e, true; found && len(e.Panels) == 0 && of.Corrects() != 0; e.Panels = of.Panels {
			var err error
			if of, _, found, err = d.History(of.Corrects()); err != nil {
				return err
			}
		}
		ps, err := d.Private(e.Panels)
		if err != nil {
			return err
		}
		for _, sealed := range ps {
			if p, err := private.Read(sealed); err == nil && slices.ContainsFunc(texts, p.Whole) {
				return refuse.Unclearly("name-in-journal", "the name kept apart for whom it went to stands in what was typed, and every reader of the journal sees it, for ever")
			}
		}
	}
	return nil
}
