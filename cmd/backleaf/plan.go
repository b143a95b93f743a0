package main

import (
	"cmp"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/plan"
	"backleaf/record/safefile"
	"backleaf/record/studio/planning"
	"backleaf/record/studio/typed"
)

// planFlags are what a plan is told besides what is wished.
type planFlags struct {
	planning.Wish
	like, recipe, from, hours, out, calendar string
	batch                                    record.Key
	turns                                    int
	write, offcuts                           bool
}

func newPlan(a *app) {
	o := planFlags{hours: "9:00-20:00"}
	a.command("plan", flags{"board": &o.Board, "cloth": &o.Cloth, "sheet": &o.Sheet, "sheet-grain": &o.SheetGrain, "like": &o.like, "recipe": &o.recipe,
		"kerf": &o.Kerf, "trim": &o.Trim, "turns": &o.turns, "bolt": &o.Bolt, "oversize": &o.Oversize, "selvedge": &o.Selvedge, "squaring": &o.Squaring,
		"shrink-warp": &o.ShrinkWarp, "shrink-weft": &o.ShrinkWeft, "tray-loss": &o.TrayLoss, "bench": &o.Bench, "start": &o.from, "hours": &o.hours,
		"rh": &o.Humidity, "temp": &o.Temperature, "output": &o.out, "calendar": &o.calendar, "write": &o.write, "keep-offcuts": &o.offcuts,
		"batch": &o.batch, "json": &a.asJSON}, func(r *run) error {
		if len(r.args) == 0 && o.like == "" {
			return usage("backleaf plan \"14 of 30x40 cm\" --board …, or --like batch:may", "which panels?")
		}
		if o.write {
			return r.writing(func(r *run) error { return r.plan(&o) })
		}
		return r.reading(func(r *run) error { return r.plan(&o) })
	})
}

func (r *run) plan(o *planFlags) error {
	v, err := r.Look(r.ctx, nil, nil)
	if err != nil {
		return err
	}
	w, wish := v.Shop, &o.Wish
	wish.Turns, wish.Start = plan.Turns(o.turns), v.Local()
	if o.like != "" {
		liked, err := r.Look(r.ctx, strings.Fields(o.like), nil)
		if err != nil {
			return err
		}
		if w, err = r.Book.Around(r.ctx, liked.Panels...); err != nil {
			return err
		}
		planning.AsMade(wish, w, liked.Panels)
	}
	if o.recipe != "" {
		if err := planning.ByRecipe(wish, w, record.Key(o.recipe)); err != nil {
			return err
		}
	}
	read := typed.For(v)
	r.form.read(read)
	if len(r.args) > 0 {
		wish.Panels = planning.ParsePanels(read, words(r.args))
	}
	if o.from != "" {
		wish.Start, err = typed.Moment("start", o.from, wish.Start)
		read.Fail(err)
	}
	wish.Hours = planning.ParseHours(read, o.hours)
	if read.Err() != nil {
		return read.Err()
	}
	switch {
	case wish.Kerf.String() == "":
		return usage("--kerf \"2.5 mm\", or --kerf \"0 mm\" for a knife", "%s", r.form.help.missing["kerf"])
	case wish.Board == "":
		return usage("--board with a lot or a material of the shelf", "from which board?")
	}
	d, err := planning.Make(r.ctx, r.Book, w, r.app.words(w.Studio), *wish)
	if err != nil {
		return err
	}
	d.Job.Title = cmp.Or(string(o.batch), wish.Start.Format(time.DateOnly))
	files, err := d.Files(o.out, o.calendar, r.now())
	for _, f := range files {
		err = cmp.Or(err, safefile.Renewable(f.Path, f.Kind))
	}
	if err != nil {
		return err
	}
	if o.write {
		done, err := d.Write(r.ctx, v, record.Moment(v.Local()), record.Cut{Batch: o.batch}, o.offcuts)
		r.warn(v, done.Warnings)
		if err != nil {
			return err
		}
		for _, e := range done.Entries {
			r.sayWritten(v, []record.Entry{e})
		}
		if files, err = d.Files(o.out, o.calendar, r.now()); err != nil { // now with the numbers
			return err
		}
	}
	for _, f := range files {
		if err := safefile.Renew(f.Path, f.Kind, f.Data); err != nil {
			return err
		}
		r.noted("plan-written", record.With("file", f.Path), record.With("what", f.What))
	}
	if r.asJSON {
		return r.sayJSON(d.View())
	}
	r.say("%s", strings.TrimSuffix(d.Job.Text(), "\n"))
	return nil
}
