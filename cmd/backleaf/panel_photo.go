package main

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/typed"
)

func panelPhoto(a *app) *cobra.Command {
	var o moment
	var p record.Photograph
	var role, taken string
	var keepPlace bool
	c := &cobra.Command{
		Use: "photo NUMBER FILE", Short: "keep a photograph with a panel",
		Long: `Keep a photograph with a panel. The file is copied, named by its SHA-256, into the
folder "photographs" beside the book; the journal keeps its digest and size. Where it was
taken, if the camera wrote it into the file, is left out of what is kept.`,
		Example: `  backleaf panel photo 0142 front.jpg
  backleaf panel photo 0142 weave.png --role weave-detail --caption "lower left, scale in mm"`,
		Args: wanted(2, 2, "one panel and one file"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.atBench(c.Context(), &o, args[:1], func(ctx context.Context, v *studio.View, r *typed.Reader, at record.When) (w studio.Written, err error) {
				r.When(taken, &p.Taken)
				if typed.Word(r, "role", role, &p.Role); r.Err() != nil {
					return w, r.Err()
				}
				data, said, err := kept.Load(args[1], &p, keepPlace)
				if err != nil {
					return w, err
				}
				a.warn(v, said)
				return bench.Photograph(ctx, v, at, p, data)
			})
		},
	}
	o.timeFlag(c)
	c.Flags().StringVar(&role, "role", "front", strings.Join(record.Words("PhotoRole"), ", "))
	c.Flags().StringVar(&p.Credit, "credit", "", "who took it")
	c.Flags().StringVar(&taken, "taken", "", "when it was taken")
	c.Flags().BoolVar(&keepPlace, "keep-place", false, "keep where it was taken")
	c.Flags().StringVar(&p.Caption, "caption", "", "what there is to see")
	return c
}
