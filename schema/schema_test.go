package schema_test

import (
	"bytes"
	"flag"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/go-json-experiment/json"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"backleaf/record/accept"
	"backleaf/record/toolcheck"
	"backleaf/schema"
)

var update = flag.Bool("update", false, "write entry.schema.json anew from the types")

// The published schema of an entry is what the types say.
func TestEntrySchema(t *testing.T) {
	want := entrySchema(t)
	if *update {
		if err := os.WriteFile("entry.schema.json", want, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if !bytes.Equal(schema.Entry(), want) {
		t.Error("entry.schema.json is not what the types say: run go test ./schema -update and read the difference")
	}
}

func compile(t testing.TB, name string) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	c.DefaultDraft(jsonschema.Draft2020)
	for n, b := range map[string][]byte{"entry": schema.Entry(), "import": schema.Import(), "record": schema.Record()} {
		v, err := jsonschema.UnmarshalJSON(bytes.NewReader(b))
		if err != nil {
			t.Fatal(err)
		}
		if err := c.AddResource("file:///"+n+".schema.json", v); err != nil {
			t.Fatal(err)
		}
	}
	s, err := c.Compile("file:///" + name + ".schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func valid(t testing.TB, s *jsonschema.Schema, text []byte) error {
	t.Helper()
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	return s.Validate(v)
}

func exampleEntries(t testing.TB) []map[string]any {
	t.Helper()
	var file struct {
		Entries []map[string]any `json:"entries"`
	}
	if err := json.Unmarshal(schema.Example(), &file, json.RejectUnknownMembers(false)); err != nil {
		t.Fatal(err)
	}
	return file.Entries
}

func TestExamples(t *testing.T) {
	if err := valid(t, compile(t, "import"), schema.Example()); err != nil {
		t.Errorf("%v", err)
	}
	s := compile(t, "entry")
	for _, e := range exampleEntries(t) {
		if err := valid(t, s, text(t, e)); err != nil {
			t.Errorf("%v: %v", e, err)
		}
	}
}

func text(t testing.TB, v any) []byte {
	t.Helper()
	b, err := json.Marshal(v, json.Deterministic(true))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestBroken(t *testing.T) {
	entries := compile(t, "import")
	for name, in := range map[string]string{
		"no head":            `{"v":1,"entries":[]}`,
		"another file":       `{"backleaf":"labels","v":1,"entries":[]}`,
		"another version":    `{"backleaf":"entries","v":2,"entries":[]}`,
		"an addition":        `{"backleaf":"entries","v":1,"entries":[],"by":"me"}`,
		"no list":            `{"backleaf":"entries","v":1,"entries":{}}`,
		"no kind":            `{"backleaf":"entries","v":1,"entries":[{"text":"x"}]}`,
		"a kind of another":  `{"backleaf":"entries","v":1,"entries":[{"kind":"gilded","text":"x"}]}`,
		"a field of another": `{"backleaf":"entries","v":1,"entries":[{"kind":"note","text":"x","faces":["front"]}]}`,
	} {
		if valid(t, entries, []byte(in)) == nil {
			t.Errorf("%s passes", name)
		}
	}
}

// beyond are the reasons for which the reader refuses what has the right
// shape: relations between fields, and the calendar.
var beyond = []string{"belong together", "not both", "is not among the faces", "ends before it begins", "a reading has", "expected something like", "EDTF", "cannot be the name", "at most 10000 parts", "a mass or a volume", "there is no time zone"}

// Schema and reader accept the same entries: every value of every example is
// taken away, replaced and added to, and both must agree.
func TestAgreement(t *testing.T) {
	s := compile(t, "entry")
	seen := 0
	every := toolcheck.Rounds(1, 5)
	check := func(e any) {
		t.Helper()
		if seen++; seen%every != 0 {
			return
		}
		b := text(t, e)
		_, err := accept.Parse(b)
		verr := valid(t, s, b)
		if (err == nil) == (verr == nil) {
			return
		}
		if err != nil && slices.ContainsFunc(beyond, func(w string) bool { return strings.Contains(err.Error(), w) }) {
			return
		}
		t.Errorf("%s\nreader: %v\nschema: %v", b, err, verr)
	}
	for _, e := range exampleEntries(t) {
		check(e)
		mutate(any(e), func() { check(e) })
	}
	if seen < 5000 {
		t.Errorf("only %d entries were compared", seen)
	}
}

var substitutes = []any{nil, "", " a", "a ", "a", "a\nb", "a\tb", "a\u202eb", "\u00a0a", "Ā", "unknown", "other", "front", "3 mm", "-3 mm", "3 g", "5 %", "2026~", "KB26-0142-1", "x x",
	strings.Repeat("a", 301), 0.0, 1.0, -1.0, 1.5, 9007199254740992.0, true, false, []any{}, []any{"front"}, []any{"front", "front"}, map[string]any{}, map[string]any{"zzz": 1.0}}

// mutate changes a value in place, in every way once, and calls try each time.
func mutate(v any, try func()) {
	switch v := v.(type) {
	case map[string]any:
		v["zzz"] = "a"
		try()
		delete(v, "zzz")
		for name, old := range v {
			delete(v, name)
			try()
			for _, sub := range substitutes {
				v[name] = sub
				try()
			}
			if slices.Contains([]string{"text", "note", "remarks", "hazard", "statement"}, name) {
				v[name] = strings.Repeat("a", 4001)
				try()
			}
			v[name] = old
			mutate(old, try)
		}
	case []any:
		for i, old := range v {
			for _, sub := range substitutes {
				v[i] = sub
				try()
			}
			v[i] = old
			mutate(old, try)
		}
	}
}
