package questions

import (
	"cmp"
	"context"
	"reflect"
	"slices"
	"strings"
	"time"
	"unicode"

	"backleaf/record"
	"backleaf/record/book"
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

// Search is a filter that was understood: what the book's tables tell, what
// the row of a panel tells, and what only its whole story tells.
type Search struct {
	filter Filter
	narrow book.Narrow
	rows   []func(book.Present) bool
	tests  []find.Test
}

// Read understands a filter. now is when findings are judged.
func (f Filter) Read(now time.Time) (Search, error) {
	s := Search{filter: f}
	var r typed.Reader
	f.words(&s, &r, now)
	f.bounds(&s, &r)
	if r.Err() == nil && reflect.DeepEqual(f, Filter{}) {
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
	for _, k := range f.Batches {
		s.rows = append(s.rows, func(p book.Present) bool { return p.Batch == record.Key(lower(k)) })
		s.narrow.Batch = record.Key(lower(k))
	}
	for _, ref := range f.Refs {
		s.rows = append(s.rows, func(p book.Present) bool { return strings.Contains(strings.ToLower(p.Own), lower(ref)) })
	}
	each(f.Boards, find.Board)
	each(f.Cloths, find.Cloth)
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
		var fits func(record.When) bool
		if err == nil {
			fits, err = find.MadeBetween(from, to)
		}
		if err != nil {
			r.Fail(refuse.Input("made-between", "not-read", "%w", err))
		}
		s.rows = append(s.rows, func(p book.Present) bool {
			if p.Made.IsZero() {
				return fits(p.Cut)
			}
			return fits(p.Made)
		})
	}
	if f.Stage != "" {
		if err := KnownStage(f.Stage); err != nil {
			r.Fail(err)
		}
		s.narrow.Stage = record.Stage(lower(f.Stage))
	}
	if f.Where = typed.Said("Parting", f.Where); f.Where != "" {
		if !slices.Contains(Places(), f.Where) {
			r.Fail(typed.NotAmong("where", f.Where, Places()))
		}
		s.narrow.Places = places(f.Where)
	}
}

// sizes reads the sizes to compare with, in the unit of the studio if they have
// none.
func (s *Search) sizes(ctx context.Context, b *book.Book) error {
	if s.filter.SizeFrom+s.filter.SizeTo == "" {
		return nil
	}
	w, err := b.Shelf(ctx)
	if err != nil {
		return err
	}
	r := typed.Reader{Units: w.Studio.Units}
	for _, b := range []struct {
		field, typed string
		test         func(record.Size) func(record.Size) bool
	}{{"size-from", s.filter.SizeFrom, find.SizeFrom}, {"size-to", s.filter.SizeTo, find.SizeTo}} {
		if b.typed == "" {
			continue
		}
		var size record.Size
		if r.Text(b.field, b.typed, &size); size.Height.IsUnknown() || size.Depth.IsUnknown() {
			r.Fail(refuse.Input(b.field, "size-unknown", "a size to compare with must be known"))
		}
		fits := b.test(size)
		s.rows = append(s.rows, func(p book.Present) bool { return fits(p.Size) })
	}
	return r.Err()
}

// Places are the words for where a panel is: what came back is in the studio.
func Places() []string {
	return append([]string{string(book.Here), away, string(book.Discarded)}, append(ways(), record.Unknown)...)
}

// away is the word for panels that left, however they did.
const away = "away"

func ways() []string {
	return slices.DeleteFunc(slices.Clone(record.Words("Parting")), func(w string) bool { return w == "return" })
}

func places(typed string) []book.Place {
	if typed != away {
		return []book.Place{book.Place(typed)}
	}
	out := []book.Place{record.Unknown}
	for _, w := range ways() {
		out = append(out, book.Place(w))
	}
	return out
}

// findingTest reads "RULE" or "RULE=OUTCOME".
func findingTest(t string, now time.Time) (find.Test, error) {
	rule, said, given := strings.Cut(t, "=")
	if _, ok := check.RuleNamed(rule); !ok {
		return nil, refuse.Input("finding", "no-such-rule", "there is no rule %q", rule).With(record.With("rules", Rules()), record.With("near", record.Nearest(rule, Rules())))
	}
	o := check.Outcome(strings.ReplaceAll(said, " ", "-"))
	if !given {
		o = check.FallsShort
	}
	if !slices.Contains(check.Outcomes, o) {
		return nil, typed.NotAmong("finding", said, []string{"falls short", "not recorded", "holds", "does not apply"})
	}
	return find.Finding(rule, o, now), nil
}

// Panels gives each panel that is found to f.
func (s Search) Panels(ctx context.Context, session *studio.Session, f func(Row) error) (warnings []record.Said, err error) {
	b := session.Book
	if err := s.sizes(ctx, b); err != nil {
		return nil, err
	}
	n, err := s.filter.onShelf(ctx, b, s.narrow)
	if err != nil {
		return nil, err
	}
	if s.filter.HandedTo != "" {
		if n.Numbers, warnings, err = handedTo(ctx, session, s.filter.HandedTo); err != nil {
			return nil, err
		}
	}
	found, rows := false, []Row{}
	take := func(r Row) error { found = true; return f(r) }
	err = b.Panels(ctx, n, func(p book.Present) error {
		switch {
		case slices.ContainsFunc(s.rows, func(fits func(book.Present) bool) bool { return !fits(p) }):
			return nil
		case len(s.tests) > 0:
			rows = append(rows, rowOf(p))
			return nil
		}
		return take(rowOf(p))
	})
	if err == nil && len(rows) > 0 {
		err = s.tested(ctx, b, rows, take)
	}
	if err == nil && !found {
		near, err := s.filter.missing(ctx, b)
		return append(warnings, near...), err
	}
	return warnings, err
}

// missing refuses what may be the reason why nothing was found, or proposes
// what is near.
func (f Filter) missing(ctx context.Context, b *book.Book) ([]record.Said, error) {
	for _, k := range f.Batches {
		if err := knownBatch(ctx, b, record.Key(lower(k))); err != nil {
			return nil, err
		}
	}
	w, err := b.Shelf(ctx)
	if err == nil {
		err = f.varnishes(w)
	}
	if err != nil {
		return nil, err
	}
	return f.nearest(ctx, b, w)
}

// varnishes refuses a varnish that was not found and of which nothing on the
// shelf speaks.
func (f Filter) varnishes(w *record.Workshop) error {
	known := slices.Concat([]string{find.None, find.Unknown}, record.Words("Binder"), shelf.Words(w))
	near := record.Nearest(f.Varnish, known)
	if slices.ContainsFunc(known, func(k string) bool { return strings.Contains(strings.ToLower(k), lower(f.Varnish)) }) {
		return nil
	}
	return refuse.Input("varnish", "not-on-shelf", "no varnish is called %q", f.Varnish).With(record.With("near", near))
}

// nearest proposes, for each word that nothing bears, the nearest word of a
// title, a reference, a batch or the shelf.
func (f Filter) nearest(ctx context.Context, b *book.Book, w *record.Workshop) (said []record.Said, err error) {
	known := shelf.Words(w)
	err = b.Panels(ctx, book.Narrow{}, func(p book.Present) error {
		known = append(known, strings.Fields(lower(p.Title+" "+p.Own+" "+string(p.Batch)))...)
		return nil
	})
	for _, t := range slices.Concat(strings.Fields(f.Words), f.Refs) {
		if roll, err := b.Roll(ctx, t); err != nil {
			return nil, err
		} else if n, err := roll.Find(t); err == nil && strings.ContainsAny(t, "0123456789") {
			said = append(said, record.Say("word-is-panel", record.With("word", t), record.With("panel", n)))
		}
	}
	for _, t := range strings.FieldsFunc(f.Words, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		if near := record.Nearest(t, known); near != "" && !strings.HasPrefix(near, lower(t)) {
			said = append(said, record.Say("word-not-found", record.With("word", t), record.With("near", strings.Trim(near, ",.;:!?"))))
		}
	}
	return said, err
}

// tested gives the rows of the panels that fit every test of their story to f.
func (s Search) tested(ctx context.Context, b *book.Book, rows []Row, f func(Row) error) error {
	numbers := make([]record.Number, len(rows))
	for i, r := range rows {
		numbers[i] = r.Number
	}
	return book.Each(ctx, b, numbers, func(w *record.Workshop, p *record.Panel) (record.Number, error) {
		if slices.ContainsFunc(s.tests, func(t find.Test) bool { return !t(w, p) }) {
			return "", nil
		}
		return p.Number, nil
	}, func(n record.Number) error {
		if n == "" {
			return nil
		}
		rows = rows[slices.IndexFunc(rows, func(r Row) bool { return r.Number == n }):]
		return f(rows[0])
	})
}

// onShelf finds what is named of the shelf. Most is named by its key, which
// needs no more of the shelf than that.
func (f Filter) onShelf(ctx context.Context, b *book.Book, n book.Narrow) (book.Narrow, error) {
	if f.Words == "" {
		w, err := b.Named(ctx, lowered(f.Materials, f.Lots, f.Boards, f.Cloths))
		if err != nil {
			return n, err
		}
		if by, err := f.on(w, n); err == nil {
			return by, nil
		}
	}
	w, err := b.Shelf(ctx)
	if err != nil {
		return n, err
	}
	return f.on(w, n)
}

// on finds what is named of a shelf. What is not in the book is refused, and
// boards and cloths that are no word of the trade either: a misspelt name must
// not pass for "none".
func (f Filter) on(w *record.Workshop, n book.Narrow) (book.Narrow, error) {
	for _, k := range f.Materials {
		m, err := shelf.Material(w, record.Key(lower(k)))
		if err != nil {
			return n, err
		}
		n.Used = append(n.Used, []string{book.Material(m.Key)})
	}
	for _, k := range f.Lots {
		lots, err := shelf.Lots(w, k)
		if err != nil {
			return n, err
		}
		var things []string
		for _, l := range lots {
			things = append(things, book.Lot(l.Key))
		}
		n.Used = append(n.Used, things)
	}
	for _, t := range strings.Fields(f.Words) {
		n.Words = append(n.Words, book.Word{Text: t, Things: shelf.Holding(w, t)})
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
				e := refuse.Cannot("no-such-material", "%q is neither on the shelf nor one of %s", t, strings.Join(x.words, ", ")).
					With(record.With("near", cmp.Or(record.Nearest(t, x.words), record.Nearest(t, shelf.Words(w)))))
				e.Field = x.field
				return n, e
			}
		}
	}
	return n, nil
}

// handedTo finds the panels that last went to somebody, by the private parts.
func handedTo(ctx context.Context, s *studio.Session, name string) (out []record.Number, warnings []record.Said, err error) {
	var gone []record.Number
	if err := s.Book.Panels(ctx, book.Narrow{}, func(p book.Present) error {
		if p.Place != book.Here {
			gone = append(gone, p.Number)
		}
		return nil
	}); err != nil {
		return nil, nil, err
	}
	missing := 0
	out = []record.Number{}
	err = book.Each(ctx, s.Book, gone, func(_ *record.Workshop, p *record.Panel) (record.Done[record.HandedOver], error) {
		h, _ := p.Away()
		h.Panels = []record.Number{p.Number}
		return h, nil
	}, func(h record.Done[record.HandedOver]) error {
		if h.Body.Private == "" {
			return nil
		}
		part, ok, err := private.Of(ctx, s.Book, h.Seq)
		switch {
		case err != nil:
			return err
		case !ok:
			missing++
		case strings.Contains(strings.ToLower(part.To), strings.ToLower(name)):
			out = append(out, h.Panels[0])
		}
		return nil
	})
	if missing > 0 {
		warnings = append(warnings, record.Say("private-parts-missing", record.With("panels", missing)))
	}
	return out, warnings, err
}

func lower(s string) string { return strings.ToLower(strings.TrimSpace(s)) }

func lowered(lists ...[]string) (out []string) {
	for _, s := range slices.Concat(lists...) {
		out = append(out, lower(s))
	}
	return out
}
