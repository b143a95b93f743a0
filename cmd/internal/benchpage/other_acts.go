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
		"paint": doing(func(a *ask) {
			word[record.PaintMedium](a, "medium")
			a.line("technique")
			a.stuff("with", "paint")
			a.more("underdrawing")
			a.coating()
		}, func(r *typed.Reader, f url.Values) record.PaintLayer {
			p := record.PaintLayer{Coating: coating(r, f), Faces: []record.Face{record.Front}, Technique: f.Get("technique"), Underdrawing: f.Get("underdrawing")}
			typed.Word(r, "medium", f.Get("medium"), &p.Medium)
			return p
		}, func(p record.PaintLayer) url.Values { return url.Values{"medium": {string(p.Medium)}} }),
		"varnish": doing(func(a *ask) {
			a.stuff("with", "varnish")
			word[record.Gloss](a, "gloss")
			word[record.Answer](a, "removable")
			a.line("removed-with", "amount")
			a.coating()
		}, func(r *typed.Reader, f url.Values) record.Varnish {
			v := record.Varnish{Coating: coating(r, f), RemovedWith: f.Get("removed-with")}
			typed.Word(r, "removable", f.Get("removable"), &v.Removable)
			typed.Word(r, "gloss", f.Get("gloss"), &v.Gloss)
			return v
		}, func(v record.Varnish) url.Values {
			return coated(v.Coating, url.Values{"gloss": {string(v.Gloss)}, "removable": {string(v.Removable)}, "removed-with": {v.RemovedWith}})
		}),
		"describe": {asks: func(a *ask) {
			a.line("title", "made", "signed", "inscription", "subject")
			a.more("medium-line", "features", "own-reference")
			word[record.Answer](a, "framed").More = true
		}, one: true, do: describe, last: func(b record.Body) url.Values {
			d := b.(record.Described)
			return url.Values{"title": {d.Title}, "made": {d.Made.String()}, "signed": {d.Signed}, "inscription": {d.Inscription}, "subject": {d.Subject},
				"medium-line": {d.Medium}, "features": {d.Features}, "own-reference": {d.Owner}, "framed": {string(d.Framed)}}
		}},
		"handover": {asks: func(a *ask) {
			word[record.Parting](a, "how")
			for _, n := range []string{"to", "price", "private-note"} {
				in := a.add(n, "line")
				if in.Secret = true; n == "price" {
					in.Hint = a.d.say("eg-price-of-work")
				}
			}
			a.more("note")
		}, do: handOver},
		"lot": {asks: func(a *ask) {
			a.line("key")
			a.add("material", "one", materials(a)...)
			a.line("number", "quantity", "expires")
			a.add("price", "line").Secret = true
			a.more("supplier", "sheet", "opened", "note")
		}, do: addLot, none: true},
		"label":       {asks: func(a *ask) { again[record.LabelPrinted](a) }, do: printLabels},
		"certificate": {asks: func(a *ask) { again[record.Issued](a); a.add("buyer", "line").Secret = true }, do: issue, one: true, now: true},
		"withdraw":    {asks: askWhy, do: withdraw, maybe: true, now: true},
	} {
		acts[name] = a
	}
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
	d := record.Described{Title: f.Get("title"), Signed: f.Get("signed"), Inscription: f.Get("inscription"), Subject: f.Get("subject"),
		Medium: f.Get("medium-line"), Features: f.Get("features"), Owner: f.Get("own-reference")}
	r.When(f.Get("made"), &d.Made)
	typed.Word(r, "framed", f.Get("framed"), &d.Framed)
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
	h := record.HandedOver{Note: f.Get("note")}
	typed.Word(r, "how", f.Get("how"), &h.How)
	part := private.Part{To: f.Get("to"), Note: f.Get("private-note"), Price: r.Price("price", f.Get("price"))}
	if r.Err() != nil {
		return studio.Written{}, r.Err()
	}
	return handover.Write(d.ctx, v, at, h, part)
}

func materials(a *ask) (out []option) {
	for _, m := range a.d.shop.Materials {
		out = append(out, option{Value: string(m.Body.Key), Words: m.Body.Name})
	}
	return out
}

func addLot(d *desk, v *studio.View, r *typed.Reader, at record.When, f url.Values) (studio.Written, error) {
	l := record.Lot{Key: record.Key(strings.ToLower(f.Get("key"))), Material: record.Key(f.Get("material")), MakerLot: f.Get("number"), Supplier: f.Get("supplier"), Note: f.Get("note")}
	r.Text("quantity", f.Get("quantity"), &l.Quantity)
	r.Text("sheet", f.Get("sheet"), &l.Sheet)
	r.When(f.Get("expires"), &l.Expires)
	r.When(f.Get("opened"), &l.Opened)
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
	o.At, o.Because, o.Preview = at, f.Get("reason"), book.IsTrial(d.ctx)
	l, err := papers.Print(d.ctx, v, o)
	return l.Written, err
}

func issue(d *desk, v *studio.View, _ *typed.Reader, _ record.When, f url.Values) (w studio.Written, err error) {
	if len(v.Panels) != 1 {
		return w, refuse.Unclearly("one-panel", "a certificate speaks of one panel")
	}
	c, err := papers.Issue(d.ctx, v.Session, papers.CertificateOrder{Panel: string(v.Panels[0]), Buyer: f.Get("buyer"), Because: f.Get("reason"),
		Preview: book.IsTrial(d.ctx), Key: d.Key})
	if err == nil && c.Entry != 0 {
		e, err := bench.Entry(d.ctx, v.Book, c.Entry)
		return studio.Written{Entries: []record.Entry{e}}, err
	}
	return w, err
}

// askWhy asks for the reason of a withdrawal: the usual ones are one tap.
func askWhy(a *ask) {
	a.add("entry", "hidden")
	var usual []option
	for _, code := range []string{"why-wrong-panels", "why-wrong-amount", "why-wrong-lot", "why-not-done", "why-twice"} {
		usual = append(usual, option{Value: a.d.say(code), Words: a.d.say(code)})
	}
	a.add("why", "one", usual...)
	a.line("because")
}

func withdraw(d *desk, v *studio.View, r *typed.Reader, at record.When, f url.Values) (studio.Written, error) {
	seq, err := typed.Entry(f.Get("entry"))
	if err != nil {
		return studio.Written{}, err
	}
	old, err := bench.Entry(d.ctx, v.Book, seq)
	if err != nil {
		return studio.Written{}, err
	}
	if len(v.Panels) == len(old.Panels) { // all of it
		v.Panels = nil
	}
	w, outdated, err := bench.Correct(d.ctx, v, at, old, record.Withdrawn{Entry: seq, Because: first(f, "because", "why")})
	for _, o := range outdated {
		w.Warnings = append(w.Warnings, record.Say("page-outdated", record.With("panel", o.Panel), record.With("entry", record.EntryRef(o.Certificate))))
	}
	return w, err
}
