package main

import (
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func panelMark(a *app) *cobra.Command {
	var o moment
	var m record.Feature
	var what, on, left, top, size string
	c := &cobra.Command{
		Use: "mark " + panelWords, Short: "write down where a knot, a joint or a repair is",
		Example: `  backleaf panel mark 0142 --what knot --on back --left "82 mm" --top "140 mm" --size "9 x 12 mm"
  backleaf panel mark 0143 --what repair --on front --left "20 mm" --top "15 mm" --note "corner filled"`,
		Args: wanted(1, -1, "the panel, and what is where on it"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needs(what, strings.Join(record.Words("Mark"), ", "), "what is there? say --what"); err != nil {
				return err
			}
			return act(a, c.Context(), &o, args, func(r *typed.Reader) record.Feature {
				typed.Word(r, "what", what, &m.What)
				typed.Word(r, "on", on, &m.Face)
				r.Text("left", left, &m.Left)
				r.Text("top", top, &m.Top)
				r.Text("size", size, &m.Size)
				return m
			})
		},
	}
	o.flags(c)
	f := c.Flags()
	f.StringVar(&what, "what", "", strings.Join(record.Words("Mark"), ", "))
	f.StringVar(&on, "on", "front", "face: front, back, edges, unknown")
	f.StringVar(&left, "left", "", "from the left edge, seen on that face")
	f.StringVar(&top, "top", "", "from the top edge")
	f.StringVar(&size, "size", "", "height x width of it")
	f.StringVar(&m.Note, "note", "", "remark")
	return c
}
