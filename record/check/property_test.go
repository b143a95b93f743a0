package check_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/check"
	"backleaf/record/form"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
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
				t.Errorf("%s: %s was %s, turned round it is %s: %s", h.name, rule, f.Outcome, is[rule].Outcome, codes(is[rule]))
			}
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
	case record.LeftBare:
		b.Faces = swap(b.Faces)
		e.Body = b
	case record.Cut:
		switch b.BowToward {
		case "front":
			b.BowToward = "back"
		case "back":
			b.BowToward = "front"
		}
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

// Taking what is known out of an entry, field by field, never makes a rule
// hold that did not hold before, whether the field goes or says "unknown".
func TestBlurring(t *testing.T) {
	blurred, of := 0, toolcheck.Rounds(1, 16) // each, or one of eight
	for i, h := range histories(t) {
		if i%of == 0 {
			blurred += blurAll(t, h, i)
		}
	}
	if blurred < 3000/of {
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
		b, err := form.Write(e)
		if err != nil {
			t.Fatal(err)
		}
		for _, text := range blurs(t, b) {
			x, err := accept.Parse(text)
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
					t.Errorf("%d %s with entry %d as %s: %s was %s (%s), now holds: %s", nr, h.name, e.Seq, text, rule, was[rule].Outcome, codes(was[rule]), codes(f))
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
// doc says, what outranks a reckoning, and what makes another act of an act.
var notStrict = []string{"thinned", "thinned_with", "extra", "bow", "recorded", "layers"}

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

// Everything that a rule says has its words, without anything that a terminal
// or a page could take for an order.
func TestTextsArePlain(t *testing.T) {
	for _, h := range histories(t) {
		w, p := fold(t, h.entries)
		for _, f := range check.Panel(w, p, h.now) {
			for _, s := range f.Said {
				if err := tell.English().Lacks(s); err != nil {
					t.Errorf("%s: %s: %v", h.name, f.Rule, err)
				}
			}
			text := tell.English().Found(f)
			if err := accept.CheckLine(text); err != nil || strings.Contains(text, "{") || strings.Contains(text, "NaN") || text == "" {
				t.Errorf("%s: %s says %q", h.name, f.Rule, text)
			}
		}
	}
}
