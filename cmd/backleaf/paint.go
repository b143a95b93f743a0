package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func newPaint(a *app) *cobra.Command {
	var b record.PaintLayer
	return onPanels(a, &cobra.Command{
		Use: "paint " + panelWords, Short: "write down a paint layer",
		Example: `  backleaf paint 0142 --medium oil --technique "thin first layer" --pigment "yellow ochre=PY 43" --pigment "ivory black=PBk 9"
  backleaf paint 0143 --medium acrylic --underdrawing "charcoal, fixed" --at "2026-05-09 10:00"`,
	}, "the panels that were painted", &b, func(f *actFlags) {
		f.coating(&b.Coating)
		f.faces(&b.Faces, "on", "faces (default front)")
		word(f, &b.Medium, "medium", oneOf("PaintMedium"))
		f.text(&b.Technique, "technique", "how it was laid: glaze, scumble, impasto …")
		f.pigments(&b.Pigments, "pigment, with its Colour Index name where known: \"titanium white=PW 6\"")
		f.text(&b.Underdrawing, "underdrawing", "underdrawing below the paint")
		word(f, &b.Oil, "oil-content", "against the layer below: lean, same, fat")
		word(f, &b.Film, "film", "thin or thick")
		word(f, &b.Gloss, "gloss", "matt, satin, gloss")
	})
}
