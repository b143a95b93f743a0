package main

import (
	"cmp"
	"errors"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
)

func newAmend(a *app) {
	var why string
	var set, unset texts
	o := &moment{}
	a.corrects("amend", o, &why, flags{"set": &set, "unset": &unset, "described-by": &o.described}, func(d *doing, old record.Entry) (record.Body, error) {
		if len(set)+len(unset)+len(o.described) == 0 {
			return nil, usage("\"backleaf journal "+d.args[0]+"\" shows the fields", "what is to change? say --set FIELD=VALUE or --unset FIELD")
		}
		var sets []typed.Set
		for _, one := range set {
			field, text, ok := strings.Cut(one, "=")
			if !ok {
				return nil, usage(`like --set amount="240 g"`, "--set %s: expected FIELD=VALUE", one)
			}
			sets = append(sets, typed.Set{Field: field, Typed: text})
		}
		change := d.r.Change(old, sets, unset)
		err := d.r.Err()
		if f, ok := errors.AsType[*refuse.Error](err); ok && f.Field != "" {
			f.Field = "set " + f.Field
		}
		return record.Amended{Entry: old.Seq, Because: why, Change: change}, err
	})
}

// corrects adds a command that corrects an earlier entry, of all its panels or
// of some, and says when a certificate has gone out on the strength of it.
func (a *app) corrects(name string, o *moment, why *string, fs flags, correction func(*doing, record.Entry) (record.Body, error)) {
	var only []string
	o.terms = func([]string) ([]string, error) { return only, nil }
	a.acts(name, o, func(d *doing) (w studio.Written, err error) {
		seq, err := typed.Entry(d.args[0])
		old, err2 := bench.Entry(d.ctx, d.v.Book, seq)
		if err = cmp.Or(err, err2); err != nil {
			return w, err
		}
		unsaid := strings.TrimSpace(*why) == ""
		if unsaid { // what else is wrong is said first
			*why, d.ctx = "?", book.Trial(d.ctx)
		}
		body, err := correction(d, old)
		if err != nil {
			return w, err
		}
		w, outdated, err := bench.Correct(d.ctx, d.v, d.at, old, body)
		if unsaid {
			return w, cmp.Or(err, usage("", "%s", d.form.help.missing["because"]))
		}
		for _, x := range outdated {
			w.Means = append(w.Means, record.Say("certificate-outdated", record.With("panel", x.Panel), record.With("entry", record.EntryRef(x.Certificate))))
		}
		return w, err
	}, fs, flags{"panel": &only, "because": why})
}
