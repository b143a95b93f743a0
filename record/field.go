package record

import (
	"encoding"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

// Field is one field of a kind of entry, or of an object within one.
type Field struct {
	Name     string       // in JSON
	Go       string       // in Go, "Type.Field", for its description
	Type     reflect.Type // of the value; of one item where List is true
	List     bool
	Required bool
	Is       string  // the shape of a text; see Shapes
	Ref      string  // what it names: "material", "lot of FIELD", "entry KIND"
	Fields   []Field // of an object

	index   []int  // of the field in its Go struct
	refers  bool   // it names a material, or something in it does
	free    bool   // so does it hold free text
	as, lot *Field // which stand beside a material: its entries, its lot
}

var textMarshaler = reflect.TypeFor[encoding.TextMarshaler]()

// Words returns the closed list of words that the field takes; nil if it takes
// none.
func (f Field) Words() []string {
	if f.Type.Kind() != reflect.String {
		return nil
	}
	return closed[f.Type.Name()]
}

// Free reports that the field holds text in the words of a person.
func (f Field) Free() bool {
	return f.Type == reflect.TypeFor[string]() && (f.Is == "" || f.Is == "text")
}

// Fields returns the fields of a kind in the order of its Go type; none of a
// kind that this program does not know.
func (k Kind) Fields() []Field {
	if i, ok := kinds[k]; ok {
		return i.fields()
	}
	return nil
}

func fieldsOf(t reflect.Type) []Field {
	var out []Field
	for i := range t.NumField() {
		g := t.Field(i)
		name, opts, _ := strings.Cut(g.Tag.Get("json"), ",")
		if g.Anonymous {
			for _, f := range fieldsOf(g.Type) {
				f.index = append([]int{i}, f.index...)
				out = append(out, f)
			}
			continue
		}
		f := Field{Name: name, Go: t.Name() + "." + g.Name, Type: g.Type, Required: !strings.Contains(opts, "omitzero"), Is: g.Tag.Get("is"), Ref: g.Tag.Get("ref"), index: g.Index}
		if f.Type.Kind() == reflect.Slice && f.Type != reflect.TypeFor[jsontext.Value]() {
			f.List, f.Type = true, f.Type.Elem()
		}
		if f.Type.Kind() == reflect.Struct && !f.Type.Implements(textMarshaler) {
			f.Fields = fieldsOf(f.Type)
		}
		f.refers = f.Ref == "material" || slices.ContainsFunc(f.Fields, func(f Field) bool { return f.refers })
		f.free = f.Free() || slices.ContainsFunc(f.Fields, func(f Field) bool { return f.free })
		out = append(out, f)
	}
	for i := range out {
		for j, g := range out {
			switch f := &out[i]; {
			case f.Ref != "material":
			case g.Name == f.Name+"_as":
				f.as = &out[j]
			case g.Ref == "lot of "+f.Name && g.Name != "offcut_of":
				f.lot = &out[j]
			}
		}
	}
	return out
}

// In returns the value of the field in a struct that has it.
func (f *Field) In(v reflect.Value) reflect.Value { return v.FieldByIndex(f.index) }

// Walk calls visit for every value that is set in a body, objects before what
// they hold, with its place as an RFC 6901 pointer without the first slash.
func Walk(b Body, visit func(place string, f Field, v reflect.Value)) {
	if isBody(b) {
		walk(reflect.ValueOf(b), "", b.Kind().Fields(), false, func(place string, f *Field, v reflect.Value) { visit(place, *f, v) })
	}
}

// walk leaves out what holds no free text, where only that is asked for.
func walk(v reflect.Value, place string, fields []Field, free bool, visit func(string, *Field, reflect.Value)) {
	for i := range fields {
		f := &fields[i]
		if free && !f.free {
			continue
		}
		x := f.In(v)
		if x.IsZero() {
			continue
		}
		at := place + f.Name
		if !f.List {
			walkValue(x, at, f, free, visit)
			continue
		}
		for i := range x.Len() {
			walkValue(x.Index(i), at+"/"+strconv.Itoa(i), f, free, visit)
		}
	}
}

func walkValue(v reflect.Value, at string, f *Field, free bool, visit func(string, *Field, reflect.Value)) {
	visit(at, f, v)
	if f.Fields != nil {
		walk(v, at+"/", f.Fields, free, visit)
	}
}

// FreeText returns what people wrote freely in a body, each text once.
func FreeText(b Body) []string {
	var out []string
	if isBody(b) {
		walk(reflect.ValueOf(b), "", b.Kind().Fields(), true, func(_ string, f *Field, v reflect.Value) {
			if f.Fields == nil && !slices.Contains(out, v.String()) {
				out = append(out, v.String())
			}
		})
	}
	return out
}

// unread lists the places of a body that this program cannot read: a unit, a
// date, a number or a word of a later one.
func unread(b Body) []string {
	var out []string
	Walk(b, func(place string, f Field, v reflect.Value) {
		if f.fault(v) {
			out = append(out, place)
		}
	})
	return out
}

func (f Field) fault(v reflect.Value) bool {
	if words := f.Words(); words != nil {
		return !slices.Contains(words, v.String()) && v.String() != Unknown
	}
	if x, ok := v.Interface().(interface{ Fault() error }); ok {
		return x.Fault() != nil
	}
	return false
}
