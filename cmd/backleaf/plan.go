package main

import (
	"cmp"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/plan"
	"backleaf/record/safefile"
	"backleaf/record/studio"
	"backleaf/record/studio/planning"
	"backleaf/record/studio/typed"
)

// planFlags are what a plan may be told.
type planFlags struct {
	board, cloth, sheet, grain, like, recipe                                               string
	kerf, trim, bolt, oversize, selvedge, squaring, shrinkWarp, shrinkWeft, loss, rh, temp string
	from, hours, out, calendar, batch                                                      string
	turns, bench                                                                           int
	write, offcuts                                                                         bool
}

func newPlan(a *app) *cobra.Command {
	var o planFlags
	c := &cobra.Command{
		Use: "plan [\"14 of 30x40 cm, 6 of 8x10 in grain height\"]", Short: "plan a day: what to saw, what to buy, what it costs, when it is ready",
		Long: `Plan a day at the bench: which sheets to saw and in which order, how much cloth to
cut and buy, how much of each wet material and from which tin, what it costs, and when
each batch may be touched again. Cutting is edge to edge; what is proven of the plan is
said, and what is not. With --write the panels are numbered in the order of the cut list.`,
		Example: `  backleaf plan "14 of 30x40 cm, 6 of 8x10 in" --board birch-1 --kerf "2.5 mm" -o plan.pdf
  backleaf plan --like batch:may --kerf "2.5 mm" --bench 10 --start "2026-06-01 13:00"
  backleaf plan "12 of 30x30 cm" --board birch-1 --cloth linen-1 --kerf "3 mm" --write --batch june`,
		Args: wanted(0, 1, "how many panels of which sizes"),
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 && o.like == "" {
				return usage("backleaf plan \"14 of 30x40 cm\" --board …, or --like batch:may", "which panels?")
			}
			if o.kerf == "" {
				return usage("cut a scrap in two: kerf = scrap less both parts; --kerf \"2.5 mm\", or \"0 mm\" for a knife", "how broad is the cut of the saw?")
			}
			open := a.read
			if o.write {
				open = a.write
			}
			return open(c.Context(), func(s *studio.Session) error { return a.plan(c.Context(), s, args, o) })
		},
	}
	f := c.Flags()
	f.StringVar(&o.board, "board", "", "lot or material of the board (default: that of --like)")
	f.StringVar(&o.sheet, "sheet", "", "size of a sheet, length first, where the shelf has none: \"2440 x 1220 mm\"")
	f.StringVar(&o.grain, "sheet-grain", "", "side of the sheet along which its grain runs: height, the first of its size, or width (default: of plywood and solid wood the first, of others none)")
	f.StringVar(&o.cloth, "cloth", "", "lot or material of the cloth (default: that of --like)")
	f.StringVar(&o.like, "like", "", "plan as these panels were made: batch:may, 0142")
	f.StringVar(&o.kerf, "kerf", "", "breadth of the saw's cut: \"2.5 mm\"; \"0 mm\" for a knife")
	f.StringVar(&o.trim, "trim", "5 mm", "cut off each edge of a sheet, the blade included")
	f.IntVar(&o.turns, "turns", 0, "how often the direction of cutting may change: 2, 3 or 4 (default: 2, and 3 where it earns its keep)")
	f.StringVar(&o.bolt, "bolt", "", "width of the bolt, where the shelf has none: \"150 cm\"")
	f.StringVar(&o.oversize, "oversize", "", "of the cloth, on each side (default 30 mm)")
	f.StringVar(&o.selvedge, "selvedge", "", "left out on each side of the bolt (default 15 mm)")
	f.StringVar(&o.squaring, "squaring", "", "length of cloth lost to square its ends (default 50 mm)")
	f.StringVar(&o.shrinkWarp, "shrink-warp", "", "shrinkage along the bolt when it is washed first: 3%")
	f.StringVar(&o.shrinkWeft, "shrink-weft", "", "shrinkage across the bolt: 1%")
	f.StringVar(&o.loss, "tray-loss", "", "share of what is mixed that stays in tray, roller and brush (default 10%)")
	f.IntVar(&o.bench, "bench", 0, "how many panels go through together (default: all)")
	f.StringVar(&o.from, "start", "", "when work begins: 13:00, \"2026-06-01 13:00\" (default now)")
	f.StringVar(&o.hours, "hours", "9:00-20:00", "hours of work in a day")
	f.StringVar(&o.rh, "rh", "", "relative humidity expected: 55%")
	f.StringVar(&o.temp, "temp", "", "temperature expected: \"21 °C\"")
	f.StringVarP(&o.out, "output", "o", "", "write the plan to this file: .pdf, or .svg, one for each sheet")
	f.StringVar(&o.calendar, "calendar", "", "write the timetable to this iCalendar file")
	f.BoolVar(&o.write, "write", false, "number the panels, one batch, in the order of the cut list")
	f.BoolVar(&o.offcuts, "keep-offcuts", false, "with --write: put the offcuts worth keeping on the shelf")
	f.StringVar(&o.recipe, "recipe", "", "recipe of the shelf by which they are made (default: that of --like)")
	f.StringVar(&o.batch, "batch", "", "name of the batch (default: the day)")
	return a.jsonFlag(c)
}

func (a *app) plan(ctx context.Context, s *studio.Session, args []string, o planFlags) error {
	v, err := s.Look(ctx, nil, nil)
	if err != nil {
		return err
	}
	w, err := s.Book.Workshop(ctx)
	if err != nil {
		return err
	}
	r := typed.For(v)
	wish := planning.Wish{Board: record.Key(o.board), Cloth: record.Key(o.cloth), Bench: o.bench, Turns: plan.Turns(o.turns), Start: v.Local()}
	if o.like != "" {
		liked, err := s.Look(ctx, strings.Fields(o.like), nil)
		if err != nil {
			return err
		}
		planning.AsMade(&wish, w, liked.Panels)
	}
	if o.recipe != "" {
		if err := planning.ByRecipe(&wish, w, record.Key(o.recipe)); err != nil {
			return err
		}
	}
	if len(args) > 0 {
		wish.Panels = planning.ParsePanels(r, args[0])
	}
	o.read(r, &wish)
	if r.Err() != nil {
		return r.Err()
	}
	if wish.Board == "" {
		return usage("--board with a lot or a material of the shelf", "from which board?")
	}
	d, err := planning.Make(ctx, s.Book, w, a.words(w.Studio), wish)
	if err != nil {
		return err
	}
	d.Job.Title = cmp.Or(o.batch, wish.Start.Format(time.DateOnly))
	if o.write {
		done, err := d.Write(ctx, v, record.Moment(v.Local()), record.Cut{Batch: record.Key(o.batch)}, o.offcuts)
		a.warn(v, done.Warnings)
		if err != nil {
			return err
		}
		for _, e := range done.Entries {
			a.sayWritten(v, []record.Entry{e})
		}
	}
	if err := a.planFiles(d, o); err != nil {
		return err
	}
	if a.asJSON {
		return a.sayJSON(d.View())
	}
	for line := range strings.Lines(d.Job.Text()) {
		a.say("%s", strings.TrimSuffix(line, "\n"))
	}
	return nil
}

// read reads what was typed for a plan.
func (o planFlags) read(r *typed.Reader, wish *planning.Wish) {
	r.Text("sheet", o.sheet, &wish.Sheet)
	for _, l := range []struct {
		flag, typed string
		into        typed.Value
	}{{"trim", o.trim, &wish.Trim}, {"bolt", o.bolt, &wish.Bolt}, {"oversize", o.oversize, &wish.Oversize}, {"selvedge", o.selvedge, &wish.Selvedge}, {"squaring", o.squaring, &wish.Squaring}} {
		r.Text(l.flag, l.typed, l.into)
	}
	typed.Word(r, "sheet-grain", o.grain, &wish.SheetGrain)
	r.Gauge("kerf", o.kerf, &wish.Kerf)
	r.Text("shrink-warp", o.shrinkWarp, &wish.ShrinkWarp)
	r.Text("shrink-weft", o.shrinkWeft, &wish.ShrinkWeft)
	r.Text("tray-loss", o.loss, &wish.TrayLoss)
	r.Text("rh", o.rh, &wish.Humidity)
	r.Text("temp", o.temp, &wish.Temperature)
	if o.from != "" {
		var err error
		if wish.Start, err = typed.Moment(o.from, wish.Start); err != nil {
			r.Fail(err)
		}
	}
	var h [4]int
	if n, err := fmt.Sscanf(o.hours, "%d:%d-%d:%d", &h[0], &h[1], &h[2], &h[3]); err != nil || n != 4 {
		r.Fail(usage("--hours 9:00-20:00", "%q are no hours of work", o.hours))
	}
	of := func(h, min int) time.Duration { return time.Duration(h)*time.Hour + time.Duration(min)*time.Minute }
	wish.Hours = plan.Hours{From: of(h[0], h[1]), To: of(h[2], h[3])}
}

// planFiles writes the plan where it was asked for.
func (a *app) planFiles(d planning.Day, o planFlags) error {
	put := func(path string, data []byte, what string) error {
		if err := safefile.Write(path, 0o644, func(f *os.File) error { _, err := f.Write(data); return err }); err != nil {
			return fmt.Errorf("cannot write the plan: %w", err)
		}
		a.talk("%s  %s", path, what)
		return nil
	}
	switch ext := strings.ToLower(filepath.Ext(o.out)); {
	case o.out == "":
	case ext == ".pdf":
		data, err := d.Job.PDF()
		if err != nil {
			return err
		}
		if err := put(o.out, data, "the plan, a page a sheet"); err != nil {
			return err
		}
	case ext == ".svg":
		for i := range d.Job.Plan.Sheets {
			drawing, err := d.Job.Drawing(i, 277, 190)
			if err != nil {
				return err
			}
			if err := put(fmt.Sprintf("%s-%d.svg", strings.TrimSuffix(o.out, filepath.Ext(o.out)), i+1), drawing.SVG(), "a sheet"); err != nil {
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
	return put(o.calendar, d.Calendar(a.now()), "the timetable, for the calendar of a phone")
}
