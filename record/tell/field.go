package tell

import (
	"maps"
	"reflect"
	"slices"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
)

// FieldName returns the printed name of a field of a kind of entry, by its
// path in the record ("wet_total", "board.species"). What the kind does not
// name for itself is named as in all kinds.
func (c *Catalogue) FieldName(k record.Kind, path string) string {
	for _, key := range []string{string(k) + "." + path, path, path[strings.LastIndex(path, ".")+1:]} {
		if w, ok := c.lookUp("field", key); ok {
			return w.Text
		}
	}
	return path
}

// field tells the JSON text of one field of a kind of entry by the type that
// the kind gives it. A free text is told as it is, whatever it looks like.
func (c *Catalogue) field(k record.Kind, path string, text string) string {
	if text == "" {
		return string(c.Lines.NotRecorded)
	}
	body, _ := record.Blank(k)
	typ := fieldType(reflect.TypeOf(body), strings.Split(path, "."))
	if path == "at" || path == "written" {
		typ = reflect.TypeFor[record.When]()
	}
	if typ != nil {
		v := reflect.New(typ)
		if json.Unmarshal([]byte(text), v.Interface()) == nil {
			return c.typed(k, path, v.Elem())
		}
	}
	var free any
	if json.Unmarshal([]byte(text), &free) != nil {
		return text
	}
	if s, ok := free.(string); ok {
		return s
	}
	return text
}

// typed tells a value of a field by its Go type.
func (c *Catalogue) typed(k record.Kind, path string, v reflect.Value) string {
	switch x := v.Interface().(type) {
	case record.When: // to the second: it may be all that was changed
		return c.one("When", x.String(), "exact")
	case bool:
		return c.Word(map[bool]record.Answer{true: record.Yes, false: record.No}[x])
	case jsontext.Value:
		return c.change(k, x)
	}
	if isObject(v.Type()) {
		return c.object(k, path, v)
	}
	if v.Kind() == reflect.Slice && isObject(v.Type().Elem()) {
		var parts []string
		for i := range v.Len() {
			parts = append(parts, c.object(k, path, v.Index(i)))
		}
		return c.Clauses(parts)
	}
	return c.value(record.With("value", v.Interface()), "")
}

// object tells the fields of an object within a field.
func (c *Catalogue) object(k record.Kind, path string, v reflect.Value) string {
	out := ""
	for i := range v.NumField() {
		f := v.Type().Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if v.Field(i).IsZero() {
			continue
		}
		one := c.Join.Named.With("name", c.FieldName(k, path+"."+name), "value", c.typed(k, path+"."+name, v.Field(i)))
		if out == "" {
			out = one
		} else {
			out = c.Join.List.With("a", out, "b", one)
		}
	}
	return out
}

// change tells the merge patch of an amendment of a kind of entry.
func (c *Catalogue) change(k record.Kind, patch jsontext.Value) string {
	var fields map[string]jsontext.Value
	if json.Unmarshal(patch, &fields) != nil {
		return string(patch)
	}
	var out []string
	for _, name := range slices.Sorted(maps.Keys(fields)) {
		now := ""
		if fields[name].Kind() != 'n' {
			now = string(fields[name])
		}
		out = append(out, c.Join.Pair.With("name", c.FieldName(k, name), "value", c.field(k, name, now)))
	}
	return c.Clauses(out)
}

// isObject reports a Go type that stands in JSON as an object.
func isObject(t reflect.Type) bool {
	_, text := t.MethodByName("MarshalText")
	return t.Kind() == reflect.Struct && !text
}

// fieldType finds the type of a field by its JSON names; nil if there is none.
func fieldType(t reflect.Type, path []string) reflect.Type {
	if t == nil || t.Kind() != reflect.Struct {
		return nil
	}
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous { // its fields are the entry's own
			if found := fieldType(f.Type, path); found != nil {
				return found
			}
		}
		if name == path[0] && len(path) == 1 {
			return f.Type
		}
		if name == path[0] {
			return fieldType(f.Type, path[1:])
		}
	}
	return nil
}
