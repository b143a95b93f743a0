package bench_test

import (
	"slices"
	"strconv"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/refuse"
)

// Of whatever is taken off: the faces that are said are those that lose a layer,
// and what is said to lie above stands there still, above what went.
func TestRemoved(t *testing.T) {
	now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
	at := record.Moment(now)
	front, back := []record.Face{record.Front}, []record.Face{record.Back}
	whats, ons := []record.Stratum{"sealer", "cloth", "ground", "paint", "varnish", "size"}, [][]record.Face{nil, front, back}
	s := newStudio(t, func() time.Time { return now })
	look := looking(t, s)
	if _, err := bench.Cut(t.Context(), look(), at, slices.Repeat([]record.Cut{{Size: size(t, "30 x 40 cm x 3 mm")}}, len(whats)*len(ons))); err != nil {
		t.Fatal(err)
	}
	for _, b := range []record.Body{record.Coat{Purpose: record.Sealer, Faces: record.Faces}, record.ClothLaid{Faces: front}, record.Coat{Purpose: record.Ground, Faces: front},
		record.Coat{Purpose: record.Ground, Faces: back}, record.PaintLayer{Medium: "oil"}, record.PaintLayer{Medium: "oil"}, record.Varnish{Faces: front}} {
		if _, err := bench.Do(t.Context(), look("all"), at, b); err != nil {
			t.Fatal(err)
		}
	}
	n := 0
	for _, what := range whats {
		for _, on := range ons {
			n++
			panel := strconv.Itoa(n)
			now := func() *record.Panel { v := look(panel); return v.Shop.Panel(v.Panels[0]) }
			before := now()
			w, err := bench.Remove(t.Context(), look(panel), at, record.Removed{What: what, Extent: "whole", Faces: on}, false)
			after := now()
			said := map[string][]string{}
			for _, m := range slices.Concat(w.Means, w.Warnings) {
				switch m.Code {
				case "on-faces":
					said["faces"] = m.Value("faces").Texts
				case "lay-above":
					said["above"] = append(said["above"], m.Value("entries").Texts...)
				}
			}
			var lost, above []string
			for _, f := range record.Faces {
				gone := false
				for i, l := range before.Layers() {
					if l.Face != f {
						continue
					}
					left := after.Layers()[i].Stands()
					if gone = gone || !left; !left && !slices.Contains(lost, string(f)) {
						lost = append(lost, string(f))
					}
					if e := record.With("", record.EntryRef(l.Seq)).Text(); left && gone && !slices.Contains(above, e) {
						above = append(above, e)
					}
				}
			}
			if lost == nil != (refuse.Code(err) == "no-such-layer") {
				t.Errorf("%s on %v: %v, lost on %v", what, on, err, lost)
			}
			if on == nil && !slices.Equal(said["faces"], lost) {
				t.Errorf("%s: said of %v, lost on %v", what, said["faces"], lost)
			}
			slices.Sort(above)
			slices.Sort(said["above"])
			if !slices.Equal(said["above"], above) {
				t.Errorf("%s on %v: said that %v lay above, and %v does", what, on, said["above"], above)
			}
			if _, err := bench.Remove(t.Context(), look(panel), at, record.Removed{What: what, Extent: "whole", Faces: on}, false); lost != nil && refuse.Code(err) != "layer-gone" {
				t.Errorf("%s again: %v", what, err)
			}
		}
	}
}
