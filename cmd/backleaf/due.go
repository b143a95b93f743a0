package main

import (
	"fmt"
	"os"
	"time"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/check"
	"backleaf/record/safefile"
)

func newDue(a *app) *cobra.Command {
	var at, calendar string
	c := &cobra.Command{
		Use: "due [" + panelWords + "]", Short: "what now? the next step of each panel, overdue first",
		Long: `What now? The next steps with their windows, overdue first; panels in the same state
are one line. Windows are estimates from what the tins state and the air was: feel
before you go on.`,
		Example: `  backleaf due
  backleaf due batch:may --at "2026-05-03 09:00" --calendar windows.ics`,
		RunE: func(c *cobra.Command, args []string) error {
			return a.read(c.Context(), func(b *book.Book) error {
				w, ps, err := a.chosen(c.Context(), b, args, nil)
				if err != nil {
					return err
				}
				moment := a.now().In(zone(w.Studio))
				if at != "" {
					if moment, err = parseMoment(at, moment); err != nil {
						return err
					}
				}
				wanted := map[record.Number]bool{}
				for _, p := range ps {
					wanted[p.Number] = true
				}
				var steps []check.Step
				for _, s := range check.Due(w, moment) {
					if wanted[s.Panel] {
						s.From, s.By = local(s.From, moment), local(s.By, moment)
						steps = append(steps, s)
					}
				}
				groups := check.Grouped(steps)
				if calendar != "" {
					ics := check.Calendar(groups, a.now())
					if err := safefile.Write(calendar, 0o644, func(f *os.File) error { _, err := f.Write(ics); return err }); err != nil {
						return fmt.Errorf("cannot write the calendar: %w", err)
					}
					a.talk("%s  the windows, for a phone", calendar)
				}
				return a.sayDue(groups, moment)
			})
		},
	}
	c.Flags().StringVar(&at, "at", "", "look from another moment: 14:05, \"2026-05-03 09:00\"")
	c.Flags().StringVar(&calendar, "calendar", "", "write the windows to this iCalendar file")
	return a.jsonFlag(c)
}

// parseMoment reads an exact moment, which may lie ahead.
func parseMoment(s string, now time.Time) (time.Time, error) {
	for _, layout := range []string{"2006-01-02 15:04", time.RFC3339, "2006-01-02"} {
		if t, err := time.ParseInLocation(layout, s, now.Location()); err == nil {
			return t, nil
		}
	}
	if t, err := time.Parse("15:04", s); err == nil {
		return time.Date(now.Year(), now.Month(), now.Day(), t.Hour(), t.Minute(), 0, 0, now.Location()), nil
	}
	return now, usage("say 14:05 or \"2026-05-03 09:00\"", "--at: %q is not a moment", s)
}

func local(t, like time.Time) time.Time {
	if t.IsZero() {
		return t
	}
	return t.In(like.Location())
}

// dueView is a group of steps for a program to read.
type dueView struct {
	State  check.State     `json:"state"`
	Do     string          `json:"do"`
	Batch  record.Key      `json:"batch"`
	Panels []record.Number `json:"panels"`
	From   time.Time       `json:"from,omitzero"`
	By     time.Time       `json:"by,omitzero"`
	Note   string          `json:"note,omitzero"`
	Rests  []int64         `json:"entries"`
}

func (a *app) sayDue(groups []check.Group, now time.Time) error {
	if a.asJSON {
		out := []dueView{}
		for _, g := range groups {
			out = append(out, dueView{g.At(now), g.Do, g.Batch, g.Panels, g.From, g.By, g.Note, g.Entries})
		}
		return a.sayJSON(out)
	}
	if len(groups) == 0 {
		a.talk("nothing is due")
		return nil
	}
	t := a.table()
	for _, g := range groups {
		t.row(string(g.At(now)), g.Do, sayWindow(g.From, g.By, now), "batch "+string(g.Batch)+", "+sayPanels(g.Panels), g.Note)
	}
	return t.done()
}

// sayWindow says a window as it looks from a moment.
func sayWindow(from, by, now time.Time) string {
	switch {
	case from.IsZero() && by.IsZero():
		return ""
	case by.IsZero():
		return "from " + sayMoment(from, now)
	case from.IsZero():
		return "by " + sayMoment(by, now)
	}
	return "between " + sayMoment(from, now) + " and " + sayMoment(by, now)
}

func sayMoment(t, now time.Time) string {
	day := t.Format("2006-01-02")
	switch day {
	case now.Format("2006-01-02"):
		return t.Format("15:04")
	case now.AddDate(0, 0, 1).Format("2006-01-02"):
		return "tomorrow " + t.Format("15:04")
	case now.AddDate(0, 0, -1).Format("2006-01-02"):
		return "yesterday " + t.Format("15:04")
	}
	if t.Year() == now.Year() {
		return t.Format("2 Jan 15:04")
	}
	return t.Format("2 Jan 2006")
}
