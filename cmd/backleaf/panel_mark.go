package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func panelMark(a *app) *cobra.Command {
	var b record.Feature
	b.Face = record.Front
	return onPanels(a, &cobra.Command{
		Use: "mark " + panelWords, Short: "write down where a knot, a joint or a repair is",
		Example: `  backleaf panel mark 0142 --what knot --on back --left "82 mm" --top "140 mm" --size "9 x 12 mm"
  backleaf panel mark 0143 --what repair --on front --left "20 mm" --top "15 mm" --note "corner filled"`,
	}, "the panel, and what is where on it", &b, func(f *actFlags) {
		word(f, &b.What, "what", oneOf("Mark"))
		f.need("what", oneOf("Mark"), "what is there? say --what")
		word(f, &b.Face, "on", "face: front, back, edges, unknown")
		f.value(&b.Left, "left", "from the left edge, seen on that face")
		f.value(&b.Top, "top", "from the top edge")
		f.value(&b.Size, "size", "height x width of it")
		f.text(&b.Note, "note", "remark")
	})
}
