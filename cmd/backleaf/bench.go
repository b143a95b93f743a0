package main

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"
)

const panelWords = "NUMBERS…"

// moment is the flags of every command at the bench: when, and which not.
type moment struct {
	at                    string
	except, by            []string
	alsoAway              bool
	remarks, again, other []string
	relaid                bool // the cloth that was there before
	described             []string
}

func (o *moment) flags(c *cobra.Command) {
	o.timeFlag(c)
	c.Flags().StringSliceVar(&o.except, "except", nil, "panels to leave out")
	c.Flags().BoolVar(&o.alsoAway, "also-away", false, "panels that are not in the studio too")
	c.Flags().StringArrayVar(&o.remarks, "remark", nil, "a remark on some of the panels: \"0005=dent at the lower edge\"")
	o.byFlag(c)
}

func (o *moment) describedFlag(c *cobra.Command) {
	c.Flags().StringSliceVar(&o.described, "described-by", nil, "entries by which material, maker or studio are described as they are meant, where the date leaves several; or unknown")
}

// coatFlags are the flags of what may be done twice, and out of several tins.
func (o *moment) coatFlags(c *cobra.Command) {
	c.Flags().StringArrayVar(&o.again, "and-at", nil, "the same coat once more, at that time")
	c.Flags().StringArrayVar(&o.other, "but", nil, "other lots on some of the panels: \"0010-0014=sealer-2\"")
}

// byFlag says who did it, where --by does not already mean somebody else.
func (o *moment) byFlag(c *cobra.Command) {
	if c.Flags().Lookup("by") == nil {
		c.Flags().StringSliceVar(&o.by, "by", nil, "key or name of the maker who did it, if not the studio's own")
	}
}

func (o *moment) timeFlag(c *cobra.Command) {
	c.Flags().StringVar(&o.at, "at", "", "when it happened: 14:05, \"yesterday 16:30\", \"2026-05-02 14:05\", 1998~, unknown (default now)")
	o.describedFlag(c)
}

// doing writes something down about what a reader read.
type doing func(context.Context, *studio.View, *typed.Reader, record.When) (studio.Written, error)

// atBench opens the book, finds the panels and the time, lets do write, and
// says what was written.
func (a *app) atBench(ctx context.Context, o *moment, terms []string, do doing) error {
	return a.write(ctx, func(s *studio.Session) error {
		v, err := s.Look(ctx, terms, o.except)
		if err != nil {
			return err
		}
		r := typed.For(v)
		at := r.At(o.at)
		v.Hands, v.AlsoAway, v.Meant = r.Hands("by", o.by), o.alsoAway, r.Meant("described-by", o.described)
		if r.Err() != nil {
			return r.Err()
		}
		done, err := do(ctx, v, r, at)
		a.warn(v, append(r.Warnings, done.Warnings...))
		if err != nil {
			return err
		}
		a.sayWritten(v, done.Entries)
		for _, m := range done.Means {
			a.tell(a.words(v.Shop.Studio), m)
		}
		return nil
	})
}

// act is atBench for one thing that was done, as read makes it of the flags.
func act[B record.Body](a *app, ctx context.Context, o *moment, terms []string, read func(*typed.Reader) B) error {
	return a.atBench(ctx, o, terms, func(ctx context.Context, v *studio.View, r *typed.Reader, at record.When) (studio.Written, error) {
		return o.perform(ctx, v, r, at, read(r))
	})
}

// perform writes down what was read, with what more the flags say of it.
func (o *moment) perform(ctx context.Context, v *studio.View, r *typed.Reader, at record.When, body record.Body) (studio.Written, error) {
	act := bench.Act{Body: body, At: []record.When{at}, Relaid: o.relaid}
	for _, t := range o.again {
		act.At = append(act.At, r.At(t))
	}
	for _, s := range r.Some("remark", o.remarks) {
		act.Remarks = append(act.Remarks, bench.Remark(s))
	}
	for _, s := range r.Some("but", o.other) {
		act.Tins = append(act.Tins, bench.Tin{Panels: s.Panels, Mix: r.Mix(s.Text)})
	}
	if r.Err() != nil {
		return studio.Written{}, r.Err()
	}
	return bench.Perform(ctx, v, act)
}

// sayWritten says what was written: a line for each entry about panels.
func (a *app) sayWritten(v *studio.View, es []record.Entry) {
	c := a.words(v.Shop.Studio)
	first := es[0]
	lines := [][]record.Entry{es}
	if len(first.Panels) > 0 && len(es) <= 12 {
		lines = slices.Collect(slices.Chunk(es, 1))
	}
	var panels []record.Number
	for _, line := range lines {
		var what []string
		var on []record.Number
		for _, e := range line {
			on = append(on, e.Panels...)
			what = append(what, c.Event(record.Event{Seq: e.Seq, At: e.At, Written: e.Written, Body: e.Body, Panels: e.Panels}))
		}
		slices.Sort(on)
		on = slices.Compact(on)
		a.tell(c, record.Say("written", tell.Told("entries", a.entrySpan(line)), record.With("at", line[0].At),
			record.With("panels", on), tell.Told("what", c.Clauses(what))))
		panels = append(panels, on...)
	}
	slices.Sort(panels)
	panels = slices.Compact(panels)
	switch first.Kind() {
	case "studio", "material", "lot", "maker":
	case "cut":
		a.tell(c, record.Say("take-back-panels", record.With("panels", sayTerm(panels))))
	default:
		var more []record.EntryRef
		for _, e := range es[1:] {
			more = append(more, record.EntryRef(e.Seq))
		}
		a.tell(c, record.Say("take-back", record.With("number", strconv.FormatInt(first.Seq, 10)), record.With("more", more)))
	}
}

// tell prints what is said for the reader.
func (a *app) tell(c *tell.Catalogue, s record.Said) { a.say("%s", tell.Say(c, s)) }

// told prints what is said by a code for the reader.
func (a *app) told(code string, values ...record.Value) {
	a.tell(a.catalogue(), record.Say(code, values...))
}

// line says what is said by a code.
func (a *app) line(code string, values ...record.Value) string {
	return tell.Say(a.catalogue(), record.Say(code, values...))
}

// noted prints what is said by a code and is not data.
func (a *app) noted(code string, values ...record.Value) {
	a.talk("%s", tell.Say(a.catalogue(), record.Say(code, values...)))
}

// entry names an entry of the journal.
func (a *app) entry(seq int64) string {
	return a.catalogue().Fill("{entry}", record.With("entry", record.EntryRef(seq)))
}

// entrySpan names entries that follow one another: "E3", "E3 to E7".
func (a *app) entrySpan(es []record.Entry) string {
	first, last := record.EntryRef(es[0].Seq), record.EntryRef(0)
	if len(es) > 1 {
		last = record.EntryRef(es[len(es)-1].Seq)
	}
	return tell.Say(a.catalogue(), record.Say("entries", record.With("first", first), record.With("last", last)))
}

// near says when something happened, short where it is near.
func near(c *tell.Catalogue, at record.When) string {
	return c.Fill("{at:near}", record.With("at", at))
}

// sayTerm names panels as they could be typed again.
func sayTerm(ns []record.Number) string {
	if len(ns) > 1 && len(ns) == ns[len(ns)-1].Serial()-ns[0].Serial()+1 {
		return fmt.Sprintf("%s..%s", ns[0], ns[len(ns)-1])
	}
	var s []string
	for i, n := range ns {
		if i == 6 {
			s = append(s, "…")
			break
		}
		s = append(s, string(n))
	}
	return strings.Join(s, " ")
}

// needs refuses a flag that was not given.
func needs(given, hint, ask string) error {
	if strings.TrimSpace(given) == "" {
		return usage(hint, "%s", ask)
	}
	return nil
}
