package main

import (
	"reflect"
	"strconv"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
)

// patch turns --set and --unset into a merge patch for an entry.
func (s *benchState) patch(old record.Entry, set, unset []string) (jsontext.Value, error) {
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
	for _, one := range set {
		field, typed, ok := strings.Cut(one, "=")
		if !ok {
			return nil, usage("", "--set %q: expected FIELD=VALUE", one)
		}
		v, err := s.value(old.Body, field, typed)
		if err != nil {
			return nil, err
		}
		put(field, v)
	}
	b, err := json.Marshal(change, json.Deterministic(true))
	return b, err
}

// value reads a typed value as the kind of thing its field holds.
func (s *benchState) value(body record.Body, field, typed string) (any, error) {
	switch field {
	case "at":
		w, err := parseAt(typed, s.now, s.zone)
		return w.String(), err
	case "mix":
		return s.mix(typed)
	}
	t, ok := fieldType(reflect.TypeOf(body), strings.Split(field, "."))
	if !ok {
		return nil, usage("\"backleaf journal ENTRY\" shows the fields of an entry", "an entry of kind %s has no field %q", body.Kind(), field)
	}
	switch t.Kind() {
	case reflect.Int64:
		n, err := strconv.ParseInt(typed, 10, 64)
		if err != nil {
			return nil, usage("", "--set %s: %q is not a whole number", field, typed)
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
			return nil, usage("", "--set %s: expected a JSON list", field)
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
			typed = inUnit(s.shop.Studio.Units, typed, u)
		}
		if err := u.UnmarshalText([]byte(typed)); err != nil {
			return nil, usage("", "--set %s: %v", field, err)
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
