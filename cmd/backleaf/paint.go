package main

import (
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newPaint(a *app) *cobra.Command {
	var o moment
	var w coating
	var on, pigments []string
	var p record.PaintLayer
	var medium, oil, film, gloss string
	c := &cobra.Command{
		Use: "paint " + panelWords, Short: "write down a paint layer",
		Example: `  backleaf paint 0142 --medium oil --technique "thin first layer" --pigment "yellow ochre=PY 43" --pigment "ivory black=PBk 9"
  backleaf paint 0143 --medium acrylic --underdrawing "charcoal, fixed" --at "2026-05-09 10:00"`,
		Args: wanted(1, -1, "the panels that were painted"),
		RunE: func(c *cobra.Command, args []string) error {
			return act(a, c.Context(), &o, args, func(r *typed.Reader) record.PaintLayer {
				p.Coating, p.Faces, p.Pigments = w.read(r), r.Faces("on", on), typed.Pigments(pigments)
				typed.Word(r, "medium", medium, &p.Medium)
				typed.Word(r, "oil-content", oil, &p.Oil)
				typed.Word(r, "film", film, &p.Film)
				typed.Word(r, "gloss", gloss, &p.Gloss)
				return p
			})
		},
	}
	o.flags(c)
	o.coatFlags(c)
	w.flags(c)
	f := c.Flags()
	f.StringSliceVar(&on, "on", nil, "faces (default front)")
	f.StringVar(&medium, "medium", "", strings.Join(record.Words("PaintMedium"), ", "))
	f.StringVar(&p.Technique, "technique", "", "how it was laid: glaze, scumble, impasto …")
	f.StringArrayVar(&pigments, "pigment", nil, "pigment, with its Colour Index name where known: \"titanium white=PW 6\"")
	f.StringVar(&p.Underdrawing, "underdrawing", "", "underdrawing below the paint")
	f.StringVar(&oil, "oil-content", "", "against the layer below: lean, same, fat")
	f.StringVar(&film, "film", "", "thin or thick")
	f.StringVar(&gloss, "gloss", "", "matt, satin, gloss")
	return c
}
