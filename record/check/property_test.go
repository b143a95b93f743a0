package check_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/check"
)

// Turning a record round, front for back, keeps every outcome and mirrors the
// bow.
func TestMirror(t *testing.T) {
	for _, h := range histories(t) {
		var turned []record.Entry
		for _, e := range h.entries {
			turned = append(turned, turn(t, e))
		}
		was, is := judge(t, h.entries, h.now), judge(t, turned, h.now)
		for rule, f := range was {
			if is[rule].Outcome != f.Outcome || is[rule].Severity != f.Severity {
				t.Errorf("%s: %s was %s, turned round it is %s: %s", h.name, rule, f.Outcome, is[rule].Outcome, is[rule].Text)
			}
		}
		a, err1 := check.Bow(fold(t, h.entries))
		b, err2 := check.Bow(fold(t, turned))
		if (err1 == nil) != (err2 == nil) || math.Abs(a.LowMicrons+b.HighMicrons) > 1e-6 || math.Abs(a.HighMicrons+b.LowMicrons) > 1e-6 || a.Grade != b.Grade {
			t.Errorf("%s: bow %v (%v), turned round %v (%v)", h.name, a, err1, b, err2)
		}
	}
}

// turn exchanges front and back in an entry. A painting without faces is on
// the front.
func turn(t testing.TB, e record.Entry) record.Entry {
	t.Helper()
	swap := func(fs []record.Face) []record.Face {
		fs = slices.Clone(fs)
		for i, f := range fs {
			switch f {
			case record.Front:
				fs[i] = record.Back
			case record.Back:
				fs[i] = record.Front
			}
		}
		return fs
	}
	other := func(fs []record.Face) []record.Face {
		if len(fs) == 0 {
			return []record.Face{record.Back}
		}
		return swap(fs)
	}
	switch b := e.Body.(type) {
	case record.Coat:
		b.Faces, b.Extra = swap(b.Faces), swap(b.Extra)
		e.Body = b
	case record.ClothLaid:
		b.Faces = swap(b.Faces)
		e.Body = b
	case record.Sanded:
		b.Faces = swap(b.Faces)
		e.Body = b
	case record.PaintLayer:
		b.Faces = other(b.Faces)
		e.Body = b
	case record.Varnish:
		b.Faces = other(b.Faces)
		e.Body = b
	case record.Inspection:
		switch b.Toward {
		case "front":
			b.Toward = "back"
		case "back":
			b.Toward = "front"
		}
		e.Body = b
	}
	return e
}

// Taking an entry out never turns "not recorded" into "holds", unless the
// finding rested on that very entry: then what could not be judged is gone,
// and so is the question. A correction is no such entry: taking it out brings
// back what it corrected.
func TestRemoving(t *testing.T) {
	removed := 0
	for _, h := range histories(t) {
		was := judge(t, h.entries, h.now)
		for i, e := range h.entries {
			if e.Corrects() != 0 || i == 0 {
				continue
			}
			rest := slices.Concat(h.entries[:i], h.entries[i+1:])
			w, err := record.Fold(rest)
			if err != nil || w.Panel(panel) == nil {
				continue // others stand on it
			}
			removed++
			for rule, f := range judge(t, rest, h.now) {
				before := was[rule]
				if f.Outcome == check.Holds && before.Outcome == check.NotRecorded && !slices.Contains(before.Entries, e.Seq) {
					t.Errorf("%s without entry %d (%s): %s was %q, now holds: %s", h.name, e.Seq, e.Kind(), rule, before.Text, f.Text)
				}
			}
		}
	}
	if removed < 250 {
		t.Errorf("only %d entries could be taken out", removed)
	}
}

// Taking what is known out of an entry, field by field, never makes a rule
// hold that did not hold before, whether the field goes or says "unknown".
func TestBlurring(t *testing.T) {
	blurred := 0
	for i, h := range histories(t) {
		blurred += blurAll(t, h, i)
	}
	if blurred < 3000 {
		t.Errorf("only %d fields could be taken out", blurred)
	}
}

// blurAll takes every field of every entry out in turn.
func blurAll(t *testing.T, h history, nr int) (blurred int) {
	t.Helper()
	was := judge(t, h.entries, h.now)
	before, _ := fold(t, h.entries)
	for i, e := range h.entries {
		if e.Corrects() != 0 {
			continue
		}
		b, err := record.Encode(e)
		if err != nil {
			t.Fatal(err)
		}
		for _, text := range blurs(t, b) {
			x, err := record.Decode(text)
			if err != nil {
				continue // a field that must be there
			}
			changed := slices.Clone(h.entries)
			changed[i] = x
			w, err := record.Fold(changed)
			if err != nil || w.Panel(panel) == nil || !slices.Equal(order(w), order(before)) {
				continue // without its date an entry stands where it was written
			}
			blurred++
			for rule, f := range judge(t, changed, h.now) {
				if f.Outcome == check.Holds && was[rule].Outcome != check.Holds {
					t.Errorf("%d %s with entry %d as %s: %s was %s (%s), now holds: %s", nr, h.name, e.Seq, text, rule, was[rule].Outcome, was[rule].Text, f.Text)
				}
			}
		}
	}
	return blurred
}

// order is the order in which things happened to the panel.
func order(w *record.Workshop) []int64 {
	var seqs []int64
	for _, e := range w.Panel(panel).Events {
		seqs = append(seqs, e.Seq)
	}
	return seqs
}

// notStrict are the fields whose absence is read as something, as the package
// doc says.
var notStrict = []string{"thinned", "thinned_with", "extra"}

// blurs returns an entry with each field taken out or unknown in turn, at
// every depth.
func blurs(t testing.TB, b []byte) []jsontext.Value {
	t.Helper()
	var out []jsontext.Value
	var walk func(v any, put func(any) any)
	var root any
	if err := json.Unmarshal(b, &root); err != nil {
		t.Fatal(err)
	}
	emit := func(v any) {
		text, err := json.Marshal(v, json.Deterministic(true))
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, text)
	}
	walk = func(v any, put func(any) any) {
		switch v := v.(type) {
		case map[string]any:
			for name, sub := range v {
				if slices.Contains([]string{"v", "seq", "kind", "written", "panels", "faces"}, name) || slices.Contains(notStrict, name) {
					continue
				}
				with := func(x any) map[string]any {
					m := map[string]any{}
					for k, y := range v {
						m[k] = y
					}
					if x == nil {
						delete(m, name)
					} else {
						m[name] = x
					}
					return m
				}
				emit(put(with(nil)))
				emit(put(with("unknown")))
				walk(sub, func(x any) any { return put(with(x)) })
			}
		case []any:
			for i, sub := range v {
				walk(sub, func(x any) any {
					l := slices.Clone(v)
					l[i] = x
					return put(l)
				})
			}
		}
	}
	walk(root, func(x any) any { return x })
	return out
}

// An equal coat on both faces never makes a balance worse: the bow stays the
// same, and no rule of balance that held falls short.
func TestEqualCoats(t *testing.T) {
	for _, h := range histories(t) {
		was := judge(t, h.entries, h.now)
		a, err := check.Bow(fold(t, h.entries))
		last := h.entries[len(h.entries)-1].Seq
		more := slices.Concat(h.entries, []record.Entry{sealer(last + 1), entry(t, "coat 2027-05-30T09:00:00+02:00 purpose=sealer faces=front,back mix=other-sealer dry_film=50_µm", int(last)+2, 0)})
		b, err2 := check.Bow(fold(t, more))
		if err == nil && (err2 != nil || math.Abs(a.LowMicrons-b.LowMicrons) > 1e-6 || math.Abs(a.HighMicrons-b.HighMicrons) > 1e-6) {
			t.Errorf("%s: bow %v, after an equal coat %v, %v", h.name, a, b, err2)
		}
		for _, rule := range []string{"answered-coats", "balanced-films", "cloth-tension"} {
			if f := judge(t, more, h.now)[rule]; was[rule].Outcome == check.Holds && f.Outcome != check.Holds {
				t.Errorf("%s: %s held, after an equal coat it is %s: %s", h.name, rule, f.Outcome, f.Text)
			}
		}
	}
}

// sealer is a material of its own name, in case the history has it already.
func sealer(seq int64) record.Entry {
	e := record.Entry{Seq: seq, Written: record.Moment(moment), Body: record.Material{Key: "other-sealer", Name: "sealer", Uses: []record.Use{record.UseSealer}, Binder: record.Acrylic, Waterborne: record.Yes}}
	return e
}

// A finding is a text of one line without anything that a terminal or a page
// could take for an order.
func TestTextsArePlain(t *testing.T) {
	for _, h := range histories(t) {
		for rule, f := range judge(t, h.entries, h.now) {
			if err := record.CheckLine(f.Text); err != nil || strings.Contains(f.Text, "%!") || strings.Contains(f.Text, "NaN") {
				t.Errorf("%s: %s says %q", h.name, rule, f.Text)
			}
		}
	}
}
