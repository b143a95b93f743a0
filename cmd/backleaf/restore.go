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
	var highest []string
	c := &cobra.Command{
		Use: "restore FILE", Short: "make a book from a backup; it never takes the place of a file",
		Long: `Make a book from a backup, with its photographs, after verifying all of it. If a
book stands in its place already, move that away first: nothing is overwritten.

A panel that was numbered after the backup was made is not in it, but its label is on
its back: look for the highest number on any label and say it with --highest, so that
no other panel gets it; of each year one, if it may be several. --highest none says
that no label is newer than the backup.`,
		Example: `  backleaf restore /media/stick/studio-2026-05-02.sqlite --highest KB26-0142-1
  backleaf restore panels-may.sqlite --to panels.sqlite --highest none`,
		Args: wanted(1, 1, "the backup to read"),
		RunE: func(c *cobra.Command, args []string) error {
			from, to := args[0], cmp.Or(to, a.path())
			made, err := copies.Restore(c.Context(), from, to, highest, a.progress())
			err = a.sayCopy("restored", from, made, err)
			if made.Path != "" && made.Keys && !keys.There(to) {
				a.told("key-not-restored", record.With("file", keys.File(to)))
			}
			return err
		},
	}
	c.Flags().StringSliceVar(&highest, "highest", nil, "highest number on any label, of each year one; none: all are in the backup")
	c.Flags().StringVar(&to, "to", "", "the book to make (default: the studio's book)")
	return c
}
