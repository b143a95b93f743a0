package typed

import (
	"errors"
	"reflect"
	"slices"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
)

// Set is one field of an entry and its new value as typed. A field in a field
// is named with a point: board.thickness.
type Set struct{ Field, Typed string }

// Change reads what is to become of an entry as a merge patch (RFC 7396) for
// its amendment: fields with new values, and fields that were not recorded.
func (r *Reader) Change(old record.Entry, set []Set, unset []string) jsontext.Value {
	change := map[string]any{}
	put := func(field string, v any) {
		at := change
		names := strings.Split(field, ".")
		for _, n := range names[:len(names)-1] {
			next, ok := at[n].(map[string]any)
			if !ok {
				next = map[string]any{}
				at[n] = next
			}
			at = next
		}
		at[names[len(names)-1]] = v
	}
	fail := func(asked string, err error) jsontext.Value {
		if e, ok := errors.AsType[*refuse.Error](err); ok && e.Field != "" {
			e.Field = asked
		} else if ok && (e.Said.Code == "no-such-field" || e.Said.Code == "kept-apart") {
			_ = e.With(record.With("entry", record.EntryRef(old.Seq)))
		}
		r.Fail(err)
		return nil
	}
	for _, f := range unset {
		if _, err := typeOf(old.Body, f); err != nil {
			return fail(f, err)
		}
		for _, own := range together(old.Body, f) {
			put(own, nil)
		}
	}
	for _, s := range set {
		if _, err := typeOf(old.Body, s.Field); err != nil {
			return fail(s.Field, err)
		}
		asked := s.Field
		if s.Field = named(old.Body, s.Field); s.Field == "grit" && strings.Trim(s.Typed, "0123456789") != "" { // with its scale, as at the bench
			scale, grit := r.Grit("grit", s.Typed)
			put("scale", scale)
			put("grit", grit)
			continue
		}
		if k := record.Key(strings.ToLower(s.Typed)); ofShelf(old.Body, s.Field) && k != record.Unknown && r.Shop != nil { // as the bench reads the cloth and the board
			material, lot, err := r.onShelf(k)
			if refuse.Code(err) == "not-on-shelf" {
				return fail(asked, err)
			}
			if _, ok := fieldType(reflect.TypeOf(old.Body), []string{s.Field + "_lot"}); ok && lot == k {
				put(s.Field+"_lot", lot)
				s.Typed = string(material)
			}
		}
		v, err := r.value(old.Body, s.Field, s.Typed)
		if err != nil {
			return fail(asked, err)
		}
		put(s.Field, v)
	}
	b, err := json.Marshal(change, json.Deterministic(true))
	if err != nil {
		r.Fail(err)
	}
	return b
}

// flags are the names by which the doors ask for fields that are named
// otherwise in an entry.
var flags = map[string]string{"amount": "wet_total", "amount-each": "wet_each", "on": "faces", "with": "mix", "as": "purpose", "rh": "humidity", "temp": "temperature",
	"tool-kind": "tool_kind", "wet-film": "wet_film", "dry-film": "dry_film", "wet-through": "wet_through", "edges-pressed": "edges_pressed", "through": "sanded_through",
	"dusted": "dust_removed", "eased": "edges_eased", "hollow-to": "hollow_to", "saw-loss": "saw_loss", "number": "producer_lot", "touch-dry": "touch_dry_from", "thinner": "thinned_with", "layer": "layers", "pigment": "pigments", "panel": "panels", "because": "reason", "zone": "time_zone", "link": "link_base"}

// FlagOf is the name by which the doors ask for a field, or for one in a list or
// in another field.
func FlagOf(field string) string {
	if i := strings.IndexAny(field, "0123456789"); i > 0 && field[i-1] == '/' {
		field = field[:i-1]
	}
	for flag, own := range flags {
		if own == field {
			return flag
		}
	}
	return strings.NewReplacer("label_sheet/", "sheet-", "/", "-", "_", "-").Replace(field)
}

// named is a field by its own name, also where it was asked for by another.
func named(body record.Body, field string) string {
	if _, ok := fieldType(reflect.TypeOf(body), strings.Split(field, ".")); ok || field == "at" {
		return field
	}
	if own, ok := flags[field]; ok {
		return own
	}
	return field
}

// ofShelf reports that a field names one material of the shelf.
func ofShelf(body record.Body, field string) bool {
	return slices.ContainsFunc(body.Kind().Fields(), func(f record.Field) bool { return f.Name == field && f.Ref == "material" && !f.List })
}

// together are the fields that are taken away with one, which has no meaning
// without the others.
func together(body record.Body, field string) []string {
	if own := named(body, field); own != "grit" && own != "scale" {
		return []string{own}
	}
	return []string{"grit", "scale"}
}

// typeOf is the type of a field that was asked for by a name.
func typeOf(body record.Body, asked string) (reflect.Type, error) {
	field := named(body, asked)
	if field == "at" {
		return reflect.TypeFor[record.When](), nil
	}
	t, ok := fieldType(reflect.TypeOf(body), strings.Split(field, "."))
	_, apart := fieldType(reflect.TypeFor[private.Part](), []string{strings.TrimPrefix(asked, "private-")})
	lot, _ := body.(record.Lot)
	_, sealed := fieldType(reflect.TypeOf(body), []string{"private_sha256"})
	switch {
	case ok:
		return t, nil
	case apart && sealed && lot.Key != "":
		return nil, refuse.Unclearly("price-of-lot", "a price is kept outside the journal, where nothing is amended").With(record.With("lot", lot.Key), record.With("material", lot.Material))
	case apart && sealed:
		return nil, refuse.Unclearly("kept-apart", "%s is kept outside the journal, where nothing is amended", asked)
	}
	return nil, refuse.Unclearly("no-such-field", "an entry of kind %s has no field %q", body.Kind(), asked)
}

// value reads a typed value as the kind of thing its field holds, and gives it
// its one spelling.
func (r *Reader) value(body record.Body, field, typed string) (any, error) {
	t, err := typeOf(body, field)
	if err != nil {
		return nil, err
	}
	each := []string{typed}
	if t.Kind() == reflect.Slice && t.Elem().Kind() == reflect.String {
		each = strings.FieldsFunc(typed, func(r rune) bool { return r == ',' || r == ' ' })
	} else if field == "pigments" && !strings.HasPrefix(strings.TrimSpace(typed), "[") {
		each = strings.Split(typed, "+") // as a mix is written
	} else if t.Kind() == reflect.Slice && field != "mix" {
		var v any
		if err := json.Unmarshal([]byte(typed), &v); err != nil {
			return nil, refuse.Input(field, "not-read", "expected a JSON list")
		}
		return v, nil
	}
	v := reflect.New(t)
	if r.Into(field, v.Interface(), each...); r.err != nil {
		return nil, r.err
	}
	return v.Elem().Interface(), nil
}

// fieldType finds the type of a field by its JSON names.
func fieldType(t reflect.Type, path []string) (reflect.Type, bool) {
	if t.Kind() != reflect.Struct {
		return nil, false
	}
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous { // its fields are the entry's own
			if ft, ok := fieldType(f.Type, path); ok {
				return ft, true
			}
		}
		if name == path[0] && name != "" {
			if len(path) == 1 {
				return f.Type, true
			}
			return fieldType(f.Type, path[1:])
		}
	}
	return nil, false
}
