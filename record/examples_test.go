package record_test

import (
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/accept"
)

// exampleTexts returns the published example file: a small journal with at
// least one full entry of every kind.
func exampleTexts(t testing.TB) []jsontext.Value {
	t.Helper()
	b, err := os.ReadFile("../schema/examples/entries.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Entries []jsontext.Value `json:"entries"`
	}
	if err := json.Unmarshal(b, &file); err != nil {
		t.Fatal(err)
	}
	return file.Entries
}

// examples returns the same, decoded.
func examples(t testing.TB) []record.Entry {
	t.Helper()
	var es []record.Entry
	for _, text := range exampleTexts(t) {
		e, err := accept.Parse(text)
		if err != nil {
			t.Fatalf("%s: %v", text, err)
		}
		es = append(es, e)
	}
	return es
}

// Every field of every kind stands in some example, so that what is tested
// over the examples is tested for every field.
func TestExamplesAreFull(t *testing.T) {
	said := map[string]bool{}
	for _, e := range examples(t) {
		mark(said, string(e.Kind()), reflect.ValueOf(e.Body))
	}
	for _, k := range record.Kinds() {
		b, _ := record.Blank(k)
		for _, f := range fieldsOf(string(k), reflect.TypeOf(b)) {
			if !said[f] {
				t.Errorf("no example has %s", f)
			}
		}
	}
}

func mark(said map[string]bool, path string, v reflect.Value) {
	if v.Kind() == reflect.Slice && v.Type() != reflect.TypeFor[jsontext.Value]() {
		for i := range v.Len() {
			mark(said, path, v.Index(i))
		}
		return
	}
	if isObject(v.Type()) {
		for i := range v.NumField() {
			f := v.Type().Field(i)
			if !v.Field(i).IsZero() {
				mark(said, join(path, f), v.Field(i))
			}
		}
		return
	}
	said[path] = true
}

func fieldsOf(path string, t reflect.Type) []string {
	if t.Kind() == reflect.Slice && t != reflect.TypeFor[jsontext.Value]() {
		t = t.Elem()
	}
	if !isObject(t) {
		return []string{path}
	}
	var out []string
	for i := range t.NumField() {
		out = append(out, fieldsOf(join(path, t.Field(i)), t.Field(i).Type)...)
	}
	return out
}

func join(path string, f reflect.StructField) string {
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	if name == "" {
		return f.Name // what all coatings share need stand in one of them only
	}
	return path + "/" + name
}

func isObject(t reflect.Type) bool {
	_, text := t.MethodByName("MarshalText")
	return t.Kind() == reflect.Struct && !text
}
