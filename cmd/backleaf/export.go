package main

import (
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/safefile"
	"backleaf/record/studio"
	"backleaf/record/studio/exchange"
)

func newExport(a *app) *cobra.Command {
	var file string
	c := &cobra.Command{
		Use: "export", Short: "write the whole journal in the form that import reads",
		Long: `Write the journal: import into an empty book gives the same journal, hash for hash.
Private parts (buyers, prices) are not in it. Photographs are files of their own.`,
		Example: `  backleaf export -o journal.json
  backleaf export | sha256sum`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.read(c.Context(), func(s *studio.Session) error {
				es, err := s.Book.Entries(c.Context(), book.Filter{})
				if err != nil {
					return err
				}
				if file == "" || file == "-" {
					return exchange.Write(a.out, es)
				}
				if err := safefile.Create(file, 0o644, func(f *os.File) error { return exchange.Write(f, es) }); err != nil {
					return fmt.Errorf("cannot write the export: %w", err)
				}
				a.told("entries-exported", record.With("file", file), record.With("n", len(es)))
				return nil
			})
		},
	}
	c.Flags().StringVarP(&file, "output", "o", "", "file to write (default: standard output)")
	return c
}
