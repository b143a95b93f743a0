package label_test

import (
	"testing"

	"backleaf/label"
)

// Whatever was recorded and whatever the place: a label is drawn with nothing
// overlapping or outside, or it is refused.
func FuzzGeometry(f *testing.F) {
	in := longest()
	f.Add(in.Title, in.Maker, in.Place, in.Varnish, "studio@example.org", uint8(0), 62.0, 62.0)
	f.Add("", "Ζωή", "", "", "", uint8(1), 42.0, 30.0)
	f.Add("a\nb\tc", "x", "\u202E", "y", "", uint8(2), 300.0, 54.0)
	f.Fuzz(func(t *testing.T, title, maker, town, varnish, contact string, size uint8, w, h float64) {
		if !(w > 10 && w < 1000 && h > 10 && h < 1000) || maker == "" || len(title)+len(maker)+len(town)+len(varnish)+len(contact) > 2000 {
			return
		}
		in := changed()
		in.Back = label.Area{WidthMM: 2000, HeightMM: 3000}
		in.Title, in.Maker, in.Place, in.Varnish = title, maker, town, varnish
		if contact != "" {
			in.Link, in.Plain = "", contact
			in.Where = "The record of this panel is kept by its maker: " + contact
		}
		o := options(label.Auto)
		o.Sheet = in1(label.Area{WidthMM: w, HeightMM: h})
		ls, err := label.Arrange([]label.Input{in}, o)
		if err != nil {
			return
		}
		checkBoxes(t, ls[0], in)
	})
}
