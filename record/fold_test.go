package record_test

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/invented"
)

// tool tells the tool of the coat that stands for each panel, "-" for none.
func tools(w *record.Workshop) string {
	var out []string
	for _, p := range w.Panels {
		c, ok := record.Latest[record.Coat](p)
		if !ok {
			c.Body.Tool = "-"
		}
		out = append(out, c.Body.Tool)
	}
	return strings.Join(out, " ")
}

func TestCorrections(t *testing.T) {
	j := stocked(t)
	j.add(coat(`"faces":["front"],"tool":"brush","note":"thin"`, a, b, c)) // 8
	steps := []struct{ in, tools string }{
		{`{"kind":"amended","entry":8,"because":"it was another","change":{"tool":"roller"}}`, "roller roller roller"},                         // 9
		{`{"kind":"amended","entry":8,"because":"not this one","change":{"tool":"sponge"},"panels":` + names(b) + `}`, "roller sponge roller"}, // 10
		{`{"kind":"withdrawn","entry":8,"because":"never done","panels":` + names(c) + `}`, "roller sponge -"},                                 // 11
		{`{"kind":"withdrawn","entry":9,"because":"brush after all","panels":` + names(a) + `}`, ""},                                           // refused: 9 names no panels
		{`{"kind":"withdrawn","entry":9,"because":"brush after all"}`, "brush sponge -"},                                                       // 12
		{`{"kind":"withdrawn","entry":11,"because":"it was done"}`, "brush sponge brush"},                                                      // 13
		{`{"kind":"withdrawn","entry":13,"because":"no, it was not"}`, "brush sponge -"},                                                       // 14
		{`{"kind":"withdrawn","entry":12,"because":"no brush"}`, "roller sponge -"},                                                            // 15
	}
	for _, s := range steps {
		err := j.try(s.in)
		if (err == nil) != (s.tools != "") {
			t.Fatalf("%s: %v", s.in, err)
		}
		if s.tools == "" {
			continue
		}
		if got := tools(j.fold()); got != s.tools {
			t.Errorf("after %s: %s, expected %s", s.in, got, s.tools)
		}
	}
	w := j.fold()
	got := w.Panel(b).Corrections
	want := []record.Correction{
		{Seq: 9, Of: 8, Kind: "coat", Written: got[0].Written, Because: "it was another", Amends: true, Changes: []record.Change{{Field: "tool", Was: `"brush"`, Now: `"roller"`}}},
		{Seq: 10, Of: 8, Kind: "coat", Written: got[1].Written, Because: "not this one", Amends: true, Changes: []record.Change{{Field: "tool", Was: `"roller"`, Now: `"sponge"`}}},
	}
	if !reflect.DeepEqual(got, want) || got[0].Withdrawal() {
		t.Errorf("%+v", got)
	}
	gone := w.Panel(c).Corrections
	if len(gone) != 2 || !gone[1].Withdrawal() || gone[1].Because != "never done" || gone[1].Of != 8 {
		t.Errorf("%+v", gone)
	}
}

func TestAmendments(t *testing.T) {
	j := stocked(t)
	cloth := j.add(`{"kind":"cloth","at":"2026-05-02","panels":` + names(a) + `,"faces":["front"],"cloth":"linen","note":"wet"}`)
	amend := func(entry int64, change string) error {
		return j.try(fmt.Sprintf(`{"kind":"amended","entry":%d,"because":"x","change":%s}`, entry, change))
	}
	for _, c := range []struct {
		entry  int64
		change string
	}{
		{cloth, `{"at":"2026-05-03","note":null}`},
		{cloth, `{"wet_through":"yes","wet_total":"80 g"}`},
		{cloth, `{"note":null}`},                    // says nothing new
		{2, `{"board":{"plies":null,"kind":null}}`}, // a merge patch reaches inside
		{2, `{"board":{"kind":"mdf"}}`},
		{5, `{"producer_lot":"A 7"}`},
		{7, `{"size":"8 x 10 x 1/8 in","batch":"june"}`},
	} {
		if err := amend(c.entry, c.change); err != nil {
			t.Fatalf("%d %s: %v", c.entry, c.change, err)
		}
	}
	w := j.fold()
	p := w.Panel(a)
	got, _ := record.Latest[record.ClothLaid](p)
	if got.At.String() != "2026-05-03" || got.Body.Note != "" || got.Body.WetThrough != "yes" || got.Body.WetTotal.String() != "80 g" || got.Body.Cloth != "linen" {
		t.Errorf("%+v", got)
	}
	if len(got.Corrections) != 2 {
		t.Errorf("an amendment without effect is told: %+v", got.Corrections)
	}
	first := []record.Change{{Field: "at", Was: `"2026-05-02"`, Now: `"2026-05-03"`}, {Field: "note", Was: `"wet"`}}
	if !reflect.DeepEqual(got.Corrections[0].Changes, first) {
		t.Errorf("%+v", got.Corrections[0].Changes)
	}
	if m, ok := w.Material("ply", nil); !ok || m.Board.Kind != record.MDF || m.Board.Plies != 0 {
		t.Errorf("%+v", m)
	}
	if l, ok := w.Lot("tin"); !ok || l.MakerLot != "A 7" || len(w.Lots[0].Corrections) != 1 {
		t.Errorf("%+v", l)
	}
	if p.Batch != "june" || p.Size().String() != "8 x 10 x 1/8 in" || len(w.Batch("june")) != 3 || w.Batch("may") != nil {
		t.Errorf("%s %s", p.Batch, p.Size())
	}
	// What the entries said first is still there.
	if j.entries[cloth-1].Body.(record.ClothLaid).Note != "wet" {
		t.Error("folding changed an entry")
	}
}

// An amendment on which another stands cannot be withdrawn alone; where another
// program let that happen, folding judges nothing and both amounts are told.
func TestAmendmentLeftWithoutGround(t *testing.T) {
	j := stocked(t)
	j.add(coat(`"faces":["front"],"wet_total":"90 g"`, a)) // 8
	j.add(`{"kind":"amended","entry":8,"because":"x","change":{"wet_total":null}}`)
	if err := j.try(`{"kind":"amended","entry":8,"because":"x","change":{"wet_each":"30 g"}}`); err == nil {
		t.Fatal("a change that does not fit the entry by itself was accepted")
	}
	e, err := accept.Parse([]byte(`{"kind":"amended","entry":8,"because":"per panel","change":{"wet_each":"30 g"}}`))
	if err != nil {
		t.Fatal(err)
	}
	e.Seq = 10
	j.entries = append(j.entries, e)
	if c, _ := record.Latest[record.Coat](j.fold().Panel(a)); c.Body.WetEach.String() != "30 g" {
		t.Errorf("%+v", c)
	}
	const withdrawal = `{"kind":"withdrawn","entry":9,"because":"x"}`
	if err := j.try(withdrawal); err == nil || !strings.Contains(err.Error(), "not both") {
		t.Fatalf("an amendment was taken from under another: %v", err)
	}
	if e, err = accept.Parse([]byte(withdrawal)); err != nil {
		t.Fatal(err)
	}
	e.Seq = 11
	j.entries = append(j.entries, e)
	p := j.fold().Panel(a)
	c, ok := record.Latest[record.Coat](p)
	if !ok || c.Body.WetTotal.String() != "90 g" || c.Body.WetEach.String() != "30 g" || len(c.Corrections) != 1 || p.Newer != nil {
		t.Fatalf("%+v", c)
	}
}

func TestFoldIsPure(t *testing.T) {
	es := examples(t)
	before := fmt.Sprintf("%#v", es)
	one, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	for range 20 { // map order differs from run to run
		two, err := record.Fold(examples(t))
		if err != nil || !reflect.DeepEqual(one, two) {
			t.Fatalf("the same entries made other panels: %v", err)
		}
	}
	if fmt.Sprintf("%#v", es) != before {
		t.Error("folding changed the entries")
	}
	if one.Last != int64(len(es)) || one.Written != es[len(es)-1].Written || one.Studio.NAAN != "99999" || len(one.Panels) != 3 || len(one.Keys) != 3 || len(one.Climate) != 1 {
		t.Errorf("%d %s %d", one.Last, one.Written, len(one.Keys))
	}
}

// A part of a journal makes the same panel as the whole, as long as what it
// refers to is there; entries about several panels lose the others.
func TestFoldPart(t *testing.T) {
	es := examples(t)
	whole, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range whole.Panels {
		var part []record.Entry
		for _, e := range es {
			if len(e.Panels) == 0 || slices.Contains(e.Panels, p.Number) {
				part = append(part, e)
			}
		}
		some, err := record.Fold(part)
		if err != nil {
			t.Fatalf("%s: %v", p.Number, err)
		}
		if got := some.Panel(p.Number); !reflect.DeepEqual(p, got) {
			t.Errorf("%s differs when only its own entries are read:\n%+v\n%+v", p.Number, p, got)
		}
		if !reflect.DeepEqual(whole.Gaps(p), some.Gaps(some.Panel(p.Number))) {
			t.Errorf("%s has other gaps when only its own entries are read", p.Number)
		}
	}
}

func TestFoldRefuses(t *testing.T) {
	j := stocked(t)
	j.add(coat(`"faces":["front"]`, a))
	twice := slices.Clone(j.entries)
	again := twice[6]
	again.Seq = 20
	for name, es := range map[string][]record.Entry{
		"out of order": {j.entries[1], j.entries[0]}, "the same place": {j.entries[0], j.entries[0]},
		"no such panel": {j.entries[0], j.entries[7]}, "cut twice": append(twice, again),
	} {
		if _, err := record.Fold(es); err == nil {
			t.Errorf("%s: folded", name)
		}
	}
	if w, err := record.Fold(nil); err != nil || w.Last != 0 {
		t.Errorf("nothing: %v", err)
	}
}

func BenchmarkFold(b *testing.B) {
	j := stocked(b)
	es := slices.Clone(j.entries)
	var all []record.Number
	for i := range 1000 {
		all = append(all, number(100+i))
	}
	cut, _ := accept.Parse([]byte(`{"kind":"cut","at":"2026-05-01","panels":["` + string(number(9)) + `"],"batch":"may","size":"30 x 40 cm"}`))
	one, _ := accept.Parse([]byte(coat(`"at":"2026-05-02T10:00:00Z","faces":["front","back"]`, a)))
	fix, _ := accept.Parse([]byte(`{"kind":"amended","entry":1,"because":"x","change":{"tool":"roller"}}`))
	cut.Panels = all
	for i := range 10000 {
		e := one
		switch {
		case i == 0:
			e = cut
		case i%50 == 0: // two in a hundred are corrections
			e = fix
			body := e.Body.(record.Amended)
			body.Entry = int64(len(es))
			e.Body = body
		default:
			from := i * 14 % 980
			e.Panels = all[from : from+14]
		}
		e.Seq = int64(len(es) + 1)
		es = append(es, e)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := record.Fold(es); err != nil {
			b.Fatal(err)
		}
	}
}

// One panel folded alone is what it is among all the others.
func TestFoldOfOne(t *testing.T) {
	entries := slices.Collect(invented.Journal(3, 100))
	for i := range entries {
		entries[i].Seq = int64(i + 1)
	}
	all, err := record.Fold(entries)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range all.Panels {
		w, err := record.Fold(entries, p.Number)
		if err != nil {
			t.Fatal(err)
		}
		if len(w.Panels) != 1 || !reflect.DeepEqual(w.Panels[0], p) {
			t.Errorf("%s differs where it is folded alone", p.Number)
		}
	}
}
