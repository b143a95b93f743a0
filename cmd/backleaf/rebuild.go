package main

import (
	"github.com/spf13/cobra"

	"backleaf/record/studio"
)

func newRebuild(a *app) *cobra.Command {
	return &cobra.Command{
		Use: "rebuild", Short: "make the look-up tables anew from the journal",
		Long: `Make the look-up tables anew from the journal, where "backleaf verify" says that they
do not fit it. They are only an index: the journal is the record, and is not touched.`,
		Example: `  backleaf rebuild
  backleaf --book old.sqlite rebuild`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.write(c.Context(), func(s *studio.Session) error {
				b := s.Book
				if err := b.Rebuild(c.Context()); err != nil {
					return err
				}
				a.told("tables-rebuilt")
				return nil
			})
		},
	}
}
