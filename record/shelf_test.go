package record_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/accept"
)

// journal is a book in memory: it takes entries as texts, checks them as a
// book does, and numbers them.
type journal struct {
	t       testing.TB
	entries []record.Entry
}

func (j *journal) try(text string) error {
	j.t.Helper()
	e, err := accept.Parse([]byte(text))
	if err != nil {
		return err
	}
	e.Seq = int64(len(j.entries) + 1)
	e.Written = when(j.t, fmt.Sprintf("2026-05-02T10:%02d:%02dZ", e.Seq/60%60, e.Seq%60))
	if e, err = accept.Bind(e, j, nil); err != nil {
		return err
	}
	if err := accept.Refers(e, j); err != nil {
		return err
	}
	j.entries = append(j.entries, e)
	return nil
}

// add returns the number of the entry.
func (j *journal) add(text string) int64 {
	j.t.Helper()
	if err := j.try(text); err != nil {
		j.t.Fatalf("%s: %v", text, err)
	}
	return int64(len(j.entries))
}

func (j *journal) fold() *record.Workshop {
	j.t.Helper()
	w, err := record.Fold(j.entries)
	if err != nil {
		j.t.Fatal(err)
	}
	return w
}

func (j *journal) StudioNow() (s record.Studio, ok bool) {
	for _, e := range j.entries {
		if b, is := e.Body.(record.Studio); is {
			s, ok = b, true
		}
	}
	return s, ok
}

func (j *journal) HasPanel(n record.Number) (bool, error) {
	for _, e := range j.entries {
		if _, cut := e.Body.(record.Cut); cut {
			for _, m := range e.Panels {
				if m == n {
					return true, nil
				}
			}
		}
	}
	return false, nil
}

func (j *journal) Versions(kind record.Kind, key record.Key) ([]accept.Version, error) {
	var out []accept.Version
	for _, e := range j.entries {
		if e.Kind() == kind && record.KeyOf(e.Body) == key {
			v := accept.Version{Seq: e.Seq, From: e.At, Written: e.Written}
			if !e.At.Known() {
				v.From = e.Written
			}
			out = append(out, v)
		}
	}
	return out, nil
}

func (j *journal) Lot(k record.Key) (record.Lot, bool, error) {
	for _, e := range j.entries {
		if l, is := e.Body.(record.Lot); is && l.Key == k {
			return l, true, nil
		}
	}
	return record.Lot{}, false, nil
}

func (j *journal) History(seq int64) (record.Entry, []record.Entry, bool, error) {
	if seq < 1 || seq > int64(len(j.entries)) {
		return record.Entry{}, nil, false, nil
	}
	var by []record.Entry
	for _, e := range j.entries {
		if a, is := e.Body.(record.Amended); is && a.Entry == seq {
			by = append(by, e)
		}
	}
	return j.entries[seq-1], by, true, nil
}

// Panels of the test journal: a, b and c are cut, d is not.
var a, b, c, d = number(1), number(2), number(3), number(4)

func number(serial int) record.Number {
	n, err := record.NewNumber("KB", 26, serial, "")
	if err != nil {
		panic(err)
	}
	return n
}

// stocked is a book with a studio (1), three materials (2 to 4), two lots (5,
// 6) and three panels cut (7).
func stocked(t testing.TB) *journal {
	j := &journal{t: t}
	j.add(`{"kind":"studio","maker":"A. Maker","mark":"KB"}`)
	j.add(`{"kind":"material","key":"ply","name":"Plywood","uses":["board"],"board":{"kind":"plywood","plies":3}}`)
	j.add(`{"kind":"material","key":"sealer","name":"Sealer","uses":["sealer"]}`)
	j.add(`{"kind":"material","key":"linen","name":"Linen","uses":["cloth"]}`)
	j.add(`{"kind":"lot","key":"tin","material":"sealer"}`)
	j.add(`{"kind":"lot","key":"sheet","material":"ply"}`)
	j.add(`{"kind":"cut","at":"2026-05-01","panels":` + names(a, b, c) + `,"batch":"may","size":"30 x 40 cm x 3 mm","board":"ply","board_lot":"sheet"}`)
	return j
}

func names(ns ...record.Number) string {
	var s []string
	for _, n := range ns {
		s = append(s, `"`+string(n)+`"`)
	}
	return "[" + strings.Join(s, ",") + "]"
}

func coat(rest string, ns ...record.Number) string {
	return `{"kind":"coat","panels":` + names(ns...) + `,` + rest + `}`
}

func TestReferences(t *testing.T) {
	j := stocked(t)
	j.add(coat(`"faces":["front"],"mix":[{"parts":1,"material":"sealer","lot":"tin"}],"wet_total":"90 g"`, a, b))      // 8
	j.add(`{"kind":"certificate-issued","panels":` + names(a) + `,"record_sha256":"` + strings.Repeat("0", 64) + `"}`) // 9
	j.add(`{"kind":"note","text":"x"}`)                                                                                // 10
	j.add(`{"kind":"handed-over","panels":` + names(a) + `,"how":"sale"}`)                                             // 11
	j.add(`{"kind":"amended","entry":8,"because":"x","change":{"tool":"roller"}}`)                                     // 12
	hex := strings.Repeat("0", 64)
	for _, c := range []struct{ in, field, why string }{
		{coat(`"faces":["front"]`, d), "panels/0", "there is no panel " + string(d)},
		{coat(`"faces":["front"]`, a, d), "panels/1", "there is no panel"},
		{`{"kind":"cut","panels":` + names(d, a) + `,"batch":"x","size":"30 x 40 cm"}`, "panels/1", "taken by another"},
		{`{"kind":"cut","panels":["KB26-0004-Z"],"batch":"x","size":"30 x 40 cm"}`, "panels/0", "last character"},
		{`{"kind":"cut","panels":` + names(d) + `,"batch":"x","size":"30 x 40 cm","board":"mdf"}`, "board", "no material mdf"},
		{`{"kind":"cut","panels":` + names(d) + `,"batch":"x","size":"30 x 40 cm","board":"ply","board_lot":"tin"}`, "board_lot", "lot tin is a lot of sealer, not of ply"},
		{coat(`"faces":["front"],"mix":[{"parts":1,"material":"sealer"},{"parts":1,"material":"glue"}]`, a), "mix/1/material", "no material glue"},
		{coat(`"faces":["front"],"mix":[{"parts":1,"material":"sealer","lot":"can"}]`, a), "mix/0/lot", "no lot can"},
		{`{"kind":"cloth","panels":` + names(a) + `,"faces":["front"],"cloth":"hemp"}`, "cloth", "no material hemp"},
		{`{"kind":"lot","key":"x","material":"glue"}`, "material", "no material glue"},
		{`{"kind":"lot","key":"tin","material":"sealer"}`, "key", "on the shelf already"},
		{`{"kind":"studio","maker":"A. Maker","mark":"KC"}`, "mark", "stays as it is"},
		{`{"kind":"studio","maker":"A. Maker","mark":"KB","naan":"13030"}`, "naan", "stays as it is"},
		{`{"kind":"amended","entry":99,"because":"x","change":{"tool":"x"}}`, "entry", "no entry E99"},
		{`{"kind":"amended","entry":8,"because":"x","change":{"tool":"x"},"panels":` + names(c) + `}`, "panels/0", "is not about"},
		{`{"kind":"amended","entry":8,"because":"x","change":{"colour":"x"}}`, "change/colour", "no such field"},
		{`{"kind":"amended","entry":8,"because":"x","change":{"faces":null}}`, "change/faces", "missing"},
		{`{"kind":"amended","entry":8,"because":"x","change":{"wet_each":"5 g"}}`, "change/wet_each", "not both"},
		{`{"kind":"amended","entry":8,"because":"x","change":{"mix":[{"parts":1,"material":"glue"}]}}`, "change/mix/0/material", "no material glue"},
		{`{"kind":"amended","entry":8,"because":"x","change":{"panels":` + names(a) + `}}`, "change/panels", "cannot be amended"},
		{`{"kind":"amended","entry":8,"because":"x","change":{"kind":"note"}}`, "change/kind", "cannot be amended"},
		{`{"kind":"amended","entry":3,"because":"x","change":{"key":"sealer-2"}}`, "change/key", "stays as it is"},
		{`{"kind":"amended","entry":1,"because":"x","change":{"maker":"B"}}`, "entry", "goes into a new entry"},
		{`{"kind":"amended","entry":12,"because":"x","change":{"because":"y"}}`, "entry", "not amended"},
		{`{"kind":"amended","entry":9,"because":"x","change":{"reason":"y"}}`, "entry", "its own entry"},
		{`{"kind":"withdrawn","entry":99,"because":"x"}`, "entry", "no entry E99"},
		{`{"kind":"withdrawn","entry":7,"because":"x"}`, "entry", "discard the panel"},
		{`{"kind":"withdrawn","entry":3,"because":"x"}`, "entry", "amend it instead"},
		{`{"kind":"withdrawn","entry":9,"because":"x"}`, "entry", "its own entry"},
		{`{"kind":"withdrawn","entry":8,"because":"x","panels":` + names(a, c) + `}`, "panels/1", "is not about"},
		{`{"kind":"withdrawn","entry":10,"because":"x","panels":` + names(a) + `}`, "panels/0", "is not about"},
		{`{"kind":"certificate-withdrawn","panels":` + names(a) + `,"certificate":8,"because":"x"}`, "certificate", "of kind coat"},
		{`{"kind":"certificate-withdrawn","panels":` + names(b) + `,"certificate":9,"because":"x"}`, "panels/0", "is not about"},
		{`{"kind":"certificate-issued","panels":` + names(a) + `,"record_sha256":"` + hex + `","replaces":8}`, "replaces", "of kind coat"},
		{`{"kind":"private-erased","entry":8,"because":"x"}`, "entry", "of kind coat"},
	} {
		err := j.try(c.in)
		var fe *record.FieldError
		if !errors.As(err, &fe) || fe.Field != c.field || !strings.Contains(fe.Why, c.why) {
			t.Errorf("%s: %v, expected %s: %s", c.in, err, c.field, c.why)
		}
	}
	for _, in := range []string{
		coat(`"faces":["front"],"mix":[{"parts":1,"material":"unknown","lot":"unknown"}]`, a),
		`{"kind":"cut","panels":` + names(d) + `,"batch":"x","size":"30 x 40 cm","board":"unknown","board_lot":"unknown"}`,
		`{"kind":"cloth","panels":` + names(a) + `,"faces":["front"]}`,
		`{"kind":"private-erased","entry":11,"because":"x"}`, `{"kind":"private-erased","entry":5,"because":"x"}`,
		`{"kind":"withdrawn","entry":12,"because":"x"}`, `{"kind":"withdrawn","entry":10,"because":"x"}`,
		`{"kind":"studio","maker":"B. Maker","mark":"KB"}`,
	} {
		if err := j.try(in); err != nil {
			t.Errorf("%s: %v", in, err)
		}
	}
	empty := &journal{t: t}
	if err := empty.try(`{"kind":"note","text":"x"}`); err == nil || !strings.Contains(err.Error(), "opens the studio") {
		t.Errorf("a note in an empty book: %v", err)
	}
}

// The published examples could be written into an empty book, one by one.
func TestExamplesRefer(t *testing.T) {
	j := &journal{t: t}
	for _, e := range examples(t) {
		if err := accept.Refers(e, j); err != nil {
			t.Fatalf("entry %d: %v", e.Seq, err)
		}
		j.entries = append(j.entries, e)
	}
	materials, lots := record.Shelf(j.entries[11].Body)
	if fmt.Sprint(materials, lots) != "[linen-fine sealer-1] [bolt-1 tin-1]" {
		t.Errorf("the cloth mentions %v and %v", materials, lots)
	}
	if m, l := record.Shelf(j.entries[18].Body); m != nil || l != nil {
		t.Errorf("unknown things are mentioned: %v %v", m, l)
	}
}
