package main

import (
	"cmp"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/copies"
	"backleaf/record/studio/keys"
)

func newRestore(a *app) *cobra.Command {
	var to string
	c := &cobra.Command{
		Use: "restore FILE", Short: "make a book from a backup; it never takes the place of a file",
		Long: `Make a book from a backup, with its photographs, after verifying all of it. If a
book stands in its place already, move that away first: nothing is overwritten.`,
		Example: `  backleaf restore /media/stick/studio-2026-05-02.sqlite
  backleaf restore panels-may.sqlite --to panels.sqlite`,
		Args: wanted(1, 1, "the backup to read"),
		RunE: func(c *cobra.Command, args []string) error {
			from, to := args[0], cmp.Or(to, a.path())
			made, err := copies.Restore(c.Context(), from, to, a.progress())
			err = a.sayCopy("restored", from, made, err)
			if made.Path != "" && made.Keys && !keys.There(to) {
				a.told("key-not-restored", record.With("file", keys.File(to)))
			}
			return err
		},
	}
	c.Flags().StringVar(&to, "to", "", "the book to make (default: the studio's book)")
	return c
}
