package main

import (
	"context"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/pattern"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/typed"
)

var entryName = pattern.Of(`^[Ee][0-9]+$`)

func newRepeat(a *app) *cobra.Command {
	var o moment
	var w record.Coating
	var f *actFlags
	c := &cobra.Command{
		Use: "repeat [ENTRY] " + panelWords, Short: "write down the same act on other panels",
		Long: `Write down on other panels what was done last, or what an entry (like E12) says.
Faces, lots, tools and the like are taken over; what was measured then, such as the
amount and the air, is not: say it again if it was measured again.`,
		Example: `  backleaf repeat 0015-0018
  backleaf repeat E12 0009 --with sealer-4 --amount "22 g" --at 16:10`,
		Args: wanted(1, -1, "the panels it was done on too"),
		RunE: func(c *cobra.Command, args []string) error {
			var seq int64
			if entryName().MatchString(args[0]) {
				var err error
				if seq, err = typed.Entry(args[0]); err != nil {
					return err
				}
				args = args[1:]
			}
			if len(args) == 0 {
				return usage("name them after the entry, like E12 0015-0018", "on which panels was it done?")
			}
			return a.atBench(c.Context(), &o, args, func(ctx context.Context, v *studio.View, r *typed.Reader, at record.When) (studio.Written, error) {
				body, said, err := bench.Earlier(ctx, v, seq)
				if f.read(r); err == nil {
					body, err = bench.With(body, w)
				}
				if r.Fail(err); r.Err() != nil {
					return studio.Written{}, r.Err()
				}
				r.Warnings = append(r.Warnings, said...)
				return o.perform(ctx, v, r, at, body)
			})
		},
	}
	o.flags(c)
	o.coatFlags(c)
	f = &actFlags{c: c}
	f.coating(&w)
	return c
}
