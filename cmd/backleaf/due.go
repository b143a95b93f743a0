package main

import (
	"fmt"
	"os"
	"strings"
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
					if len(args) == 0 || wanted[s.Panels[0]] { // before they are grouped a step has one panel
						s.From, s.Safe, s.Until = local(s.From, moment), local(s.Safe, moment), local(s.Until, moment)
						steps = append(steps, s)
					}
				}
				groups := check.Group(steps)
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

// dueView is a step for a program to read.
type dueView struct {
	State  string          `json:"state"`
	Task   check.Task      `json:"task"`
	Text   string          `json:"text"`
	Batch  record.Key      `json:"batch"`
	Panels []record.Number `json:"panels"`
	From   time.Time       `json:"not_before,omitzero"`
	Safe   time.Time       `json:"safe_by,omitzero"`
	Until  time.Time       `json:"until,omitzero"`
	Entry  int64           `json:"entry,omitzero"`
}

func (a *app) sayDue(steps []check.Step, now time.Time) error {
	if a.asJSON {
		out := []dueView{}
		for _, s := range steps {
			out = append(out, dueView{s.State(now), s.Task, s.Text, s.Batch, s.Panels, s.From, s.Safe, s.Until, s.Entry})
		}
		return a.sayJSON(out)
	}
	if len(steps) == 0 {
		a.talk("nothing is due")
		return nil
	}
	for _, s := range steps {
		window := sayWindow(s, now)
		a.say("%-8s  %s%s", s.State(now), s.Text, after(": ", window))
		a.say("          batch %s, %s", s.Batch, sayPanels(s.Panels))
	}
	return nil
}

// sayWindow says a window as it looks from a moment.
func sayWindow(s check.Step, now time.Time) string {
	var parts []string
	switch {
	case !s.From.IsZero() && !s.Safe.IsZero() && (s.Until.IsZero() || s.Safe.Before(s.Until)):
		parts = append(parts, "not before "+sayMoment(s.From, now)+", surely from "+sayMoment(s.Safe, now))
	case !s.From.IsZero() && !s.Until.IsZero():
		return "between " + sayMoment(s.From, now) + " and " + sayMoment(s.Until, now)
	case !s.From.IsZero():
		parts = append(parts, "from "+sayMoment(s.From, now))
	}
	if !s.Until.IsZero() {
		parts = append(parts, "at the latest "+sayMoment(s.Until, now))
	}
	return strings.Join(parts, ", ")
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
