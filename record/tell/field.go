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
func (c *Catalogue) field(k record.Kind, name string, text string) string {
	if text == "" {
		return string(c.Lines.T("not-recorded"))
	}
	if f, ok := c.fieldOf(k, name, text); ok {
		t := f.Type
		if f.List {
			t = reflect.SliceOf(t)
		}
		v := reflect.New(t)
		if json.Unmarshal([]byte(text), v.Interface()) == nil {
			return c.value(c.fieldValue(k, name, f, v.Elem()), "exact") // it may be the seconds that were changed
		}
	}
	return c.plain(k, name, jsontext.Value(text))
}

// fieldOf finds a field of a kind, or of what every entry has. An amendment does
// not say of which kind: a list of objects is alike in all, and a word is of the
// kind that has it.
func (c *Catalogue) fieldOf(k record.Kind, name, text string) (record.Field, bool) {
	if name == "at" || name == "written" {
		return record.Field{Name: name, Type: reflect.TypeFor[record.When]()}, true
	}
	kinds := []record.Kind{k}
	if k == "" {
		kinds = record.Kinds()
	}
	for _, of := range kinds {
		for _, f := range of.Fields() {
			_, known := c.lookUp(f.Type.Name(), strings.Trim(text, `"`))
			if f.Name == name && (k != "" || known || f.List && f.Fields != nil || strings.HasSuffix(name, "_as")) {
				return f, true
			}
		}
	}
	return record.Field{}, false
}

// plain tells a JSON value whose type is not known: texts and numbers as they
// are, members by their names.
func (c *Catalogue) plain(k record.Kind, path string, text jsontext.Value) string {
	var list []jsontext.Value
	var members map[string]jsontext.Value
	var s string
	switch {
	case json.Unmarshal(text, &s) == nil:
		return s
	case json.Unmarshal(text, &list) == nil:
		var out []string
		for _, x := range list {
			out = append(out, c.plain(k, path, x))
		}
		return c.List(out)
	case json.Unmarshal(text, &members) == nil && members != nil:
		var out []string
		for _, name := range slices.Sorted(maps.Keys(members)) {
			out = append(out, c.Join.Named.With("name", c.FieldName(k, path+"."+name), "value", c.plain(k, path+"."+name, members[name])))
		}
		return c.List(out)
	}
	return string(text)
}

// change tells the merge patch of an amendment of a kind of entry.
func (c *Catalogue) change(k record.Kind, patch jsontext.Value) string {
	var fields map[string]jsontext.Value
	if json.Unmarshal(patch, &fields) != nil {
		return string(patch)
	}
	var out []string
	for _, name := range slices.Sorted(maps.Keys(fields)) {
		now, beside := "", strings.TrimSuffix(strings.TrimSuffix(name, "_kind"), "_as")
		if _, told := fields[beside]; told && beside != name {
			continue // it follows from what is told
		}
		if fields[name].Kind() != 'n' {
			now = string(fields[name])
		}
		out = append(out, c.Join.Pair.With("name", c.FieldName(k, name), "value", c.field(k, name, now)))
	}
	return c.Clauses(out)
}

// fields are the values of the fields of a body or object.
func (c *Catalogue) fields(k record.Kind, under string, fields []record.Field, v reflect.Value) []record.Value {
	var out []record.Value
	for _, f := range fields {
		_, name, _ := strings.Cut(f.Go, ".")
		out = append(out, c.fieldValue(k, under+f.Name, f, v.FieldByName(name)))
	}
	for i, word := range out {
		text, paired := strings.CutSuffix(word.Name, "_kind")
		if j := slices.IndexFunc(out, func(v record.Value) bool { return v.Name == text }); paired && j >= 0 {
			if said := c.beside(out[j], word); said != "" {
				out[j] = Told(text, said)
			}
			out[i].Texts = nil
		}
	}
	return out
}

// beside tells a recorded text and the word of a closed list that stands beside
// it: the text as it is, with the word where it says more in the language.
func (c *Catalogue) beside(text, word record.Value) string {
	said, w := text.Text(), c.wordOf(word, 0).Text
	switch {
	case said == record.Unknown || said == "" && len(word.Texts) == 0:
		return ""
	case said == "":
		return c.value(word, "")
	case w == "" || word.Text() == "other" || strings.Contains(strings.ToLower(said), strings.ToLower(w)):
		return said
	case strings.ReplaceAll(strings.ToLower(said), " ", "-") == word.Text():
		return w
	}
	return c.Join.Bracket.With("text", said, "aside", w)
}

// Beside tells a recorded text and the word of a closed list beside it: "fresh
// blade (knife)", "distilled water".
func (c *Catalogue) Beside(text string, word any) string {
	t, w := record.With("text", text), record.With("word", word)
	if said := c.beside(t, w); said != "" {
		return said
	}
	return c.value(t, "")
}

// digest is the type of texts of which the beginning is enough.
const digest = "digest"

// fieldValue makes a typed value of a field at a path. What holds objects is
// told at once.
func (c *Catalogue) fieldValue(k record.Kind, path string, f record.Field, v reflect.Value) record.Value {
	if f.Fields != nil {
		return c.objects(k, path, f, v)
	}
	switch x := v.Interface().(type) {
	case bool:
		return record.With(f.Name, map[bool]record.Answer{true: record.Yes}[x])
	case jsontext.Value:
		if len(x) == 0 {
			return record.Value{Name: f.Name, Type: told}
		}
		return Told(f.Name, c.change("", x))
	case int64:
		if strings.HasPrefix(f.Ref, "entry") || f.Name == "entry" || f.Name == "as_of" {
			return record.With(f.Name, record.EntryRef(x))
		}
		if x == 0 {
			return record.Value{Name: f.Name, Type: "count"}
		}
	case []int64:
		var refs []record.EntryRef
		for _, n := range x {
			refs = append(refs, record.EntryRef(n))
		}
		return record.With(f.Name, refs)
	}
	out := record.With(f.Name, v.Interface())
	if f.Is == "sha256" || f.Is == "base64" {
		out.Type = digest
	}
	return out
}

// objects tells the objects in a field.
func (c *Catalogue) objects(k record.Kind, path string, f record.Field, v reflect.Value) record.Value {
	out := record.Value{Name: f.Name, Type: told}
	switch {
	case v.IsZero():
	case f.List:
		for i := range v.Len() {
			out.Texts = append(out.Texts, c.object(k, path, f, v.Index(i), v.Len()))
		}
	default:
		out.Texts = []string{c.object(k, path, f, v, 1)}
	}
	return out
}

// object tells one of so many objects in a field: by the message of its type,
// then every other field by its name.
func (c *Catalogue) object(k record.Kind, path string, f record.Field, v reflect.Value, of int) string {
	said := record.Said{Values: append([]record.Value{record.With("of", of)}, c.fields(k, path+".", f.Fields, v)...)}
	line, told := c.telling(c.Objects[f.Type.Name()], said)
	var out []string
	if line != "" {
		out = append(out, line)
	}
	for _, x := range said.Values[1:] {
		if tells(x) && !told[x.Name] {
			out = append(out, c.Join.Named.With("name", c.FieldName(k, path+"."+x.Name), "value", c.value(x, "")))
		}
	}
	return c.Series(out)
}

// tells reports that a value says something to a reader: digests and keys do
// not, and which entry describes a material as it was meant only where that is
// not known for certain.
func tells(v record.Value) bool {
	return len(v.Texts) > 0 && v.Type != digest && v.Name != "year" && v.Name != "journal" && (!strings.HasSuffix(v.Name, "_as") || len(v.Texts) > 1)
}
