package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newWithdraw(a *app) *cobra.Command {
	var why string
	var only []string
	c := &cobra.Command{
		Use: "withdraw ENTRY", Short: "take back an entry that should not have been written",
		Long: `Take an earlier entry out of effect. It stays readable. With --panel it is taken
back for those panels only. A withdrawal can itself be withdrawn.`,
		Example: `  backleaf withdraw 27 --because "wrong batch"
  backleaf withdraw E27 --panel 0150 --because "this one was not coated"`,
		Args: wanted(1, 1, "one entry"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.correct(c.Context(), &moment{}, args[0], why, only, func(_ *typed.Reader, old record.Entry) (record.Body, error) {
				return record.Withdrawn{Entry: old.Seq, Because: why}, nil
			})
		},
	}
	c.Flags().StringSliceVar(&only, "panel", nil, "for these panels of the entry only")
	c.Flags().StringVar(&why, "because", "", "the reason")
	return c
}
