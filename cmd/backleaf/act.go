package main

import (
	"maps"
	"strings"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"
)

// moment is what every act at the bench may be told: when it was, and of which
// panels not.
type moment struct {
	at           string
	except, by   []string
	alsoAway     bool
	remarks      texts
	again, other texts    // times and lots of a coat
	relaid       bool     // the cloth that was there before
	described    []string // entries that describe what is meant
	terms        func(args []string) (panels []string, err error)
}

// flags are those of an act on panels.
func (o *moment) flags() flags {
	return merged([]flags{o.when(), {"except": &o.except, "also-away": &o.alsoAway, "by": &o.by}})
}

// when is the flags of any act.
func (o *moment) when() flags { return flags{"at": &o.at, "described-by": &o.described} }

// doing is one act: what was typed, the panels and the shelf as they are, and
// when it was.
type doing struct {
	*run
	o  *moment
	v  *studio.View
	r  *typed.Reader
	at record.When

	after func() error // what more is said; nil: nothing
}

// acts adds a command that writes something down at the bench.
func (a *app) acts(name string, o *moment, do func(*doing) (studio.Written, error), fs ...flags) {
	a.writes(name, merged(fs), atBench(o, do))
}

// atBench finds the panels and the time, lets do write, and says what was
// written.
func atBench(o *moment, do func(*doing) (studio.Written, error)) func(*run) error {
	return func(x *run) (err error) {
		terms := x.args
		if o.terms != nil {
			if terms, err = o.terms(x.args); err != nil {
				return err
			}
		}
		v, err := x.Look(x.ctx, terms, o.except)
		if err != nil {
			return err
		}
		r := typed.For(v)
		r.Torn(x.app.typed, terms)
		d := &doing{run: x, o: o, v: v, r: r, at: r.At(o.at)}
		v.Hands, v.AlsoAway, v.Meant = r.Hands("by", o.by), o.alsoAway, r.Meant("described-by", o.described)
		if x.form.read(r); r.Err() != nil {
			return r.Err()
		}
		done, err := do(d)
		if err != nil {
			return err // what the act would come to is not said
		}
		x.sayWritten(v, done.Entries)
		for _, m := range done.Means {
			x.tell(x.app.words(v.Shop.Studio), m)
		}
		x.warn(v, append(r.Warnings, done.Warnings...))
		if d.after != nil {
			return d.after()
		}
		return nil
	}
}

// act adds a command that writes down one act on panels, as its flags say it.
func act[B record.Body](a *app, name string, body *B, fs ...flags) {
	actAt(a, name, &moment{}, body, fs...)
}

func actAt[B record.Body](a *app, name string, o *moment, body *B, fs ...flags) {
	all := []flags{o.flags(), {"remark": &o.remarks}}
	if (*body).Kind().Traits().Layer {
		all = append(all, o.coatFlags())
	}
	own := merged(fs)
	if text, ok := own["text"].(*string); ok {
		o.terms = lastOr(text)
	}
	a.acts(name, o, func(d *doing) (studio.Written, error) { return d.perform(*body) }, append(all, own)...)
}

// merged is several flags as one; a later one takes the place of an earlier.
func merged(fs []flags) flags {
	all := flags{}
	for _, f := range fs {
		maps.Copy(all, f)
	}
	return all
}

// coatFlags are those of what may be done twice, and out of several tins.
func (o *moment) coatFlags() flags { return flags{"and-at": &o.again, "but": &o.other} }

// coating is the flags of a wet application.
func coating(c *record.Coating) flags {
	return flags{"with": &c.Mix, "thinned": &c.Thinned, "thinner": &c.Thinner, "tool": &c.Tool, "amount": &c.WetTotal, "amount-each": &c.WetEach,
		"temp": &c.Temperature, "rh": &c.Humidity, "wet-film": &c.WetFilm, "dry-film": &c.DryFilm, "note": &c.Note}
}

// lastOr takes a text that a flag gave, or else the last of the words.
func lastOr(text *string) func([]string) ([]string, error) {
	return func(args []string) ([]string, error) {
		last := len(args) - 1
		switch {
		case *text != "":
			return args, nil
		case last < 1 || strings.TrimSpace(args[last]) == "":
			return nil, usage("say it with --text \"…\", or as the last words in quotes", "what was seen or done?")
		}
		*text = strings.TrimSpace(args[last])
		return args[:last], nil
	}
}

// keysOf takes the words of a command for keys of the shelf; none is a panel.
func keysOf(into ...*record.Key) func([]string) ([]string, error) {
	return func(args []string) ([]string, error) {
		for i, k := range into {
			*k = record.Key(strings.ToLower(args[i]))
		}
		return nil, nil
	}
}

// perform writes down what was read, with what more the flags say of it.
func (d *doing) perform(body record.Body) (studio.Written, error) {
	act := bench.Act{Body: body, At: []record.When{d.at}, Relaid: d.o.relaid}
	for _, t := range d.o.again {
		act.At = append(act.At, d.r.At(t))
	}
	for _, s := range d.r.Some("remark", d.o.remarks) {
		act.Remarks = append(act.Remarks, bench.Remark(s))
	}
	for _, s := range d.r.Some("but", d.o.other) {
		act.Tins = append(act.Tins, bench.Tin{Panels: s.Panels, Mix: d.r.Mix("but", s.Text)})
	}
	if d.r.Err() != nil {
		return studio.Written{}, d.r.Err()
	}
	return bench.Perform(d.ctx, d.v, act)
}

// sayWritten says what was written.
func (a *app) sayWritten(v *studio.View, es []record.Entry) {
	for _, line := range a.words(v.Shop.Studio).Written(es) {
		a.say("%s", line)
	}
}

// done says what came of an act, of which something may have failed: what was
// done, and what there is to doubt.
func (a *app) done(w studio.Written, err error) error {
	for _, m := range w.Means {
		a.tell(a.catalogue(), m)
	}
	a.warn(nil, w.Warnings)
	return err
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

// near says when something happened, short where it is near.
func near(c *tell.Catalogue, at record.When) string {
	return c.Fill("{at:near}", record.With("at", at))
}
