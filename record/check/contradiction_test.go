package check_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/check"
	"backleaf/record/form"
	"backleaf/record/toolcheck"
)

// contradictions are what two findings of one panel must not say together: by
// code, of a face or of an entry where one is named. A star stands for any
// ending.
var contradictions = []struct {
	a, b string
	same string // the value that has to agree: "face", "entries"; empty: none
}{
	{"sealed", "sealed-not", "face"}, {"sealed", "sealed-open", "face"}, {"sealed", "left-bare", "face"}, {"sealed", "face-open", "face"},
	{"sealed-not", "glue-alone*", "face"}, {"left-bare", "glue-alone*", "face"}, {"sealed-open", "glue-alone", "face"}, {"left-bare", "face-open", "face"},
	{"sealed-by-ground-only", "face-open", "face"}, {"edges-bare", "edges-extra", ""}, {"edges-bare", "edges-more-coats", ""},
	{"thin", "bracing-moves*", ""}, {"thin-plywood", "bracing-moves*", ""}, {"bracing-open", "bracing-moves*", ""}, {"braced", "not-braced", ""},
	{"no-cloth", "wet-through", ""}, {"no-cloth", "wet-through-not", ""}, {"no-cloth", "trimmed*", ""}, {"no-cloth", "edges-pressed*", ""}, {"no-cloth", "cloth-weighted*", ""},
	{"no-cloth", "veneer-covered", ""}, {"no-cloth", "grit-fine*", ""}, {"nothing-sanded", "grit-fine*", ""}, {"nothing-sanded", "sanded-*", ""},
	{"sanded-cured", "sanded-early", "entries"}, {"sanded-through", "sanded-through-mended", "entries"},
	{"no-varnish", "varnish-*", ""}, {"no-layer", "harmless*", ""}, {"no-layer", "pair-*", ""}, {"no-coat", "sealed", ""}, {"no-coat", "glue-alone*", ""}, {"no-coat", "pull-*", ""},
	{"harmless", "holds-hazard", "entries"}, {"harmless", "harmless-not", "entries"}, {"no-oil-layer", "no-zinc*", ""},
	{"no-bow-since", "bow-explained", ""}, {"no-bow-since", "bow-beyond", ""}, {"no-bow-since", "bow-compared-open", ""}, {"bow-explained", "bow-beyond", ""}, {"measured-flat", "pull-*", ""}, {"measured-bow", "pull-*", ""}, {"measured-flat", "measured-bow", ""},
	{"moisture-even", "moisture-uneven", ""}, {"moisture-even", "moisture-amounts-open", ""}, {"board-takes-no-moisture", "moisture-uneven", ""}, {"board-takes-no-moisture", "barrier-not", ""},
	{"cannot-no-figure", "pull-*", ""}, {"cannot-no-board", "moisture-*", ""}, {"board-kind-open", "tempered*", ""},
	{"pull-holds", "pull-amounts-open", ""}, {"pair-sound", "pair-against", "pair"}, {"pair-sound", "pair-unmet", "pair"}, {"pair-against", "pair-unmet", "pair"},
	{"nothing-to-hold", "pair-*", ""}, {"no-ground", "veneer-*", ""}, {"no-acrylic-paint", "stain-blocked*", ""},
}

func fits(code, pattern string) bool {
	stem, any := strings.CutSuffix(pattern, "*")
	return code == pattern || any && strings.HasPrefix(code, stem) && code != strings.TrimSuffix(stem, "-")
}

// together reports whether two things said are of the same face or entries.
func together(a, b record.Said, same string) bool {
	switch same {
	case "":
		return true
	case "pair":
		return a.Value("layer").Text() == b.Value("layer").Text() && a.Value("below").Text() == b.Value("below").Text() && overlap(a, b)
	case "entries":
		return overlap(a, b)
	}
	return a.Value(same).Text() == b.Value(same).Text()
}

func overlap(a, b record.Said) bool {
	return slices.ContainsFunc(a.Value("entries").Texts, func(e string) bool { return slices.Contains(b.Value("entries").Texts, e) })
}

// No two findings of one panel contradict each other, and what is due neither
// contradicts them nor makes worse what it is meant to mend.
func TestNoContradictions(t *testing.T) {
	seen := map[int]bool{}
	stories(t, 10_000, toolcheck.Rounds(10_000, 500), func(t *testing.T, r *teller, es []record.Entry) {
		var all []record.Said
		for _, f := range found(t, es) {
			all = append(all, f.Said...)
		}
		for i, c := range contradictions {
			for _, a := range all {
				if !fits(a.Code, c.a) {
					continue
				}
				seen[i] = true
				for _, b := range all {
					if fits(b.Code, c.b) && together(a, b, c.same) {
						t.Errorf("%s and %s: %v, %v", a.Code, b.Code, a.Values, b.Values)
					}
				}
			}
		}
	})
	for i, c := range contradictions {
		if !seen[i] && toolcheck.Thorough() { // in fewer rounds not every code is reached
			t.Errorf("no history says %s", c.a)
		}
	}
}

// What is due can be done when it says so, with nothing new falling short: no
// step is too early, and no coat unbalances the panel.
func TestDueIsSound(t *testing.T) {
	done := map[check.Task]int{}
	stories(t, 40_000, toolcheck.Rounds(1500, 100), func(t *testing.T, r *teller, es []record.Entry) {
		at := es[len(es)-1].At
		now, _ := at.Exact()
		now = now.Add(time.Minute)
		w, err := record.Fold(es)
		if err != nil {
			t.Fatal(err)
		}
		due := check.Due(w, now)
		for _, s := range due {
			if !s.Until.IsZero() && !s.Until.After(s.From) || !s.Safe.IsZero() && s.Safe.Before(s.From) {
				t.Errorf("%s from %v, surely from %v, until %v", s.Task, s.From, s.Safe, s.Until)
			}
			body := map[check.Task]record.Body{
				check.TaskSand: record.Sanded{Faces: []record.Face{"front", "back"}, Scale: "P", Grit: 220, Through: record.No}, check.TaskTrim: record.Trimmed{},
				check.TaskPaint: record.PaintLayer{Medium: "oil", Film: "thin", Oil: "fat"}, check.TaskVarnish: record.Varnish{Coating: record.Coating{Mix: []record.Part{{Parts: 1, Material: "resin"}}}},
			}[s.Task]
			if s.Said.Value("bows").Text() == "yes" { // it leads to check, which must know of it
				done["bows"]++
				if f := found(t, es)["balanced-pull"]; f.Outcome != check.FallsShort {
					t.Errorf("due says that it bows, and balanced-pull is %s (%s)", f.Outcome, codes(f))
				}
			}
			if s.Task == check.TaskAnswer {
				face := record.Face(s.Said.Value("face").Text())
				other := map[record.Face]record.Face{"front": "back", "back": "front"}[face]
				for _, e := range es {
					if c, ok := e.Body.(record.Coat); ok && slices.Contains(c.Faces, other) && c.Purpose != "isolation" && c.Purpose != "barrier" {
						c.Faces, c.Extra = []record.Face{face}, nil
						body = c
					}
				}
			}
			for _, e := range es { // on the face of what was laid before
				if faces := facesOf(e.Body); e.Seq == s.Entry && faces != nil {
					switch b := body.(type) {
					case record.PaintLayer:
						b.Faces = faces
						body = b
					case record.Varnish:
						b.Faces = faces
						body = b
					}
				}
			}
			if body == nil {
				continue
			}
			when := s.From
			if !s.Safe.IsZero() {
				when = s.Safe
			}
			if when.Before(now) {
				when = now
			}
			when = when.Add(time.Minute)
			done[s.Task]++
			was := found(t, es)
			then := append(slices.Clone(es), record.Entry{Seq: int64(len(es) + 1), At: record.Moment(when), Written: record.Moment(when), Panels: []record.Number{panel}, Body: body})
			rules := map[check.Task][]string{check.TaskSand: {"sanded-after-cure"}, check.TaskTrim: {"trimmed-in-time"}, check.TaskAnswer: {"balanced-pull", "balanced-moisture"}}[s.Task]
			late := slices.ContainsFunc(due, func(x check.Step) bool { return x.Task == s.Task && x.Overdue })
			if late || s.From.IsZero() || !s.Until.IsZero() && when.After(s.Until) {
				continue
			}
			is := found(t, then)
			for _, rule := range rules {
				if is[rule].Outcome == check.FallsShort && was[rule].Outcome != check.FallsShort {
					t.Errorf("%s at %v: %s was %s (%s), now falls short: %s", s.Task, when, rule, was[rule].Outcome, codes(was[rule]), codes(is[rule]))
				}
			}
			if early := "pair-early"; strings.Contains(codes(is["layers-hold"]), early) && !strings.Contains(codes(was["layers-hold"]), early) && s.Task != check.TaskAnswer {
				t.Errorf("%s at %v is too early: %v", s.Task, when, is["layers-hold"].Said)
			}
		}
	})
	for _, task := range []check.Task{check.TaskSand, check.TaskTrim, check.TaskPaint, check.TaskVarnish, check.TaskAnswer, "bows"} {
		if done[task] == 0 && (task != "bows" || toolcheck.Thorough()) {
			t.Errorf("nothing to %s was ever due", task)
		}
	}
}

// facesOf are the faces of a wet application; a painting without any is on the
// front.
func facesOf(b record.Body) (faces []record.Face) {
	switch b := b.(type) {
	case record.Coat:
		return b.Faces
	case record.PaintLayer:
		faces = b.Faces
	case record.Varnish:
		faces = b.Faces
	default:
		return nil
	}
	if faces == nil {
		return []record.Face{"front"}
	}
	return faces
}

// Each remedy that is offered can be written, and once it is, its finding is
// cleared (or the balance as much better as is promised) and no other falls
// short of the same weight or more that did not.
func TestRemediesWork(t *testing.T) {
	weight := []check.Severity{check.Warning, check.Advice, check.Information}
	offered := map[string]int{}
	stories(t, 60_000, toolcheck.Rounds(1500, 250), func(t *testing.T, r *teller, es []record.Entry) {
		w, err := record.Fold(es)
		if err != nil {
			t.Fatal(err)
		}
		was := found(t, es)
		for _, f := range check.Panel(w, w.Panel(panel), moment) {
			if f.Outcome == check.FallsShort && f.Remedy.Code == "" {
				t.Errorf("%s falls short and says nothing of what to do or to watch", f.Rule)
			}
			if len(f.Write) == 0 {
				continue
			}
			offered[f.Rule]++
			then := slices.Clone(es)
			for i, b := range f.Write {
				at := record.Moment(moment.Add(time.Duration(i+1) * time.Hour))
				e := record.Entry{At: at, Panels: []record.Number{panel}, Body: b}
				text, err := form.Write(e)
				if err != nil {
					t.Fatalf("%s: the remedy cannot be written: %v", f.Rule, err)
				}
				if e, err = accept.Parse(text); err != nil {
					t.Fatalf("%s: the remedy is not accepted: %v", f.Rule, err)
				}
				e.Seq, e.Written = int64(len(then)+1), at
				then = append(then, e)
			}
			is := found(t, then)
			if g := is[f.Rule]; g.Outcome == check.FallsShort && f.Rule != "balanced-pull" {
				t.Errorf("%s (%s): after %s it still falls short: %s", f.Rule, codes(f), f.Remedy.Code, codes(g))
			}
			for rule, g := range is {
				grave := slices.Index(weight, g.Severity) <= slices.Index(weight, f.Severity)
				worse := was[rule].Outcome != check.FallsShort || slices.Index(weight, g.Severity) < slices.Index(weight, was[rule].Severity)
				if g.Outcome == check.FallsShort && rule != f.Rule && grave && worse {
					t.Errorf("%s: %s opens %s: %s", f.Rule, f.Remedy.Code, rule, codes(g))
				}
			}
		}
	})
	for _, rule := range []string{"sealed-all-round", "edges-extra", "balanced-pull", "board-thickness", "rigid-battens", "not-sanded-through"} {
		if offered[rule] == 0 {
			t.Errorf("no remedy was ever offered for %s", rule)
		}
	}
}

// A rule that saw nothing of what a remedy changes falls short with it no more
// and no less than before, so that it need not be asked again.
func TestUnseenIsUnchanged(t *testing.T) {
	unseen := map[string]int{}
	stories(t, 70_000, toolcheck.Rounds(1000, 200), func(t *testing.T, r *teller, es []record.Entry) {
		w := mustFold(t, es)
		check.Unseen(w, w.Panel(panel), moment, func(was check.Finding, remedy string, then check.Outcome, weight check.Severity) {
			unseen[remedy]++
			if (then == check.FallsShort) != (was.Outcome == check.FallsShort) || then == check.FallsShort && weight != was.Severity {
				t.Errorf("%s was %s %s (%s); after %s, of which it saw nothing, it is %s %s", was.Rule, was.Outcome, was.Severity, codes(was), remedy, then, weight)
			}
		})
	})
	for _, remedy := range []string{"remedy-coat", "remedy-brace"} {
		if unseen[remedy] == 0 {
			t.Errorf("no rule went without looking at what %s changes", remedy)
		}
	}
}

// Remedies that drawn histories seldom ask for. Cloth on the back answers cloth
// on the front of 3 mm plywood where a second coat takes off only 14 % of the
// high pull (worked in the tests of record/balance). A barrier on an acrylic back
// asks for an abraded surface, so none is offered before that is recorded.
func TestOffers(t *testing.T) {
	shelf := "\n" + strings.TrimSpace(shelfLines)
	const panel3 = "\ncut 05-01T09:00 batch=may size=30_x_40_cm_x_3_mm board=ply3 grain=width\ncoat 05-02T08:00 purpose=sealer faces=front,back,edges extra=edges mix=sealer dry_film=50_µm"
	for _, c := range []struct{ rule, story, want string }{
		{"balanced-pull", panel3 + "\ncloth 05-02T09:00 faces=front cloth=linen wet_through=yes edges_pressed=yes weighted=24_h mix=sealer dry_film=94_µm\ninspection 05-05 bow=1.5_mm span=300_mm hollow_to=front", "remedy-cloth"},
		{"balanced-moisture", "\ncut 05-01T09:00 batch=may size=40_x_50_cm_x_6_mm board=mdf6\ncoat 05-02T08:00 purpose=sealer faces=front mix=sealer dry_film=40_µm", "remedy-coat"},
		{"back-barrier", panel3 + "\npaint 05-20 medium=oil dry_film=60_µm\ndescribed 05-21 meant_for_humidity=70_%", "watch-back-barrier"},
	} {
		w, p := fold(t, lines(t, strings.TrimSpace(shelf+c.story)))
		for _, f := range check.Panel(w, p, moment) {
			if f.Rule == c.rule && (f.Outcome != check.FallsShort || f.Remedy.Code != c.want) {
				t.Errorf("%s %s (%s): %s, want %s", c.rule, f.Outcome, codes(f), f.Remedy.Code, c.want)
			}
		}
	}
}
