package typed

import (
	"reflect"
	"strconv"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
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
	for _, f := range unset {
		put(f, nil)
	}
	for _, s := range set {
		v, err := r.value(old.Body, s.Field, s.Typed)
		if err != nil {
			r.Fail(err)
			return nil
		}
		put(s.Field, v)
	}
	b, err := json.Marshal(change, json.Deterministic(true))
	if err != nil {
		r.Fail(err)
	}
	return b
}

// value reads a typed value as the kind of thing its field holds.
func (r *Reader) value(body record.Body, field, typed string) (any, error) {
	switch field {
	case "at":
		w, err := parseAt(typed, r.Now, r.Zone, false)
		return w.String(), err
	case "mix":
		return r.Mix(typed), r.err
	}
	t, ok := fieldType(reflect.TypeOf(body), strings.Split(field, "."))
	if !ok {
		return nil, refuse.Unclearly("no-such-field", "an entry of kind %s has no field %q", body.Kind(), field)
	}
	switch t.Kind() {
	case reflect.Int64:
		n, err := strconv.ParseInt(typed, 10, 64)
		if err != nil {
			return nil, refuse.Input(field, "not-read", "%q is not a whole number", typed)
		}
		return n, nil
	case reflect.Bool:
		return typed == "yes" || typed == "true", nil
	case reflect.Slice:
		if t.Elem().Kind() == reflect.String {
			return strings.Split(typed, ","), nil
		}
		var v any
		if err := json.Unmarshal([]byte(typed), &v); err != nil {
			return nil, refuse.Input(field, "not-read", "expected a JSON list")
		}
		return v, nil
	}
	// A measured value gets its one spelling here, so that what is typed
	// loosely is stored strictly.
	p := reflect.New(t)
	if u, ok := p.Interface().(interface {
		UnmarshalText([]byte) error
		MarshalText() ([]byte, error)
	}); ok {
		if !strings.HasSuffix(field, "_film") { // measured with a gauge
			typed = inUnit(r.Units, typed, u)
		}
		if err := u.UnmarshalText([]byte(typed)); err != nil {
			return nil, refuse.Input(field, "not-read", "%w", err)
		}
		b, err := u.MarshalText()
		return string(b), err
	}
	return typed, nil
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
