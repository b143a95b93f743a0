package accept

import (
	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
)

// stays says why an entry can be neither amended nor withdrawn, or not
// withdrawn, by the codes of the table of kinds.
var stays = map[string]string{
	"studio-changes":            "what the studio is stands as it was written; what it is now goes into a new entry",
	"keys-stay":                 "what became of a key stays as it was written",
	"certificate-stays":         "a certificate is taken back with its own entry, so that a reader of the paper can find it",
	"withdrawal-stays":          "a certificate once taken back stays so; issue another",
	"erasure-stays":             "what was erased stays erased",
	"correction-withdrawn-only": "a correction is not amended: take it back, or amend the first entry again",
	"shelf-stays":               "what is on the shelf stays; amend it instead",
	"number-stays":              "a number once given stays; discard the panel instead",
}

func checkAmendment(k Known, a record.Amended, panels []record.Number) error {
	if err := refersTo(k, "entry", a.Entry, panels, nil); err != nil {
		return err
	}
	old, before, _, err := k.History(a.Entry)
	if err != nil {
		return err
	}
	if len(old.Newer) > 0 {
		return refuse("entry", "E%d was written by a later program", a.Entry)
	}
	if why := old.Kind().Traits().Stays; why != "" {
		return refuse("entry", "%s", stays[why])
	}
	if touches(a.Change, "private_sha256") {
		return refuse("change/private_sha256", "the proof of what is kept apart stays as it was written")
	}
	e := old
	for _, b := range before {
		// Whether that amendment was for these panels does not matter here: a
		// change must fit with every other that could apply beside it.
		if e, err = e.Patched(b.Body.(record.Amended).Change); err != nil {
			return refuse("change", "together with amendment %d: %v", b.Seq, err)
		}
	}
	for _, base := range []record.Entry{old, e} {
		now, err := base.Patched(a.Change)
		if err == nil {
			err = now.Fault()
		}
		if err == nil {
			err = Check(now)
		}
		if err == nil {
			err = checkShelf(now.Body, k)
		}
		if err != nil {
			return under("change", err)
		}
		if record.KeyOf(now.Body) != record.KeyOf(old.Body) {
			return refuse("change/key", "the key stays as it is: other entries name it")
		}
	}
	return nil
}

// touches reports that a change names a field.
func touches(change jsontext.Value, field string) bool {
	var m map[string]jsontext.Value
	_ = json.Unmarshal(change, &m) // what is no object is refused as such
	_, there := m[field]
	return there
}

func checkWithdrawal(k Known, w record.Withdrawn, panels []record.Number) error {
	if err := refersTo(k, "entry", w.Entry, nil, nil); err != nil {
		return err
	}
	old, _, _, err := k.History(w.Entry)
	if err != nil {
		return err
	}
	t := old.Kind().Traits()
	why := t.NotTaken
	if why == "" && old.Corrects() == 0 {
		why = t.Stays
	}
	if why != "" {
		return refuse("entry", "%s", stays[why])
	}
	if len(old.Panels) > 0 || len(panels) > 0 {
		if err := refersTo(k, "entry", w.Entry, panels, nil); err != nil {
			return err
		}
	}
	if a, ok := old.Body.(record.Amended); ok {
		return checkWithout(k, a.Entry, w.Entry)
	}
	return nil
}

// checkWithout wants an entry to be sound without one of its amendments.
func checkWithout(k Known, of, without int64) error {
	e, fixes, _, err := k.History(of)
	if err != nil {
		return err
	}
	for _, f := range fixes {
		if f.Seq == without {
			continue
		}
		if e, err = e.Patched(f.Body.(record.Amended).Change); err != nil {
			return refuse("entry", "without it, amendment %d does not fit: %v", f.Seq, err)
		}
	}
	if err := Check(e); err != nil {
		return refuse("entry", "without it, E%d would not be sound: %v", of, err)
	}
	return nil
}
