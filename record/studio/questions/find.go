package questions

import (
	"context"
	"slices"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/find"
	"backleaf/record/studio"
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/shelf"
	"backleaf/record/studio/typed"
)

// Filter says which panels are looked for, as typed. Every filter narrows the
// result.
type Filter struct {
	Words string // looked for in whatever was written freely

	Materials, Lots, Binders, Boards, Cloths, Unsealed, Findings, Batches, Refs []string

	Varnish, Removable, Made, SizeFrom, SizeTo, Stage, Where, HandedTo string
	OutOfBalance                                                       bool
}

// Search is a filter that was understood.
type Search struct {
	filter Filter
	tests  []find.Test
}

// Read understands a filter. now is when findings are judged.
func (f Filter) Read(now time.Time) (Search, error) {
	s := Search{filter: f}
	var r typed.Reader
	f.words(&s, &r, now)
	f.bounds(&s, &r)
	if r.Err() == nil && len(s.tests) == 0 && f.Words == "" && f.HandedTo == "" {
		r.Fail(refuse.Unclearly("find-what", "find what?"))
	}
	return s, r.Err()
}

// words reads the filters that name something.
func (f Filter) words(s *Search, r *typed.Reader, now time.Time) {
	each := func(given []string, test func(string) find.Test) {
		for _, t := range given {
			s.tests = append(s.tests, test(lower(t)))
		}
	}
	if f.Varnish != "" {
		each([]string{f.Varnish}, find.Varnish)
	}
	each(f.Materials, func(t string) find.Test { return find.Material(record.Key(t)) })
	each(f.Lots, func(t string) find.Test { return find.Lot(record.Key(t)) })
	each(f.Batches, func(t string) find.Test { return find.Batch(record.Key(t)) })
	each(f.Boards, find.Board)
	each(f.Cloths, find.Cloth)
	each(f.Refs, find.OwnReference)
	each(f.Binders, func(t string) find.Test {
		var b record.Binder
		typed.Word(r, "binder", t, &b)
		return find.Binder(b)
	})
	for _, face := range r.Faces("unsealed", f.Unsealed) {
		s.tests = append(s.tests, find.Unsealed(face))
	}
	if f.OutOfBalance {
		s.tests = append(s.tests, find.OutOfBalance(now))
	}
	if f.Removable != "" {
		var a record.Answer
		typed.Word(r, "removable", f.Removable, &a)
		s.tests = append(s.tests, find.Removable(a))
	}
	each(f.Findings, func(t string) find.Test {
		test, err := findingTest(t, now)
		if err != nil {
			r.Fail(err)
		}
		return test
	})
}

// bounds reads the filters that give bounds, a stage or a place.
func (f Filter) bounds(s *Search, r *typed.Reader) {
	if f.Made != "" {
		from, to, err := find.ParseBetween(f.Made)
		var t find.Test
		if err == nil {
			t, err = find.MadeBetween(from, to)
		}
		if err != nil {
			r.Fail(refuse.Input("made-between", "not-read", "%w", err))
		}
		s.tests = append(s.tests, t)
	}
	for _, b := range []struct {
		field, typed string
		test         func(record.Size) find.Test
	}{{"size-from", f.SizeFrom, find.SizeFrom}, {"size-to", f.SizeTo, find.SizeTo}} {
		if b.typed == "" {
			continue
		}
		size, err := record.ParseSize(b.typed)
		if err != nil {
			r.Fail(refuse.Input(b.field, "not-read", "%w", err))
		} else if size.Height.IsUnknown() || size.Depth.IsUnknown() {
			r.Fail(refuse.Input(b.field, "size-unknown", "a size to compare with must be known"))
		}
		s.tests = append(s.tests, b.test(size))
	}
	if f.Stage != "" {
		if err := KnownStage(f.Stage); err != nil {
			r.Fail(err)
		}
		s.tests = append(s.tests, find.Stage(record.Stage(f.Stage)))
	}
	if f.Where != "" {
		if !slices.Contains(Places(), f.Where) {
			r.Fail(refuse.Input("where", "no-such-place", "%q is not one of %s", f.Where, strings.Join(Places(), ", ")))
		}
		s.tests = append(s.tests, find.Where(f.Where))
	}
}

// Places are the words for where a panel is: what came back is in the studio.
func Places() []string {
	ways := slices.DeleteFunc(slices.Clone(record.Words("Parting")), func(w string) bool { return w == "return" })
	return append(slices.Concat(find.Places, ways), record.Unknown)
}

// findingTest reads "RULE" or "RULE=OUTCOME".
func findingTest(t string, now time.Time) (find.Test, error) {
	rule, said, given := strings.Cut(t, "=")
	if _, ok := check.RuleNamed(rule); !ok {
		return nil, refuse.Input("finding", "no-such-rule", "there is no rule %q", rule).With(record.With("rules", Rules()))
	}
	o := check.Outcome(strings.ReplaceAll(said, " ", "-"))
	if !given {
		o = check.FallsShort
	}
	if !slices.Contains(check.Outcomes, o) {
		return nil, refuse.Input("finding", "no-such-outcome", "%q is not one of falls short, not recorded, holds, does not apply", said)
	}
	return find.Finding(rule, o, now), nil
}

// Panels finds the panels, and counts all there are.
func (s Search) Panels(ctx context.Context, session *studio.Session) (rows []Row, of int, warnings []record.Said, err error) {
	b := session.Book
	w, err := b.Workshop(ctx)
	if err != nil {
		return nil, 0, nil, err
	}
	if err := s.filter.onShelf(w); err != nil {
		return nil, 0, nil, err
	}
	tests := slices.Clone(s.tests)
	if s.filter.Words != "" {
		ns, err := b.Search(ctx, s.filter.Words)
		if err != nil {
			return nil, 0, nil, err
		}
		tests = append(tests, find.Among(ns))
	}
	if s.filter.HandedTo != "" {
		var ns []record.Number
		if ns, warnings, err = handedTo(ctx, session, w, s.filter.HandedTo); err != nil {
			return nil, 0, nil, err
		}
		tests = append(tests, find.Among(ns))
	}
	rows = []Row{}
	for _, p := range find.Panels(w, tests...) {
		rows = append(rows, rowOf(p))
	}
	return rows, len(w.Panels), warnings, nil
}

// onShelf refuses materials, lots and batches that are not in the book, and
// boards and cloths that are no word of the trade either: a misspelt name must
// not pass for "none".
func (f Filter) onShelf(w *record.Workshop) error {
	for _, k := range f.Materials {
		if _, err := shelf.Material(w, record.Key(lower(k))); err != nil {
			return err
		}
	}
	for _, k := range f.Lots {
		if _, err := shelf.Lot(w, record.Key(lower(k))); err != nil {
			return err
		}
	}
	for _, k := range f.Batches {
		if len(w.Batch(record.Key(lower(k)))) == 0 {
			return refuse.Cannot("no-such-batch", "there is no batch %q", k)
		}
	}
	for _, x := range []struct {
		field string
		given []string
		words []string
	}{{"board", f.Boards, append(record.Words("BoardKind"), find.Unknown)}, {"cloth", f.Cloths, append(record.Words("Fibre"), find.Unknown, find.None)}} {
		for _, t := range x.given {
			t = lower(t)
			_, material := w.MaterialNow(record.Key(t))
			_, lot := w.Lot(record.Key(t))
			if !material && !lot && !slices.Contains(x.words, t) {
				e := refuse.Cannot("no-such-material", "%q is neither on the shelf nor one of %s", t, strings.Join(x.words, ", "))
				e.Field = x.field
				return e
			}
		}
	}
	return nil
}

// handedTo finds the panels that last went to somebody, by the private parts.
func handedTo(ctx context.Context, s *studio.Session, w *record.Workshop, name string) (out []record.Number, warnings []record.Said, err error) {
	missing := 0
	for _, p := range w.Panels {
		h, away := p.Away()
		if !away || h.Body.Private == "" {
			continue
		}
		part, ok, err := private.Of(ctx, s.Book, h.Seq)
		switch {
		case err != nil:
			return nil, nil, err
		case !ok:
			missing++
		case strings.Contains(strings.ToLower(part.To), strings.ToLower(name)):
			out = append(out, p.Number)
		}
	}
	if missing > 0 {
		warnings = append(warnings, record.Say("private-parts-missing", record.With("panels", missing)))
	}
	return out, warnings, nil
}

func lower(s string) string { return strings.ToLower(strings.TrimSpace(s)) }
