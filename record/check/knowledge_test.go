package check_test

import (
	"math/rand"
	"slices"
	"testing"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/toolcheck"
)

// vague makes one recorded value of a history vaguer: a date an interval or
// nothing, an amount, a product or the air not recorded, or the whole recorded
// afterwards. It says what it did; nothing where it found nothing to do.
func vague(r *teller, es []record.Entry, own int) ([]record.Entry, string) {
	out := slices.Clone(es)
	if r.Intn(8) == 0 {
		e := out[own]
		c := e.Body.(record.Cut)
		c.Recorded, e.Body = "afterwards", c
		out[own] = e
		return out, "recorded afterwards"
	}
	i := own + r.Intn(len(es)-own)
	e := out[i]
	at, exact := e.At.Exact()
	what := ""
	if r.Intn(2) == 0 {
		if !exact {
			return out, ""
		}
		text := pick(r, at.Format("2006-01-02"), at.Format("2006-01"), at.Format("2006"), at.AddDate(0, 0, -3).Format("2006-01-02")+"/"+at.AddDate(0, 0, 3).Format("2006-01-02"), "")
		w, err := record.ParseWhen(text)
		if err != nil {
			panic(err)
		}
		e.At, what = w, "date "+text
	} else {
		c, put := coatingOf(e.Body)
		if put == nil {
			return out, ""
		}
		switch r.Intn(3) {
		case 0:
			c.DryFilm, c.WetEach, c.WetTotal, c.WetFilm, what = record.Length{}, record.Amount{}, record.Amount{}, record.Length{}, "no amount"
		case 1:
			c.Mix, what = nil, "no product"
		case 2:
			if slices.ContainsFunc(es, func(e record.Entry) bool { return e.Kind() == "climate" }) {
				return out, "" // what was read at the coat outranks what was read in the room
			}
			c.Temperature, c.Humidity, what = record.Temperature{}, record.Percent{}, "no air"
		}
		e.Body = put(c)
	}
	out[i] = e
	return out, what + " of " + string(e.Kind())
}

// coatingOf returns the coating of an act and how to put another in its place.
func coatingOf(b record.Body) (record.Coating, func(record.Coating) record.Body) {
	switch b := b.(type) {
	case record.Coat:
		return b.Coating, func(c record.Coating) record.Body { b.Coating = c; return b }
	case record.ClothLaid:
		return b.Coating, func(c record.Coating) record.Body { b.Coating = c; return b }
	case record.PaintLayer:
		return b.Coating, func(c record.Coating) record.Body { b.Coating = c; return b }
	case record.Varnish:
		return b.Coating, func(c record.Coating) record.Body { b.Coating = c; return b }
	}
	return record.Coating{}, nil
}

// No knowledge, no fault: a vaguer record leaves each outcome as it was, or
// turns it into "not recorded". What is asked of the record itself, the gaps,
// is open by that very thing.
func TestNoKnowledgeNoFault(t *testing.T) {
	tried := 0
	stories(t, 1000, toolcheck.Rounds(1000, 150), func(t *testing.T, r *teller, es []record.Entry) {
		own := slices.IndexFunc(es, func(e record.Entry) bool { return e.Kind() == "cut" })
		was := found(t, es)
		now := es
		for range 3 { // vaguer and vaguer
			next, what := vague(r, now, own)
			if what == "" {
				continue
			}
			tried++
			now = next
			for rule, f := range found(t, now) {
				if f.Outcome != was[rule].Outcome && f.Outcome != check.NotRecorded {
					t.Errorf("%s: %s was %s (%s), now %s (%s)", what, rule, was[rule].Outcome, codes(was[rule]), f.Outcome, codes(f))
				}
			}
			was = found(t, now)
		}
	})
	if tried < 250 {
		t.Errorf("only %d values were made vaguer", tried)
	}
}

// Order: acts with distinct exact dates give the same outcomes in whatever
// order they were written down.
func TestOrderOfWriting(t *testing.T) {
	stories(t, 2000, toolcheck.Rounds(1000, 120), func(t *testing.T, r *teller, es []record.Entry) {
		own := slices.IndexFunc(es, func(e record.Entry) bool { return e.Kind() == "cut" })
		was := found(t, es)
		acts := slices.Clone(es[own+1:]) // the cut makes the panel and comes first
		rand.New(rand.NewSource(int64(r.Intn(1<<30)))).Shuffle(len(acts), func(i, j int) { acts[i], acts[j] = acts[j], acts[i] })
		mixed := slices.Concat(es[:own+1], acts)
		for i := range mixed {
			mixed[i].Seq = int64(i + 1)
		}
		for rule, f := range found(t, mixed) {
			if f.Outcome != was[rule].Outcome || f.Severity != was[rule].Severity {
				t.Errorf("%s was %s (%s), written in another order it is %s (%s)", rule, was[rule].Outcome, codes(was[rule]), f.Outcome, codes(f))
			}
		}
	})
}

// Mirror: front and back exchanged, outcomes stay, and what is hollow to the
// front goes hollow to the back.
func TestMirrorOfDrawn(t *testing.T) {
	stories(t, 3000, toolcheck.Rounds(1000, 120), func(t *testing.T, r *teller, es []record.Entry) {
		var turned []record.Entry
		for _, e := range es {
			turned = append(turned, turn(t, e))
		}
		was, is := found(t, es), found(t, turned)
		for rule, f := range was {
			g := is[rule]
			if f.Outcome != g.Outcome || f.Severity != g.Severity {
				t.Errorf("%s was %s (%s), turned round it is %s (%s)", rule, f.Outcome, codes(f), g.Outcome, codes(g))
				continue
			}
			if rule == "balanced-pull" || rule == "balanced-moisture" {
				for i, s := range f.Said {
					for _, v := range s.Values {
						o := g.Said[i].Value(v.Name)
						switch {
						case v.Name == "toward" || v.Name == "leads" || v.Name == "face":
							if (v.Text() == "front") != (o.Text() == "back") {
								t.Errorf("%s: %s %q, turned round %q", rule, v.Name, v.Text(), o.Text())
							}
						case !slices.Equal(v.Texts, o.Texts):
							t.Errorf("%s: %s %q, turned round %q", rule, v.Name, v.Texts, o.Texts)
						}
					}
				}
			}
		}
	})
}
