package studio

import (
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
)

// NameInJournal refuses a text with the name of whom a panel went to.
func NameInJournal(field string) error {
	e := refuse.Unclearly("name-in-journal", "the name kept apart for whom it went to stands in what was typed, and every reader of the journal sees it, for ever")
	e.Field = field
	return e
}

// Unnamed refuses entries of which a text tells to whom their panels went, by
// what is kept of them and by what is to be kept with these entries.
func Unnamed(d *book.Draft, es []record.Entry, secrets map[int]book.Private) error {
	read := func(sealed book.Private) (p private.Part) {
		p, _ = private.Read(sealed) // what cannot be read names nobody
		return p
	}
	for i, e := range es {
		if _, amends := e.Body.(record.Amended); !amends && record.FreeText(e.Body) == nil {
			continue
		}
		for of, found := e, true; found && len(e.Panels) == 0 && of.Corrects() != 0; e.Panels = of.Panels {
			var err error
			if of, _, found, err = d.History(of.Corrects()); err != nil {
				return err
			}
		}
		kept, err := d.Private(e.Panels)
		if err != nil {
			return err
		}
		var others []private.Part
		for _, sealed := range kept {
			others = append(others, read(sealed))
		}
		if private.ToldBy(e.Body, read(secrets[i]), others) {
			return NameInJournal("")
		}
	}
	return nil
}
