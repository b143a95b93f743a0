package benchpage

import (
	"cmp"
	"crypto/rand"
	"crypto/sha256"
	"encoding/base64"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"time"

	"github.com/go-json-experiment/json"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/check"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"
)

// form is an act as a page.
type form struct {
	Act, Action string
	Token       string
	Seen        string // digest of what was shown, which is what is written
	At          string
	Ago         string
	Now         bool // it is written as done now
	Batch, Back string
	Ticks       []tick
	Size        string // of all panels, where they are alike
	Inputs      []input
	More        []string // what is asked for under "more"
	Open        bool     // something stands there
	About       string   // the entry that is put right or taken back
	Go          string   // what the big button says
	Said        *saying
	Refused     *refusal
	Lacks       *refusal // why nothing can be written yet
	Changed     bool     // what would be written is no longer what was shown
	Picture     string   // a preview to look at
}

// saying is what would be written, said back.
type saying struct{ What, Means, Warnings []string }

type tick struct {
	Number record.Number
	Note   string
	On     bool
}

// act shows a form with what it would write; sent, it writes what it showed.
func (d *desk) act() error {
	name := d.r.PathValue("act")
	a, ok := acts[name]
	if !ok {
		return noPage("there is nothing to be done by the name of %q", name)
	}
	if d.ReadOnly {
		return refuse.Cannot("page-read-only", "this page is only for reading")
	}
	var f url.Values
	if d.r.Method == http.MethodGet {
		f = d.first(a, d.r.URL.Query())
	} else {
		if err := d.r.ParseForm(); err != nil {
			return refuse.Unclearly("form-not-read", "the form cannot be read: %w", err)
		}
		f = d.r.PostForm
	}
	page := &form{Act: name, Action: "/act/" + name, Token: cmp.Or(f.Get("token"), rand.Text()), At: f.Get("at"), Ago: f.Get("ago"), Batch: f.Get("batch"), Back: f.Get("back")}
	v, r, at, err := d.look(a, f)
	if err == nil {
		page.Said, page.Seen, err = d.try(a, v, r, at, f)
	}
	if p, ok := errors.AsType[*book.Posted](d.sent(page.Token)); ok {
		return d.wrote(page, p.First)
	}
	if err == nil && f.Get("go") == "write" {
		if page.Changed = f.Get("seen") != page.Seen; !page.Changed {
			return d.do(a, page, f)
		}
	}
	return d.showForm(a, page, f, err)
}

// sent reports by a *book.Posted that a form was written before.
func (d *desk) sent(token string) error {
	p, ok, err := d.Studio.Book.PostedWith(d.ctx, token)
	if err == nil && ok {
		return &p
	}
	return err
}

// look reads of the book and the form what an act needs.
func (d *desk) look(a act, f url.Values) (v *studio.View, r *typed.Reader, at record.When, err error) {
	var panels []string
	if !a.none {
		if panels = ticked(f); len(panels) == 0 && !(a.maybe && f.Get("ticks") == "") {
			return nil, nil, at, refuse.Unclearly("page-no-panels", "no panel is ticked")
		}
	}
	if v, err = d.Studio.Look(d.ctx, panels, nil); err != nil {
		return nil, nil, at, err
	}
	r = typed.For(v)
	at = r.At(first(f, "at", "ago"))
	return v, r, at, r.Err()
}

// ticked are the panels of a form: ticks, or a list in one field.
func ticked(f url.Values) (out []string) {
	for _, p := range f["panel"] {
		for one := range strings.SplitSeq(p, ",") {
			if one = strings.TrimSpace(one); one != "" && !slices.Contains(out, one) {
				out = append(out, one)
			}
		}
	}
	return out
}

// try says what an act would write.
func (d *desk) try(a act, v *studio.View, r *typed.Reader, at record.When, f url.Values) (*saying, string, error) {
	trial := *d
	trial.ctx = book.Trial(d.ctx)
	w, err := a.do(&trial, v, r, at, f)
	if err != nil {
		return nil, "", err
	}
	warnings := append(r.Warnings, w.Warnings...)
	calm := func(x record.Said) bool { return x.Code == "left-out" || x.Code == "printed-before" }
	s := &saying{Means: d.says(w.Means)}
	for _, x := range warnings {
		if calm(x) {
			s.Means = append(s.Means, d.says([]record.Said{x})...)
		} else {
			s.Warnings = append(s.Warnings, d.says([]record.Said{x})...)
		}
	}
	sum := sha256.New()
	for _, e := range w.Entries {
		s.What = append(s.What, d.what(e))
		e = unsealed(e)
		b, err := json.Marshal(e.Body, json.Deterministic(true))
		if err != nil {
			return nil, "", err
		}
		fmt.Fprintf(sum, "%s%s\n", b, terms(e.Panels))
	}
	if len(w.Entries) == 0 { // a paper: its entry names its bytes, which are not made yet
		s.What = []string{d.say("page-will-"+d.r.PathValue("act"), record.With("panels", v.Panels))}
	}
	for _, x := range warnings {
		if x.Code != "clock-behind" { // its values change with every second
			fmt.Fprintln(sum, tell.Say(d.c, x))
		}
	}
	for _, in := range a.inputs(d) {
		if x := strings.TrimSpace(f.Get(in.Name)); in.Secret && x != "" {
			s.Means = append(s.Means, d.say("page-secretly", tell.Told("input", in.Label), tell.Told("value", x)))
			fmt.Fprintln(sum, x)
		}
	}
	fmt.Fprintln(sum, first(f, "at", "ago"), f.Get("reason"), terms(v.Panels))
	return s, base64.RawURLEncoding.EncodeToString(sum.Sum(nil)), nil
}

// unsealed is an entry without the digest of its private part, which is another
// each time.
func unsealed(e record.Entry) record.Entry {
	switch b := e.Body.(type) {
	case record.HandedOver:
		b.Private = ""
		e.Body = b
	case record.Lot:
		b.Private = ""
		e.Body = b
	}
	return e
}

// agos are the times at which most is done, as they would be typed, with the
// codes of their words.
var agos = [][2]string{{"", "now-just"}, {"half an hour ago", "ago-half"}, {"an hour ago", "ago-one"}, {"2 hours ago", "ago-two"}}

// what says what an entry is.
func (d *desk) what(e record.Entry) string {
	what := d.c.WholeEvent(record.Event{At: e.At, Written: e.Written, Body: e.Body, Panels: e.Panels, Makers: e.Makers})
	return d.say("page-what", tell.Told("what", d.c.Capital(what)), record.With("panels", e.Panels), record.With("at", e.At))
}

// do writes, once, and shows where it was done.
func (d *desk) do(a act, page *form, f url.Values) error {
	v, r, at, err := d.look(a, f)
	if err != nil {
		return err
	}
	once := *d
	once.ctx = book.Once(d.ctx, page.Token)
	w, err := a.do(&once, v, r, at, f)
	if p, ok := errors.AsType[*book.Posted](err); ok {
		return d.wrote(page, p.First)
	}
	if err != nil {
		return d.showForm(a, page, f, err)
	}
	return d.wrote(page, w.Entries[0].Seq)
}

// wrote goes to the page where what was written is shown.
func (d *desk) wrote(page *form, seq int64) error {
	to := page.Back
	if to == "" || to[0] != '/' || strings.HasPrefix(to, "//") || strings.Contains(to, "\\") {
		to = "/"
		if e, err := bench.Entry(d.ctx, d.Studio.Book, seq); err == nil && len(e.Panels) > 0 {
			v, err := d.Studio.Look(d.ctx, texts(e.Panels[:1]), nil)
			if err != nil {
				return err
			}
			if p := v.Shop.Panel(e.Panels[0]); p != nil {
				to = "/batch/" + url.PathEscape(string(p.Batch))
			}
		}
	}
	to, _, _ = strings.Cut(to, "?")
	http.Redirect(d.w, d.r, to+"?w="+url.QueryEscape(page.Token), http.StatusSeeOther)
	return nil
}

// first fills a form for the first time: as the step that is due proposes, or
// with what the address says.
func (d *desk) first(a act, f url.Values) url.Values {
	ns := d.named(f)
	var body record.Body
	if task := check.Task(f.Get("task")); task != "" {
		entry, _ := typed.Entry(cmp.Or(f.Get("of"), "0"))
		body = bench.Propose(d.shop, task, record.Say("", record.With("face", record.Face(f.Get("face")))), entry, len(ns))
	} else if f.Get("title") == "" && len(ns) == 1 && a.one && a.last != nil {
		body = d.shop.Panel(ns[0]).Description()
	}
	if body == nil && a.front && len(f["on"]) == 0 {
		f.Set("on", string(record.Front))
	}
	if body != nil && a.last != nil {
		for k, vs := range a.last(d, body) {
			if _, there := f[k]; !there {
				f[k] = vs
			}
		}
	}
	return f
}

func (d *desk) showForm(a act, page *form, f url.Values, err error) error {
	if err != nil {
		if x := d.refusal(err); f.Get("go") == "write" || f.Get(x.Field) != "" {
			page.Refused = x
		} else { // it was not filled in yet
			page.Lacks = x
			for _, code := range []string{refuse.Code(err), "is-" + x.Field} {
				if _, ok := d.c.Codes["page-lacks-"+code]; ok {
					x.Why, x.Hint = d.say("page-lacks-"+code), ""
				}
			}
		}
	}
	page.Inputs = fill(a.inputs(d), f)
	for _, i := range page.Inputs {
		if i.More {
			page.More = append(page.More, i.Label)
			page.Open = page.Open || i.Value() != ""
		}
	}
	if e, err := d.about(); err == nil && f.Get("entry") != "" {
		page.About = d.what(e)
	}
	if page.Act == "cut" {
		page.More = []string{d.say("page-other-sizes")}
	}
	page.Go = "write-it"
	if _, ok := d.c.Codes["page-go-"+page.Act]; ok {
		page.Go = "go-" + page.Act
	} else if page.Said != nil && page.Said.Warnings != nil {
		page.Go = "write-anyway"
	}
	if !a.none {
		page.Size, page.Ticks = d.ticks(f, page.Batch)
	}
	switch page.Act {
	case "label", "certificate":
		page.Picture = "/preview/" + page.Act + "?" + url.Values{"panel": f["panel"]}.Encode()
	}
	page.Now = a.now
	return d.show("act", d.say("act-"+page.Act), page)
}

// ticks are the panels of the batch that are here, those that were asked for
// ticked, and their size where all have the same.
func (d *desk) ticks(f url.Values, batch string) (size string, out []tick) {
	on := map[record.Number]bool{}
	for _, n := range d.named(f) {
		on[n] = true
	}
	alike := true
	for _, p := range d.shop.Panels {
		if !on[p.Number] && (batch == "" || string(p.Batch) != batch || !here(p)) {
			continue
		}
		l := d.line(p)
		t := tick{p.Number, l.Size, on[p.Number]}
		if !l.Here && len(on) > 1 { // it would be left out
			t.Note, t.On = l.State, false
		}
		out = append(out, t)
		alike = alike && out[0].Note == t.Note
	}
	if !alike || len(out) < 2 {
		return "", out
	}
	size = out[0].Note
	for i := range out {
		out[i].Note = ""
	}
	return size, out
}

// named are the panels of a form that are in the book.
func (d *desk) named(f url.Values) []record.Number {
	ns, _ := d.roll().Select(ticked(f), nil)
	return ns
}

// roll is the numbers of the book.
func (d *desk) roll() record.Roll {
	r := record.Roll{Batches: map[record.Key][]record.Number{}, NAAN: d.shop.Studio.NAAN}
	for _, p := range d.shop.Panels {
		r.Numbers = append(r.Numbers, p.Number)
		r.Batches[p.Batch] = append(r.Batches[p.Batch], p.Number)
	}
	return r
}

// written is what came of a form.
type written struct {
	What    []string
	Entry   int64 // that can be taken back; 0: none
	Panels  string
	Batch   string
	Until   int64 // milliseconds since 1970 until which it is offered
	Offered bool
	Paper   string
}

// backWithin is how long it is offered to take back what was written.
const backWithin = time.Minute

func (d *desk) writtenBy(token string) *written {
	p, ok, err := d.Studio.Book.PostedWith(d.ctx, token)
	if err != nil || !ok {
		return nil
	}
	es, err := d.Studio.Book.Entries(d.ctx, book.Filter{From: p.First, To: p.Last})
	if err != nil {
		return nil
	}
	w := &written{}
	for _, e := range es {
		w.What = append(w.What, d.what(e.Entry))
		t := e.Entry.Body.Kind().Traits()
		if t.Stays == "" && t.NotTaken == "" && len(es) == 1 {
			w.Entry, w.Panels = e.Seq, terms(e.Entry.Panels)
			if at, ok := e.Entry.Written.Exact(); ok {
				w.Until = at.Add(backWithin).UnixMilli()
				w.Offered = d.now.Before(at.Add(backWithin))
			}
		}
		switch b := e.Entry.Body.(type) {
		case record.LabelPrinted:
			w.Paper = b.PDF
		case record.Issued:
			w.Paper = b.PDF
		}
	}
	return w
}

// posted says whether a form was written: what a device asks that lost the
// answer.
func (d *desk) posted() error {
	p, ok, err := d.Studio.Book.PostedWith(d.ctx, d.r.PathValue("token"))
	if err != nil {
		return err
	}
	return d.answer(map[string]any{"written": ok, "first": p.First})
}

func (d *desk) answer(v any) error {
	b, err := json.Marshal(v, json.Deterministic(true))
	if err != nil {
		return err
	}
	d.w.Header().Set("Content-Type", "application/json")
	_, err = d.w.Write(b)
	return err
}

// now says how far the book is and what time it is here: a tablet's clock may
// be wrong.
func (d *desk) tell() error {
	return d.answer(map[string]any{"size": d.shop.Last, "now": d.now.UnixMilli()})
}
