package deed_test

import (
	"slices"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/deed"
)

// A record of a stranger that asks for endless work is not read.
func TestRecordIsBounded(t *testing.T) {
	k := testKey(t, 1)
	honest := string(made(t, newBook(t, k), "KB26-0001-K", &k).Record)
	at := strings.Index(honest, `"entries":[`) + len(`"entries":[`)
	for name, c := range map[string]struct {
		entry string
		n     int
	}{
		"entries":     {`{"at":"2026-01-01","key":"a","kind":"maker","name":"x","seq":1,"v":1,"written":"2026-03-01T10:00:00Z"},`, 4001},
		"keys":        {`{"at":"2026-01-01","fingerprint":"` + strings.Repeat("0", 64) + `","kind":"key-lost","seq":1,"v":1,"written":"2026-03-01T10:00:00Z"},`, 101},
		"a list":      {`{"at":"2026-01-01","kind":"note","panels":["%s"],"seq":1,"studio_as":[1` + strings.Repeat(",1", 500) + `],"text":"a","v":1,"written":"2026-03-01T10:00:00Z"},`, 1},
		"acts":        {`{"at":"2026-01-01","kind":"note","panels":["%s"],"seq":1,"text":"a","v":1,"written":"2026-03-01T10:00:00Z"},`, 2001},
		"corrections": {`{"because":"x","entry":1,"kind":"withdrawn","panels":["%s"],"seq":1,"v":1,"written":"2026-03-01T10:00:00Z"},`, 1001},
	} {
		var more strings.Builder
		for range c.n {
			more.WriteString(strings.ReplaceAll(c.entry, "%s", string(first)))
		}
		_, err := deed.Read([]byte(honest[:at] + more.String() + honest[at:]))
		if err == nil || !strings.Contains(err.Error(), "more than ") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A record that could not be read back is refused when it is made.
func TestMadeWithinBounds(t *testing.T) {
	k := testKey(t, 1)
	b := newBook(t, k)
	put(t, b, slices.Repeat([]record.Entry{{Panels: []record.Number{third}, Body: record.Note{Text: "once more"}}}, 2000)...)
	w, err := b.WorkshopOf(ctx, third)
	if err != nil {
		t.Fatal(err)
	}
	if d, err := deed.Make(ctx, b, w, w.Panel(third), nil, &k, clock); err == nil || !strings.Contains(err.Error(), "cannot make the record of KB26-0003-4: it has more than 4000 entries, 2000 acts") || d.Record != nil {
		t.Errorf("%v, %d bytes", err, len(d.Record))
	}
}
