package record

import (
	"fmt"
	"slices"
	"strconv"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

// Known answers what a book already holds. An entry may only refer to what is
// there before it.
type Known interface {
	// StudioNow returns the studio as it stands; false before the first entry.
	StudioNow() (Studio, bool)
	// HasPanel reports that a panel of this number was cut.
	HasPanel(Number) (bool, error)
	// HasMaterial reports that a material was described.
	HasMaterial(Key) (bool, error)
	// LotMaterial returns what a lot is a lot of; false if there is no such lot.
	LotMaterial(Key) (Key, bool, error)
	// History returns an entry as first written and, oldest first, the
	// amendments made to it.
	History(seq int64) (Entry, []Entry, bool, error)
}

// Refers checks everything an entry points at: the studio, panels, materials,
// lots, earlier entries. Errors are of type [*FieldError], or those of k.
func (e Entry) Refers(k Known) error {
	studio, open := k.StudioNow()
	if _, first := e.Body.(Studio); !open && !first {
		return &FieldError{Field: "kind", Why: "the first entry of a book opens the studio"}
	}
	if s, ok := e.Body.(Studio); ok && open && (s.Mark != studio.Mark || s.NAAN != studio.NAAN) {
		return &FieldError{Field: "mark", Why: "the mark stays as it is: it is part of every number given so far"}
	}
	_, cut := e.Body.(Cut)
	for i, n := range e.Panels {
		f := "panels/" + strconv.Itoa(i)
		if _, err := ParseNumber(string(n), studio.NAAN); err != nil {
			return &FieldError{Field: f, Why: err.Error()}
		}
		has, err := k.HasPanel(n)
		switch {
		case err != nil:
			return err
		case cut && has:
			return &FieldError{Field: f, Why: fmt.Sprintf("%s is taken by another panel", n)}
		case !cut && !has:
			return &FieldError{Field: f, Why: fmt.Sprintf("there is no panel %s", n)}
		}
	}
	for _, r := range shelfRefs(e.Body) {
		if err := r.check(k); err != nil {
			return err
		}
	}
	switch b := e.Body.(type) {
	case Lot:
		if _, taken, err := k.LotMaterial(b.Key); err != nil || taken {
			return orTaken(err, "key", fmt.Sprintf("lot %s is on the shelf already", b.Key))
		}
	case Amended:
		return checkAmendment(k, b, e.Panels)
	case Withdrawn:
		return checkWithdrawal(k, b, e.Panels)
	case Revoked:
		return refersTo(k, "certificate", b.Certificate, e.Panels, "certificate-issued")
	case Issued:
		if b.Replaces != 0 {
			return refersTo(k, "replaces", b.Replaces, e.Panels, "certificate-issued")
		}
	case Forgotten:
		return refersTo(k, "entry", b.Entry, nil, "handed-over", "lot")
	}
	return nil
}

func orTaken(err error, field, why string) error {
	if err != nil {
		return err
	}
	return &FieldError{Field: field, Why: why}
}

// shelfRef is a mention of a material and perhaps a lot of it.
type shelfRef struct {
	field    string
	material Key
	lot      Key
}

func (r shelfRef) check(k Known) error {
	if r.material != "" && r.material != Unknown {
		if ok, err := k.HasMaterial(r.material); err != nil || !ok {
			return orTaken(err, r.field, fmt.Sprintf("there is no material %s on the shelf", r.material))
		}
	}
	if r.lot != "" && r.lot != Unknown {
		of, ok, err := k.LotMaterial(r.lot)
		if err != nil || !ok {
			return orTaken(err, r.field, fmt.Sprintf("there is no lot %s on the shelf", r.lot))
		}
		if r.material != "" && of != r.material {
			return &FieldError{Field: r.field, Why: fmt.Sprintf("lot %s is a lot of %s, not of %s", r.lot, of, r.material)}
		}
	}
	return nil
}

// shelfRefs lists the materials and lots a body mentions.
func shelfRefs(b Body) []shelfRef {
	var refs []shelfRef
	mix := func(c Coating) {
		for i, p := range c.Mix {
			refs = append(refs, shelfRef{"mix/" + strconv.Itoa(i), p.Material, p.Lot})
		}
	}
	switch b := b.(type) {
	case Lot:
		refs = append(refs, shelfRef{"material", b.Material, ""})
	case Cut:
		refs = append(refs, shelfRef{"board", b.Board, b.Lot})
	case Coat:
		mix(b.Coating)
	case ClothLaid:
		refs = append(refs, shelfRef{"cloth", b.Cloth, b.ClothLot})
		mix(b.Coating)
	case PaintLayer:
		mix(b.Coating)
	case Varnish:
		mix(b.Coating)
	}
	return refs
}

// Shelf lists the materials and lots an entry mentions, for look-up tables
// and for tracing a lot. Unknown ones are left out.
func (e Entry) Shelf() (materials, lots []Key) {
	for _, r := range shelfRefs(e.Body) {
		if r.material != "" && r.material != Unknown && !slices.Contains(materials, r.material) {
			materials = append(materials, r.material)
		}
		if r.lot != "" && r.lot != Unknown && !slices.Contains(lots, r.lot) {
			lots = append(lots, r.lot)
		}
	}
	return materials, lots
}

// Corrects returns the entry that this one amends or withdraws, or 0.
func (e Entry) Corrects() int64 {
	switch b := e.Body.(type) {
	case Amended:
		return b.Entry
	case Withdrawn:
		return b.Entry
	}
	return 0
}

func refersTo(k Known, field string, seq int64, panels []Number, want ...Kind) error {
	old, _, ok, err := k.History(seq)
	if err != nil {
		return err
	}
	if !ok {
		return &FieldError{Field: field, Why: fmt.Sprintf("there is no entry %d", seq)}
	}
	if len(want) > 0 && !slices.Contains(want, old.Kind()) {
		return &FieldError{Field: field, Why: fmt.Sprintf("entry %d is of kind %s", seq, old.Kind())}
	}
	for i, n := range panels {
		if !slices.Contains(old.Panels, n) {
			return &FieldError{Field: "panels/" + strconv.Itoa(i), Why: fmt.Sprintf("entry %d is not about %s", seq, n)}
		}
	}
	return nil
}

func checkAmendment(k Known, a Amended, panels []Number) error {
	if err := refersTo(k, "entry", a.Entry, panels); err != nil {
		return err
	}
	old, before, _, err := k.History(a.Entry)
	if err != nil {
		return err
	}
	switch old.Kind() {
	case "amended", "withdrawn", "certificate-issued", "certificate-withdrawn", "private-erased", "key-made", "key-retired", "key-lost", "studio":
		return &FieldError{Field: "entry", Why: fmt.Sprintf("an entry of kind %s cannot be amended", old.Kind())}
	}
	e := old
	for _, b := range before {
		// Whether that amendment was for these panels does not matter here: a
		// change must fit with every other that could apply beside it.
		if e, err = patched(e, b.Body.(Amended).Change); err != nil {
			return &FieldError{Field: "change", Why: fmt.Sprintf("together with amendment %d: %v", b.Seq, err)}
		}
	}
	for _, base := range []Entry{old, e} {
		now, err := patched(base, a.Change)
		if err != nil {
			return under("change", err)
		}
		for _, r := range shelfRefs(now.Body) {
			if err := r.check(k); err != nil {
				return under("change", err)
			}
		}
		if keyOf(now.Body) != keyOf(old.Body) {
			return &FieldError{Field: "change/key", Why: "the key stays as it is: other entries name it"}
		}
	}
	return nil
}

func keyOf(b Body) Key {
	switch b := b.(type) {
	case Material:
		return b.Key
	case Lot:
		return b.Key
	}
	return ""
}

func checkWithdrawal(k Known, w Withdrawn, panels []Number) error {
	if err := refersTo(k, "entry", w.Entry, nil); err != nil {
		return err
	}
	old, _, _, err := k.History(w.Entry)
	if err != nil {
		return err
	}
	switch old.Kind() {
	case "studio", "material", "lot":
		return &FieldError{Field: "entry", Why: fmt.Sprintf("an entry of kind %s stays; amend it instead", old.Kind())}
	case "cut":
		return &FieldError{Field: "entry", Why: "a number once given stays; discard the panel instead"}
	case "certificate-issued":
		return &FieldError{Field: "entry", Why: "a certificate is taken back with its own entry, so that a reader of the paper can find it"}
	case "certificate-withdrawn", "private-erased", "key-made", "key-retired", "key-lost":
		return &FieldError{Field: "entry", Why: fmt.Sprintf("an entry of kind %s stays", old.Kind())}
	}
	if len(old.Panels) > 0 || len(panels) > 0 {
		return refersTo(k, "entry", w.Entry, panels)
	}
	return nil
}

// patched applies a merge patch (RFC 7396) to an entry's body and time.
func patched(e Entry, patch jsontext.Value) (Entry, error) {
	var change map[string]jsontext.Value
	if err := json.Unmarshal(patch, &change); err != nil {
		return Entry{}, jsonError(err)
	}
	fields, err := fieldsOf(e)
	if err != nil {
		return Entry{}, err
	}
	for name, v := range change {
		switch name {
		case "v", "seq", "kind", "written", "panels":
			return Entry{}, &FieldError{Field: name, Why: "this field cannot be amended"}
		}
		fields[name] = merge(fields[name], v)
		if len(fields[name]) == 0 || string(fields[name]) == "{}" {
			delete(fields, name) // what holds nothing is left out
		}
	}
	b, err := json.Marshal(fields, json.Deterministic(true))
	if err != nil {
		return Entry{}, err
	}
	return Decode(b)
}

// fieldsOf returns an entry's members as JSON texts.
func fieldsOf(e Entry) (map[string]jsontext.Value, error) {
	b, err := Encode(e)
	if err != nil {
		return nil, err
	}
	fields := map[string]jsontext.Value{}
	return fields, json.Unmarshal(b, &fields)
}

// merge is the MergePatch function of RFC 7396, section 2; nil is absence.
func merge(target, patch jsontext.Value) jsontext.Value {
	if patch.Kind() == 'n' {
		return nil
	}
	if patch.Kind() != '{' {
		return patch
	}
	var p, t map[string]jsontext.Value
	json.Unmarshal(patch, &p) // both are values checked before
	if target.Kind() == '{' {
		json.Unmarshal(target, &t)
	}
	if t == nil {
		t = map[string]jsontext.Value{}
	}
	for name, v := range p {
		if m := merge(t[name], v); m == nil {
			delete(t, name)
		} else {
			t[name] = m
		}
	}
	b, _ := json.Marshal(t)
	return b
}
