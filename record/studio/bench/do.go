// Package bench is what is done at the bench: panels numbered, coated, worked,
// looked at, described, and what was written down wrong put right. Values come
// typed; what a person types is read by package typed.
package bench

import (
	"cmp"
	"context"
	"reflect"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/paper"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/stock"
)

// Act is one thing that was done on panels, as it is said at the bench.
type Act struct {
	Body    record.Body
	At      []record.When // of several coats a time for each
	Tins    []Tin         // where not all were coated from the same
	Remarks []Remark
	Relaid  bool // the cloth that was laid before, lifted and laid again
}

// Tin is what some of the panels were coated from, as when a tin ran out: the
// lots take the place of those in the body.
type Tin struct {
	Panels []record.Number
	Mix    []record.Part
}

// Remark is what there is to say of some of the panels only.
type Remark struct {
	Panels []record.Number
	Text   string
}

// Do writes down what was done once, alike on all panels of a view; see
// [Perform].
func Do(ctx context.Context, v *studio.View, at record.When, body record.Body) (studio.Written, error) {
	return Perform(ctx, v, Act{Body: body, At: []record.When{at}})
}

// Perform writes down what was done on the panels of a view, all of it or
// nothing. Each body is judged first: it may be refused, completed, or doubted
// in a warning.
func Perform(ctx context.Context, v *studio.View, a Act) (studio.Written, error) {
	var w studio.Written
	if len(a.At) == 0 {
		a.At = []record.When{record.Moment(v.Local())}
	}
	warnings, err := present(ctx, v, a.At[0], a.Body)
	if err != nil {
		return w, err
	}
	if l, ok := a.Body.(record.ClothLaid); ok && a.Relaid {
		if a.Body, err = Again(v, l); err != nil {
			return w, err
		}
	}
	shares, err := a.shares(v)
	if err != nil {
		return w, err
	}
	return a.write(ctx, v, shares, warnings)
}

// write judges and writes what was done on each share of the panels.
func (a Act) write(ctx context.Context, v *studio.View, shares []share, warnings []record.Said) (w studio.Written, err error) {
	var means []record.Said
	var es []record.Entry
	of := make([]int, len(warnings)) // the entry that each is about
	for _, at := range a.At {
		for _, s := range shares {
			one := *v
			one.Panels = s.panels
			body, doubts, err := doubted(&one, at, s.body)
			if err != nil {
				return w, err
			}
			warnings, means = append(warnings, doubts...), append(means, mean(&one, body)...)
			of = append(of, slices.Repeat([]int{len(es)}, len(doubts))...)
			es = append(es, record.Entry{At: at, Panels: s.panels, Body: body})
		}
	}
	for _, r := range a.Remarks {
		es = append(es, record.Entry{At: a.At[0], Panels: r.Panels, Body: record.Note{Text: r.Text}})
	}
	if w, err = v.Write(ctx, es...); err != nil {
		return w, err
	}
	ctx = context.WithoutCancel(ctx) // it is on record: who stops now is told so
	toAmend(warnings, func(i int) record.Entry { return w.Entries[of[i]] })
	warnings, means = append(warnings, w.Warnings...), append(means, w.Means...)
	for _, e := range w.Entries {
		left, more, aerr := After(ctx, v, e)
		if aerr != nil {
			return w, aerr
		}
		means, warnings = append(means, left...), append(warnings, more...)
	}
	w.Warnings, w.Means = once(warnings), once(means)
	return w, err
}

// toAmend names the entry in what was left open: the line that puts it right does.
func toAmend(warnings []record.Said, entry func(i int) record.Entry) {
	for i, s := range warnings {
		if s.Code == "left-open" || strings.HasSuffix(s.Code, "-not-recorded") {
			warnings[i] = record.Say(s.Code, append(s.Values, record.With("entry", record.EntryRef(entry(i).Seq)))...)
		}
	}
}

// Before judges an act that is about to be written on the panels of a view:
// it may be refused, completed, or doubted.
func Before(ctx context.Context, v *studio.View, at record.When, body record.Body) (record.Body, []record.Said, error) {
	if c, ok := body.(record.Cut); ok {
		return body, doubtCuts(ctx, v, at, c.Batch, slices.Repeat([]record.Cut{c}, len(v.Panels))), noSuchBoard(v.Shop, c)
	}
	if a, ok := body.(record.Amended); ok {
		return body, nil, asAct(v, v.Shop, a)
	}
	warnings, err := present(ctx, v, at, body)
	if err != nil {
		return body, nil, err
	}
	body, doubts, err := doubted(v, at, body)
	return body, once(append(warnings, doubts...)), err
}

// After says what an entry that was just written leaves of the lots, what a
// correction comes to, and what cannot be printed.
func After(ctx context.Context, v *studio.View, e record.Entry) (means, warnings []record.Said, err error) {
	if e.Corrects() != 0 {
		return corrected(ctx, v, e)
	}
	if d, ok := e.Body.(record.Described); ok {
		warnings = Unprintable(cmp.Or(d.Romanised, d.Title), d.Subject, d.Inscription, d.Signed, d.Features, d.Medium)
	}
	if c, ok := e.Body.(record.Climate); ok {
		return airOf(c), nil, nil
	}
	left, over, err := stock.Left(ctx, v.Book, v.Shop, e.Body)
	return left, append(warnings, over...), err
}

// present leaves out who is not meant, and names who may be forgotten.
func present(ctx context.Context, v *studio.View, at record.When, body record.Body) ([]record.Said, error) {
	left, err := atHand(v, at, body)
	if err != nil {
		return nil, err
	}
	return append(left, forgotten(ctx, v, at, body)...), nil
}

func doubted(v *studio.View, at record.When, body record.Body) (record.Body, []record.Said, error) {
	body, doubts, err := judge(v, body)
	if err != nil {
		return body, doubts, err
	}
	return body, append(doubts, doubt(v, at, body)...), nil
}

// share is what was done on some of the panels of an act.
type share struct {
	panels []record.Number
	body   record.Body
}

// shares parts an act by the tins, and refuses what cannot be parted.
func (a Act) shares(v *studio.View) ([]share, error) {
	c, _, _ := record.Entry{Body: a.Body}.Wet()
	switch {
	case len(a.At) > 1 && !a.Body.Kind().Traits().Layer:
		return nil, refuse.Input("at", "several-times", "this is done once, and %d times were given", len(a.At))
	case c == nil && len(a.Tins) > 0:
		return nil, refuse.Unclearly("no-tins", "no tins are used for this")
	case c != nil && !c.WetTotal.IsZero() && len(a.At) > 1:
		return nil, refuse.Input("amount", "amount-of-coats", "%s could be for each coat or for all of them", c.WetTotal)
	case c != nil && !c.WetTotal.IsZero() && len(a.Tins) > 0:
		return nil, refuse.Input("amount", "amount-of-tins", "%s could be out of the first tin or out of all", c.WetTotal)
	}
	for _, r := range a.Remarks {
		if err := among(v, r.Panels); err != nil {
			return nil, err
		}
	}
	rest := share{slices.Clone(v.Panels), a.Body}
	var out []share
	for _, t := range a.Tins {
		if err := among(v, t.Panels); err != nil {
			return nil, err
		}
		for _, n := range t.Panels {
			i := slices.Index(rest.panels, n)
			if i < 0 {
				return nil, refuse.Unclearly("tin-twice", "%s is given two other tins", n)
			}
			rest.panels = slices.Delete(rest.panels, i, i+1)
		}
		out = append(out, share{t.Panels, from(v, a.Body, t.Mix)})
	}
	if len(rest.panels) > 0 || out == nil {
		out = append([]share{rest}, out...)
	}
	return out, nil
}

// among refuses panels that the act is not about.
func among(v *studio.View, ns []record.Number) error {
	for _, n := range ns {
		if !slices.Contains(v.Panels, n) {
			return refuse.Unclearly("not-among", "%s is not among the panels of this act", n)
		}
	}
	return nil
}

// from is an act with other lots: of cloth where they are cloth, else of what
// is wet.
func from(v *studio.View, body record.Body, mix []record.Part) record.Body {
	if l, ok := body.(record.ClothLaid); ok && len(mix) == 1 {
		if m, _ := v.Shop.MaterialNow(mix[0].Material); slices.Contains(m.Uses, "cloth") {
			l.Cloth, l.ClothLot, l.ClothAs = mix[0].Material, mix[0].Lot, nil
			return l
		}
	}
	return mixed(body, mix)
}

// once leaves out what is said already.
func once(all []record.Said) (out []record.Said) {
	for _, s := range all {
		if !slices.ContainsFunc(out, func(o record.Said) bool { return reflect.DeepEqual(o, s) }) {
			out = append(out, s)
		}
	}
	return out
}

// Unprintable warns of texts with a character that no face at hand has: they
// are recorded as they are, but no label or certificate can be drawn.
func Unprintable(texts ...string) (ws []record.Said) {
	for _, t := range texts {
		if _, err := paper.Compose(0, paper.Span{Style: paper.Body, Text: t, Field: "“" + t + "”"}); err != nil {
			ws = append(ws, record.Say("not-printable", record.With("why", err.Error())))
		}
	}
	return ws
}
