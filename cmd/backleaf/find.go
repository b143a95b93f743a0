package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/check"
	"backleaf/record/find"
)

func newFind(a *app) *cobra.Command {
	var o findFlags
	c := &cobra.Command{
		Use: "find [WORDS…]", Short: "find panels by words and by what went into them",
		Long: `Find panels. Words, or beginnings of words, are looked for in titles, notes, remarks,
inscriptions and whatever else was written freely; all of them must be there. Every
filter narrows the result further. What is not recorded does not fit, unless it is
asked for (--unsealed, none, unknown). Discarded panels are found too.`,
		Example: `  backleaf find --lot sealer-3                          which panels used that lot, and where are they now
  backleaf find harbour --made-between "1998 2004" --where sale
  backleaf find --board plywood --unsealed back --csv
  backleaf find --varnish none --stage painted --where studio
  backleaf find --finding answered-coats --size-from "40 x 60 cm"`,
		RunE: func(c *cobra.Command, args []string) error {
			tests, err := o.tests(a)
			if err != nil {
				return err
			}
			words := strings.Join(args, " ")
			if len(tests) == 0 && words == "" && o.handedTo == "" {
				return usage("see \"backleaf find --help\"; \"backleaf list\" shows all panels", "find what?")
			}
			return a.read(c.Context(), func(b *book.Book) error {
				w, err := b.Workshop(c.Context())
				if err != nil {
					return err
				}
				if err := o.onShelf(w); err != nil {
					return err
				}
				if words != "" {
					ns, err := b.Search(c.Context(), words)
					if err != nil {
						return err
					}
					tests = append(tests, find.Among(ns))
				}
				if o.handedTo != "" {
					ns, err := a.ownedBy(c, b, w, o.handedTo)
					if err != nil {
						return err
					}
					tests = append(tests, find.Among(ns))
				}
				rows := []panelRow{}
				for _, p := range find.Panels(w, tests...) {
					rows = append(rows, rowOf(p))
				}
				return a.sayPanelRows(rows, len(w.Panels))
			})
		},
	}
	o.flags(c)
	return a.csvFlag(a.jsonFlag(c))
}

// findFlags are the filters as typed.
type findFlags struct {
	materials, lots, binders, boards, cloths, unsealed, findings, batches, refs []string

	varnish, removable, made, sizeFrom, sizeTo, stage, where, handedTo string
	unbalanced                                                         bool
}

func (o *findFlags) flags(c *cobra.Command) {
	f := c.Flags()
	f.StringSliceVar(&o.materials, "material", nil, "a material went into it")
	f.StringSliceVar(&o.lots, "lot", nil, "a lot went into it")
	f.StringSliceVar(&o.binders, "binder", nil, "a coat holds this binder: "+strings.Join(record.Words("Binder"), ", ")+", unknown")
	f.StringSliceVar(&o.boards, "board", nil, "kind of board, material or lot, unknown: "+strings.Join(record.Words("BoardKind"), ", "))
	f.StringSliceVar(&o.cloths, "cloth", nil, "fibre, material or lot, none, unknown: "+strings.Join(record.Words("Fibre"), ", "))
	f.StringSliceVar(&o.unsealed, "unsealed", nil, "no sealing coat is recorded on this face: front, back, edges")
	f.BoolVar(&o.unbalanced, "out-of-balance", false, "coats are not answered on the other face, in number or thickness")
	f.StringVar(&o.varnish, "varnish", "", "resin class, material or lot of a varnish, none, unknown")
	f.StringVar(&o.removable, "removable", "", "its varnish can be taken off: yes, no, unknown")
	f.StringVar(&o.made, "made-between", "", "date of the work (or else of cutting): \"1998 2004\", 199X, \"2019-03 2019-06\"")
	f.StringVar(&o.sizeFrom, "size-from", "", "at least as large, whichever way up: \"20 x 30 cm\"")
	f.StringVar(&o.sizeTo, "size-to", "", "at most as large, whichever way up: \"40 x 60 cm\"")
	f.StringVar(&o.stage, "stage", "", "board, sealed, \"cloth laid\", \"ground laid\", painted, varnished")
	f.StringVar(&o.where, "where", "", strings.Join(places(), ", "))
	f.StringVar(&o.handedTo, "handed-to", "", "went to this person and did not come back; looks into the private parts")
	f.StringSliceVar(&o.refs, "own-reference", nil, "your own number holds this")
	f.StringSliceVar(&o.findings, "finding", nil, "a rule falls short: RULE, or \"RULE=not recorded\", \"RULE=holds\"")
	f.StringSliceVar(&o.batches, "batch", nil, "of this batch")
}

// tests reads the flags.
func (o *findFlags) tests(a *app) (ts []find.Test, err error) {
	fail := func(e error) { err = orError(err, e) }
	each := func(typed []string, make func(string) (find.Test, error)) {
		for _, t := range typed {
			test, e := make(strings.ToLower(strings.TrimSpace(t)))
			if e != nil {
				fail(e)
			} else {
				ts = append(ts, test)
			}
		}
	}
	key := func(test func(record.Key) find.Test) func(string) (find.Test, error) {
		return func(s string) (find.Test, error) { return test(record.Key(s)), nil }
	}
	plain := func(test func(string) find.Test) func(string) (find.Test, error) {
		return func(s string) (find.Test, error) { return test(s), nil }
	}
	if o.varnish != "" {
		each([]string{o.varnish}, plain(find.Varnish))
	}
	each(o.materials, key(find.Material))
	each(o.lots, key(find.Lot))
	each(o.batches, key(find.Batch))
	each(o.boards, plain(find.Board))
	each(o.cloths, plain(find.Cloth))
	each(o.refs, plain(find.OwnReference))
	each(o.binders, func(s string) (find.Test, error) {
		w, err := word[record.Binder]("--binder", s, "Binder")
		return find.Binder(w), err
	})
	fs, e := faces("--unsealed", o.unsealed)
	fail(e)
	for _, f := range fs {
		ts = append(ts, find.Unsealed(f))
	}
	if o.unbalanced {
		ts = append(ts, find.OutOfBalance(a.now()))
	}
	if o.removable != "" {
		w, e := answer("--removable", o.removable)
		fail(e)
		ts = append(ts, find.Removable(w))
	}
	each(o.findings, func(s string) (find.Test, error) { return findingTest(a, s) })
	return o.boundTests(ts, err)
}

func (o *findFlags) boundTests(ts []find.Test, err error) ([]find.Test, error) {
	if err == nil && o.made != "" {
		from, to, e := find.ParseBetween(o.made)
		var t find.Test
		if e == nil {
			t, e = find.MadeBetween(from, to)
		}
		if e != nil {
			err = usage("", "--made-between: %v", e)
		}
		ts = append(ts, t)
	}
	for _, b := range []struct {
		flag, typed string
		test        func(record.Size) find.Test
	}{{"--size-from", o.sizeFrom, find.SizeFrom}, {"--size-to", o.sizeTo, find.SizeTo}} {
		if b.typed == "" || err != nil {
			continue
		}
		s, e := record.ParseSize(b.typed)
		if e != nil {
			err = usage("", "%s: %v", b.flag, e)
		} else if s.Height.IsUnknown() || s.Depth.IsUnknown() {
			err = usage("", "%s: a size to compare with must be known", b.flag)
		}
		ts = append(ts, b.test(s))
	}
	if err == nil && o.stage != "" {
		if err = checkStage(o.stage); err == nil {
			ts = append(ts, find.Stage(record.Stage(o.stage)))
		}
	}
	if err == nil && o.where != "" {
		if !slices.Contains(places(), o.where) {
			err = usage("", "--where: %q is not one of %s", o.where, strings.Join(places(), ", "))
		}
		ts = append(ts, find.Where(o.where))
	}
	return ts, err
}

// places are the words for where a panel is: what came back is in the studio.
func places() []string {
	ways := slices.DeleteFunc(slices.Clone(record.Words("Parting")), func(w string) bool { return w == "return" })
	return append(slices.Concat(find.Places, ways), record.Unknown)
}

// findingTest reads "RULE" or "RULE=OUTCOME".
func findingTest(a *app, s string) (find.Test, error) {
	rule, said, given := strings.Cut(s, "=")
	if _, ok := check.RuleNamed(rule); !ok {
		var names []string
		for _, r := range check.Rules {
			names = append(names, r.Name)
		}
		return nil, usage("the rules are "+strings.Join(names, ", "), "--finding: there is no rule %q", rule)
	}
	outcomes := []check.Outcome{check.FallsShort, check.NotRecorded, check.Holds, check.NotApplicable}
	o := check.Outcome(strings.ReplaceAll(said, "-", " "))
	if !given {
		o = check.FallsShort
	}
	if !slices.Contains(outcomes, o) {
		return nil, usage("", "--finding: %q is not one of falls short, not recorded, holds, does not apply", said)
	}
	return find.Finding(rule, o, a.now()), nil
}

// onShelf refuses materials, lots and batches that are not in the book: a
// misspelt name must not pass for "none".
func (o *findFlags) onShelf(w *record.Workshop) error {
	for _, k := range o.materials {
		if _, ok := w.Material(record.Key(strings.ToLower(k))); !ok {
			return hinted(fmt.Errorf("there is no material %q on the shelf", k), "\"backleaf material list\" shows the shelf")
		}
	}
	for _, k := range o.lots {
		if _, ok := w.Lot(record.Key(strings.ToLower(k))); !ok {
			return hinted(fmt.Errorf("there is no lot %q on the shelf", k), "\"backleaf lot list\" shows them")
		}
	}
	for _, k := range o.batches {
		if len(w.Batch(record.Key(strings.ToLower(k)))) == 0 {
			return fmt.Errorf("there is no batch %q", k)
		}
	}
	return o.named(w)
}

// named refuses boards and cloths that are neither a word of the trade nor on
// the shelf.
func (o *findFlags) named(w *record.Workshop) error {
	for _, x := range []struct {
		flag  string
		typed []string
		words []string
	}{{"--board", o.boards, append(record.Words("BoardKind"), find.Unknown)}, {"--cloth", o.cloths, append(record.Words("Fibre"), find.Unknown, find.None)}} {
		for _, t := range x.typed {
			t = strings.ToLower(strings.TrimSpace(t))
			_, material := w.Material(record.Key(t))
			_, lot := w.Lot(record.Key(t))
			if !material && !lot && !slices.Contains(x.words, t) {
				return hinted(fmt.Errorf("%s: %q is neither on the shelf nor one of %s", x.flag, t, strings.Join(x.words, ", ")), "\"backleaf material list\" shows the shelf")
			}
		}
	}
	return nil
}

// ownedBy finds the panels that last went to somebody, by the private parts.
func (a *app) ownedBy(c *cobra.Command, b *book.Book, w *record.Workshop, name string) (out []record.Number, err error) {
	missing := 0
	for _, p := range w.Panels {
		h, away := p.Away()
		if !away || h.Body.Private == "" {
			continue
		}
		part, ok, err := privateOf(c.Context(), b, h.Seq)
		switch {
		case err != nil:
			return nil, err
		case !ok:
			missing++
		case strings.Contains(strings.ToLower(part.To), strings.ToLower(name)):
			out = append(out, p.Number)
		}
	}
	if missing > 0 {
		a.talk("note: of %d panels the private part was erased or is not in this copy", missing)
	}
	return out, nil
}
