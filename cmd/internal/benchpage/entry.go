package benchpage

import (
	"net/url"
	"reflect"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"
)

// entry shows one entry, with what can be put right.
func (d *desk) entry() error {
	seq, err := typed.Entry(d.r.PathValue("entry"))
	if err != nil {
		return err
	}
	e, err := bench.Entry(d.ctx, d.Studio.Book, seq)
	if err != nil {
		return err
	}
	var body struct {
		What        string
		Panels      string
		Rows        []tell.Row
		Amend, Take string
		Panel       string // whose drawing after this entry is offered
		Entry       int64
	}
	body.What, body.Rows = d.what(e), d.c.EntryRows(e)
	if n := record.Number(d.r.FormValue("panel")); slices.Contains(e.Panels, n) {
		body.Panel, body.Entry = string(n), seq
	}
	if t := e.Kind().Traits(); !d.ReadOnly && t.Stays == "" {
		q := url.Values{"entry": {itoa(seq)}, "panel": {terms(e.Panels)}}
		body.Amend = "/act/amend?" + q.Encode()
		if t.NotTaken == "" {
			body.Take = "/act/withdraw?" + q.Encode()
		}
	}
	return d.show("entry", d.say("page-entry", record.With("entry", record.EntryRef(seq))), body)
}

func init() {
	acts["amend"] = act{asks: askAmend, do: amend, maybe: true, now: true}
}

// askAmend asks for each field of an entry that a person can type.
func askAmend(a *ask) {
	a.add("entry", "hidden")
	e, err := a.d.about()
	if err != nil {
		return
	}
	for _, r := range a.d.c.EntryRows(e) {
		if f := fieldOf(e, r.Path); r.Path != "written" && f {
			in := input{Name: "set-" + r.Path, Label: a.d.c.Capital(r.Name), Sort: "line", Hint: a.d.say("page-as-recorded", tell.Told("value", r.Value))}
			if i := slices.IndexFunc(e.Kind().Fields(), func(f record.Field) bool { return f.Name == r.Path }); i >= 0 {
				in.choices(a.d.c, e.Kind().Fields()[i])
			}
			a.all = append(a.all, in)
		}
	}
	a.add("because", "line")
}

// choices offers the words that a field takes, where it takes no others.
func (i *input) choices(c *tell.Catalogue, f record.Field) {
	for _, w := range f.Words() {
		v := reflect.New(f.Type).Elem()
		v.SetString(w)
		i.Options = append(i.Options, option{Value: w, Words: c.Word(v.Interface())})
	}
	if i.Options != nil {
		i.Sort = map[bool]string{false: "one", true: "many"}[f.List]
	}
}

// about is the entry that a form is about.
func (d *desk) about() (record.Entry, error) {
	seq, err := typed.Entry(d.r.FormValue("entry"))
	if err != nil {
		return record.Entry{}, err
	}
	return bench.Entry(d.ctx, d.Studio.Book, seq)
}

// fieldOf reports that a field of an entry is one that is typed, and no
// reference that is filled in by itself.
func fieldOf(e record.Entry, path string) bool {
	if path == "at" {
		return true
	}
	return slices.ContainsFunc(e.Kind().Fields(), func(f record.Field) bool {
		return f.Name == path && f.Fields == nil && !strings.HasSuffix(f.Name, "_as") && f.Ref == "" && f.Is != "sha256" && f.Is != "media"
	})
}

func amend(d *desk, v *studio.View, r *typed.Reader, at record.When, f url.Values) (w studio.Written, err error) {
	old, err := d.about()
	if err != nil {
		return w, err
	}
	var sets []typed.Set
	for k, vs := range f {
		if field, ok := strings.CutPrefix(k, "set-"); ok && strings.TrimSpace(vs[0]) != "" {
			sets = append(sets, typed.Set{Field: field, Typed: strings.TrimSpace(strings.Join(vs, ","))})
		}
	}
	if len(sets) == 0 {
		return w, refuse.Unclearly("page-nothing-changed", "what is to change?")
	}
	change := r.Change(old, sets, nil)
	if r.Err() != nil {
		return w, r.Err()
	}
	return correct(d, v, at, old, record.Amended{Entry: old.Seq, Because: f.Get("because"), Change: change})
}

// correct writes a correction, of all panels of the entry or of some.
func correct(d *desk, v *studio.View, at record.When, old record.Entry, by record.Body) (studio.Written, error) {
	if len(v.Panels) == len(old.Panels) {
		v.Panels = nil
	}
	w, outdated, err := bench.Correct(d.ctx, v, at, old, by)
	for _, o := range outdated {
		w.Warnings = append(w.Warnings, record.Say("page-outdated", record.With("panel", o.Panel), record.With("entry", record.EntryRef(o.Certificate))))
	}
	return w, err
}
