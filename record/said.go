package record

import (
	"encoding"
	"fmt"
	"reflect"
	"strconv"
	"strings"
)

// Said is what the program has to say about a record: a code that never
// changes its meaning, and typed values. It is stored and compared in this
// form; only record/tell turns it into words of a language.
type Said struct {
	Code   string  `json:"code"` // lower-case letters, digits and hyphens, e.g. "sanded-before-cured"
	Values []Value `json:"values,omitzero"`
}

// Value is one value of something said. Type says how its texts are read:
//
//	count    a whole number
//	entry    the number of an entry in the journal
//	text     recorded free text
//	code     a word of the program's own, told by its code
//	figure   a reckoned number with its unit, e.g. "0.8 mm", "12 N/m"
//
// or the name of a type of this package: "Length", "Duration", "When",
// "Number", "Key", "Face" and every other closed list. A list has several
// texts; a value that is not known has none.
type Value struct {
	Name  string   `json:"name"`
	Type  string   `json:"type"`
	Texts []string `json:"texts,omitzero"`
}

// EntryRef is the number of an entry as a value of something said.
type EntryRef int64

// Code is a word of the program's own as a value of something said.
type Code string

// Figure is a reckoned number with its unit ("0.8 mm"), as a value of
// something said; a measured amount is said as what it is.
type Figure string

// With makes a value. Its Go type decides the type of the value: whole
// numbers, texts, [EntryRef], [Code], [Figure], measured amounts, [When],
// [Number], [Key], the closed lists of words, and slices of these. Anything
// else is a fault of the program, and panics.
func With(name string, v any) Value {
	r := reflect.ValueOf(v)
	if r.Kind() != reflect.Slice {
		kind, text := valueOf(r)
		if text == "" {
			return Value{Name: name, Type: kind}
		}
		return Value{name, kind, []string{text}}
	}
	kind, _ := valueOf(reflect.Zero(r.Type().Elem()))
	out := Value{Name: name, Type: kind}
	for i := range r.Len() {
		_, text := valueOf(r.Index(i))
		out.Texts = append(out.Texts, text)
	}
	return out
}

func valueOf(r reflect.Value) (kind, text string) {
	switch v := r.Interface().(type) {
	case int:
		return "count", strconv.Itoa(v)
	case int64:
		return "count", strconv.FormatInt(v, 10)
	case string:
		return "text", v
	case EntryRef:
		if v == 0 {
			return "entry", ""
		}
		return "entry", strconv.FormatInt(int64(v), 10)
	case Code:
		return "code", string(v)
	case Figure:
		return "figure", string(v)
	case encoding.TextMarshaler:
		b, err := v.MarshalText()
		if err != nil {
			panic("record: a value of something said cannot be written: " + err.Error())
		}
		return r.Type().Name(), string(b)
	}
	if r.Kind() == reflect.String && strings.HasSuffix(r.Type().PkgPath(), "/record") {
		return r.Type().Name(), r.String()
	}
	panic(fmt.Sprintf("record: a %s cannot be a value of something said", r.Type()))
}

// Say puts a code and its values together.
func Say(code string, values ...Value) Said { return Said{code, values} }

// Value returns a value by its name; its zero value if there is none.
func (s Said) Value(name string) Value {
	for _, v := range s.Values {
		if v.Name == name {
			return v
		}
	}
	return Value{}
}

// Text returns the first text of a value, empty when it is not known.
func (v Value) Text() string {
	if len(v.Texts) == 0 {
		return ""
	}
	return v.Texts[0]
}
