package record_test

import (
	"testing"

	"github.com/go-json-experiment/json"

	"backleaf/record"
)

func TestSaidIsCodeAndValues(t *testing.T) {
	cure, err := record.ParseDuration("36 h")
	if err != nil {
		t.Fatal(err)
	}
	s := record.Say("sanded-before-cured", record.With("entry", record.EntryRef(14)), record.With("cure", cure),
		record.With("faces", []record.Face{record.Front, record.Edges}), record.With("coats", 2), record.With("amount", record.Amount{}))
	got, err := json.Marshal(s)
	if err != nil {
		t.Fatal(err)
	}
	const want = `{"code":"sanded-before-cured","values":[{"name":"entry","type":"entry","texts":["14"]},{"name":"cure","type":"Duration","texts":["36 h"]},` +
		`{"name":"faces","type":"Face","texts":["front","edges"]},{"name":"coats","type":"count","texts":["2"]},{"name":"amount","type":"Amount"}]}`
	if string(got) != want {
		t.Errorf("\n got %s\nwant %s", got, want)
	}
	if s.Value("cure").Text() != "36 h" || s.Value("amount").Text() != "" || s.Value("nothing").Text() != "" {
		t.Error("values are not found by their names")
	}
}

func TestSaidRefusesWhatHasNoType(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a float was taken as a value")
		}
	}()
	record.With("x", 0.5)
}
