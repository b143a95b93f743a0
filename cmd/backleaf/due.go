package main

import (
	"fmt"
	"os"
	"time"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/safefile"
	"backleaf/record/studio"
	"backleaf/record/studio/questions"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"
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
			return a.read(c.Context(), func(s *studio.Session) error {
				w, ps, err := questions.Chosen(c.Context(), s.Book, args, nil)
				if err != nil {
					return err
				}
				moment := a.now().In(studio.Zone(w.Studio))
				if at != "" {
					if moment, err = typed.Moment(at, moment); err != nil {
						return err
					}
				}
				steps, ics := questions.Due(a.catalogue(), w, ps, moment)
				if calendar != "" {
					if err := safefile.Write(calendar, 0o644, func(f *os.File) error { _, err := f.Write(ics(a.now())); return err }); err != nil {
						return fmt.Errorf("cannot write the calendar: %w", err)
					}
					a.noted("calendar-written", record.With("file", calendar))
				}
				return a.sayDue(steps, moment)
			})
		},
	}
	c.Flags().StringVar(&at, "at", "", "look from another moment: 14:05, \"2026-05-03 09:00\"")
	c.Flags().StringVar(&calendar, "calendar", "", "write the windows to this iCalendar file")
	return a.jsonFlag(c)
}

func (a *app) sayDue(steps []questions.Step, now time.Time) error {
	if a.asJSON {
		return a.sayJSON(steps)
	}
	if len(steps) == 0 {
		a.noted("nothing-due")
		return nil
	}
	c := a.catalogue().At(now, now.Location())
	for _, s := range steps {
		what := tell.Say(c, record.Say("due-step", tell.Told("what", s.Text), tell.Told("window", c.Window(s.From, s.Safe, s.Until))))
		a.say("%-8s  %s", c.State(s.State), what)
		a.told("due-panels", record.With("batch", s.Batch), record.With("panels", s.Panels))
	}
	return nil
}
