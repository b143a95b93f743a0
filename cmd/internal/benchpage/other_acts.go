package benchpage

import (
	"net/url"
	"reflect"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/handover"
	"backleaf/record/studio/papers"
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/shelf"
	"backleaf/record/studio/typed"
)

func init() {
	for name, a := range map[string]act{
		"describe":    {asks: func(a *ask) { described(a, new(record.Described)) }, one: true, do: describe, last: doing(described).last},
		"handover":    {asks: func(a *ask) { partedWith(a, new(parted)) }, do: handOver},
		"lot":         {asks: func(a *ask) { lotFields(a, new(record.Lot)) }, do: addLot, none: true},
		"label":       {asks: func(a *ask) { again[record.LabelPrinted](a) }, do: printLabels},
		"certificate": {asks: func(a *ask) { again[record.Issued](a); a.add("buyer", "line").Secret = true }, do: issue, one: true, now: true},
		"withdraw":    {asks: askWhy, do: withdraw, maybe: true, now: true},
	} {
		acts[name] = a
	}
}

func described(a *ask, d *record.Described) {
	a.text(&d.Title, "title")
	a.when(&d.Made, "made")
	a.text(&d.Signed, "signed")
	a.text(&d.Inscription, "inscription")
	a.text(&d.Subject, "subject")
	a.text(&d.Medium, "medium-line").More = true
	a.text(&d.Features, "features").More = true
	a.text(&d.Owner, "own-reference").More = true
	word(a, &d.Framed, "framed").More = true
}

// parted is a handover with its private part.
type parted struct {
	record.HandedOver
	private private.Part
}

func partedWith(a *ask, h *parted) {
	word(a, &h.How, "how")
	a.text(&h.private.To, "to").Secret = true
	price := a.price(&h.private.Price)
	price.Hint = a.d.say("eg-price-of-work")
	a.text(&h.private.Note, "private-note").Secret = true
	a.text(&h.Note, "note").More = true
}

func lotFields(a *ask, l *record.Lot) {
	a.text((*string)(&l.Key), "key")
	a.field("material", func(s string) { l.Material = record.Key(s) }, nil)
	a.add("material", "one", materials(a)...)
	a.text(&l.MakerLot, "number")
	a.value(&l.Quantity, "quantity")
	a.when(&l.Expires, "expires")
	a.price(new(private.Price))
	a.text(&l.Supplier, "supplier").More = true
	a.value(&l.Sheet, "sheet").More = true
	a.when(&l.Opened, "opened").More = true
	a.text(&l.Note, "note").More = true
}

// again asks for the reason of another paper, where there is one.
func again[B record.Body](a *ask) {
	for _, n := range a.d.named(a.d.r.Form) {
		if old, ok := record.Latest[B](a.d.shop.Panel(n)); ok {
			a.add("reason", "line").Hint = a.d.say("page-made-before", record.With("panel", n), record.With("at", old.At))
			return
		}
	}
}

func describe(k *desk, v *studio.View, r *typed.Reader, at record.When, f url.Values) (studio.Written, error) {
	d := read(k, r, f, described)
	if r.Err() != nil {
		return studio.Written{}, r.Err()
	}
	if old := v.Shop.Panel(v.Panels[0]).Description(); len(v.Panels) == 1 {
		d = news(d, old)
	}
	return bench.Do(k.ctx, v, at, d)
}

// news is what a description says that an earlier one does not.
func news(d, old record.Described) record.Described {
	new, was := reflect.ValueOf(&d).Elem(), reflect.ValueOf(old)
	for i := range new.NumField() {
		if new.Field(i).Interface() == was.Field(i).Interface() {
			new.Field(i).SetZero()
		}
	}
	return d
}

func handOver(d *desk, v *studio.View, r *typed.Reader, at record.When, f url.Values) (studio.Written, error) {
	h := read(d, r, f, partedWith)
	if r.Err() != nil {
		return studio.Written{}, r.Err()
	}
	return handover.Write(d.ctx, v, at, h.HandedOver, h.private)
}

func materials(a *ask) (out []option) {
	for _, m := range a.d.shop.Materials {
		out = append(out, option{Value: string(m.Body.Key), Words: m.Body.Name})
	}
	return out
}

func addLot(d *desk, v *studio.View, r *typed.Reader, at record.When, f url.Values) (studio.Written, error) {
	l := read(d, r, f, lotFields)
	l.Key = record.Key(strings.ToLower(string(l.Key)))
	price := r.Price("price", f.Get("price"))
	if l.Material == "" {
		return studio.Written{}, refuse.Input("material", "page-no-material", "of which material is it?")
	}
	if r.Err() != nil {
		return studio.Written{}, r.Err()
	}
	return shelf.AddLot(d.ctx, v, at, l, price)
}

func printLabels(d *desk, v *studio.View, r *typed.Reader, at record.When, f url.Values) (studio.Written, error) {
	o, err := papers.Usual(v.Shop.Studio)
	if err != nil {
		return studio.Written{}, err
	}
	if v.Shop, err = v.Book.WorkshopOf(d.ctx, v.Panels...); err != nil { // as [studio.Session.LookWhole]
		return studio.Written{}, err
	}
	o.At, o.Because, o.Preview = at, f.Get("reason"), book.IsTrial(d.ctx)
	l, err := papers.Print(d.ctx, v, o)
	return studio.Written{Entries: l.Entries, Warnings: l.Warnings}, err
}

func issue(d *desk, v *studio.View, _ *typed.Reader, _ record.When, f url.Values) (w studio.Written, err error) {
	if len(v.Panels) != 1 {
		return w, refuse.Unclearly("one-panel", "a certificate speaks of one panel")
	}
	c, err := papers.Issue(d.ctx, v.Session, papers.CertificateOrder{Panel: string(v.Panels[0]), Buyer: f.Get("buyer"), Because: f.Get("reason"),
		Preview: book.IsTrial(d.ctx), Key: d.Key})
	return studio.Written{Entries: c.Entries}, err
}

// askWhy asks for the reason of a withdrawal: the usual ones are one tap.
func askWhy(a *ask) {
	a.add("entry", "hidden")
	var usual []option
	for _, code := range []string{"why-wrong-panels", "why-wrong-amount", "why-wrong-lot", "why-not-done", "why-twice"} {
		usual = append(usual, option{Value: a.d.say(code), Words: a.d.say(code)})
	}
	a.add("why", "one", usual...)
	a.add("because", "line")
}

func withdraw(d *desk, v *studio.View, _ *typed.Reader, at record.When, f url.Values) (studio.Written, error) {
	old, err := d.about()
	if err != nil {
		return studio.Written{}, err
	}
	return correct(d, v, at, old, record.Withdrawn{Entry: old.Seq, Because: first(f, "because", "why")})
}
