package main

import (
	"cmp"
	"fmt"
	"path/filepath"
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
	o.Trim.UnmarshalText([]byte("5 mm"))
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
	w, err := r.Book.Workshop(r.ctx)
	if err != nil {
		return err
	}
	wish := &o.Wish
	wish.Turns, wish.Start = plan.Turns(o.turns), v.Local()
	if o.like != "" {
		liked, err := r.Look(r.ctx, strings.Fields(o.like), nil)
		if err != nil {
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
		wish.Panels = planning.ParsePanels(read, r.args[0])
	}
	if o.from != "" {
		wish.Start, err = typed.Moment(o.from, wish.Start)
		read.Fail(err)
	}
	wish.Hours, err = hoursOf(o.hours)
	read.Fail(err)
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
	if o.write {
		done, err := d.Write(r.ctx, v, record.Moment(v.Local()), record.Cut{Batch: o.batch}, o.offcuts)
		r.warn(v, done.Warnings)
		if err != nil {
			return err
		}
		for _, e := range done.Entries {
			r.sayWritten(v, []record.Entry{e})
		}
	}
	if err := r.planFiles(d, *o); err != nil {
		return err
	}
	if r.asJSON {
		return r.sayJSON(d.View())
	}
	r.say("%s", strings.TrimSuffix(d.Job.Text(), "\n"))
	return nil
}

// hoursOf reads the hours of work in a day: "9:00-20:00".
func hoursOf(text string) (plan.Hours, error) {
	var h [4]int
	if n, err := fmt.Sscanf(text, "%d:%d-%d:%d", &h[0], &h[1], &h[2], &h[3]); err != nil || n != 4 {
		return plan.Hours{}, usage("--hours 9:00-20:00", "%q are no hours of work", text)
	}
	of := func(h, min int) time.Duration { return time.Duration(h)*time.Hour + time.Duration(min)*time.Minute }
	return plan.Hours{From: of(h[0], h[1]), To: of(h[2], h[3])}, nil
}

// planFiles writes the plan where it was asked for.
func (a *app) planFiles(d planning.Day, o planFlags) error {
	written := func(path string, data []byte, what string) error {
		err := safefile.Write(path, 0o644, safefile.Bytes(data))
		if err == nil {
			a.noted("plan-written", record.With("file", path), record.With("what", record.Code(what)))
		}
		return err
	}
	switch ext := strings.ToLower(filepath.Ext(o.out)); {
	case o.out == "":
	case ext == ".pdf":
		data, err := d.Job.PDF()
		if err != nil {
			return err
		}
		if err := written(o.out, data, "plan"); err != nil {
			return err
		}
	case ext == ".svg":
		for i := range d.Job.Plan.Sheets {
			drawing, err := d.Job.Drawing(i, 277, 190)
			if err != nil {
				return err
			}
			if err := written(fmt.Sprintf("%s-%d.svg", strings.TrimSuffix(o.out, filepath.Ext(o.out)), i+1), drawing.SVG(), "sheet"); err != nil {
				return err
			}
		}
	default:
		return usage("-o plan.pdf or -o plan.svg", "%q is neither a PDF nor an SVG file", o.out)
	}
	if o.calendar == "" {
		return nil
	}
	if d.Job.Table == nil {
		return usage("--like batch:may takes the recipe of a batch", "without a recipe there is no timetable")
	}
	return written(o.calendar, d.Calendar(a.now()), "calendar")
}
