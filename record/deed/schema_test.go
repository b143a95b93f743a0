package deed_test

import (
	"bytes"
	"slices"
	"testing"

	"github.com/go-json-experiment/json"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"backleaf/record"
	"backleaf/schema"
)

func compile(t testing.TB) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	for n, b := range map[string][]byte{"entry": schema.Entry(), "record": schema.Record()} {
		v, err := jsonschema.UnmarshalJSON(bytes.NewReader(b))
		if err != nil {
			t.Fatal(err)
		}
		if err := c.AddResource("file:///"+n+".schema.json", v); err != nil {
			t.Fatal(err)
		}
	}
	s, err := c.Compile("file:///record.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func valid(t testing.TB, s *jsonschema.Schema, data []byte) error {
	t.Helper()
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return s.Validate(v)
}

// Every record that is made fits the published schema, with and without
// corrections and gaps.
func TestSchema(t *testing.T) {
	s := compile(t)
	k := testKey(t, 1)
	b := newBook(t, k)
	for _, n := range []record.Number{first, second, third} {
		if err := valid(t, s, made(t, b, n, &k).Record); err != nil {
			t.Errorf("%s: %v", n, err)
		}
	}
}

// The schema is strict: at any place no member may be added, none that must
// be there left out, and nothing have another type.
func TestSchemaIsStrict(t *testing.T) {
	s := compile(t)
	k := testKey(t, 1)
	var v map[string]any
	if err := json.Unmarshal(made(t, newBook(t, k), first, &k).Record, &v); err != nil {
		t.Fatal(err)
	}
	optional := []string{"findings/entries", "findings/remedy", "gaps/entry", "gaps/unknown", "said/values", "values/texts", "changes/was", "changes/now", "studio/place", "studio/journal", "studio/made_by", "studio/painted_by"}
	seen := 0
	refused := func(what string) {
		t.Helper()
		data, err := json.Marshal(v, json.Deterministic(true))
		if err != nil {
			t.Fatal(err)
		}
		seen++
		if valid(t, s, data) == nil {
			t.Errorf("%s passes", what)
		}
	}
	var walk func(name string, x any)
	walk = func(name string, x any) {
		switch x := x.(type) {
		case map[string]any:
			x["zzz"] = "a"
			refused(name + " with another member")
			delete(x, "zzz")
			for m, old := range x {
				if !slices.Contains(optional, name+"/"+m) {
					delete(x, m)
					refused(name + " without " + m)
				}
				if name != "changes" || m == "field" {
					x[m] = 1.5
					refused(name + " with another " + m)
				}
				x[m] = old
				// Package schema sees to entries; what changed may be anything.
				if !slices.Contains([]string{"entries", "effective", "was", "now"}, m) {
					walk(m, old)
				}
			}
		case []any:
			for i, old := range x {
				if name != "texts" && name != "made_by" {
					x[i] = "a"
					refused(name + " with another item")
					x[i] = old
				}
				walk(name, old)
			}
		}
	}
	walk("record", v)
	if seen < 100 {
		t.Errorf("only %d changes were tried", seen)
	}
}
