package deposit

import (
	"encoding"
	"fmt"
	"reflect"
	"strings"

	"backleaf/record"
)

// fieldsOf lists the JSON names of the fields of a type, those of a part of it
// with a point between: "board.thickness".
func fieldsOf(t reflect.Type, before string) []string {
	var names []string
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case f.Anonymous:
			names = append(names, fieldsOf(f.Type, before)...)
		case isPart(f.Type):
			names = append(names, fieldsOf(f.Type, before+name+".")...)
		default:
			names = append(names, before+name)
		}
	}
	return names
}

// isPart reports that a type has fields of its own rather than a text.
func isPart(t reflect.Type) bool {
	return t.Kind() == reflect.Struct && !t.Implements(reflect.TypeFor[encoding.TextMarshaler]())
}

// valuesOf returns the fields of a body as texts, by the names of fieldsOf.
func valuesOf(body any) map[string]string {
	values := map[string]string{}
	var walk func(v reflect.Value, before string)
	walk = func(v reflect.Value, before string) {
		for i := range v.NumField() {
			f := v.Type().Field(i)
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			switch {
			case f.Anonymous:
				walk(v.Field(i), before)
			case isPart(f.Type):
				walk(v.Field(i), before+name+".")
			default:
				values[before+name] = textOf(v.Field(i))
			}
		}
	}
	walk(reflect.ValueOf(body), "")
	return values
}

// textOf is one value for a cell; the parts of a list stand between semicolons.
func textOf(v reflect.Value) string {
	switch x := v.Interface().(type) {
	case record.Pigment:
		return strings.TrimSpace(x.Name + " " + x.Index)
	case record.Part:
		s := fmt.Sprintf("%d %s", x.Parts, x.Material)
		if x.Lot != "" {
			s += " (lot " + string(x.Lot) + ")"
		}
		return s
	case fmt.Stringer:
		return x.String()
	}
	switch v.Kind() {
	case reflect.Slice:
		var parts []string
		for i := range v.Len() {
			parts = append(parts, textOf(v.Index(i)))
		}
		return strings.Join(parts, "; ")
	case reflect.String:
		return v.String()
	case reflect.Int64:
		return num(v.Int())
	}
	panic("deposit: a field of a type that no table knows: " + v.Type().String())
}
