package plan

import "time"

// Face is a face of a panel.
type Face string

// Faces.
const (
	Front Face = "front"
	Back  Face = "back"
	Edges Face = "edges"
)

// Panel is a number of equal panels. Lengths are micrometres.
type Panel struct {
	Height, Width, Thickness int64 // Thickness 0: not known
	Count                    int
}

// Product is something wet on the shelf.
type Product struct {
	Name    string
	Density int64 // mg/mL; 0: not known
}

// Act is one thing that is done to every panel of a batch.
type Act struct {
	Do    Work
	Name  string
	Faces []Face
	Extra []Face // faces that get twice as much

	// Wet work: the mix in parts by volume, the thinner as a share of its volume
	// in thousandths of a percent, and what goes on a square metre.
	Mix       []Portion
	Thinned   int64
	NotWater  bool // thinned with something else, whose density is not known
	PerSquare Amount

	Oversize int64 // of cloth, each side

	Dry, Cure Window        // of what is laid, in the air expected
	Needs     Need          // of what was laid before
	Takes     time.Duration // at the bench, for one panel
}

// Work is what an act does.
type Work string

// Kinds of work.
const (
	Coating     Work = "coat"
	LayingCloth Work = "cloth"
	Trimming    Work = "trim"
	Sanding     Work = "sand"
)

// Need is how far the layers before an act must have come.
type Need int

// Needs, from none to all.
const (
	Nothing Need = iota
	Tacky        // the cloth just laid can be trimmed: from 10 minutes to 30 hours (common practice)
	TouchDry
	Cured
)

// Portion is a product's part in a mix.
type Portion struct {
	Product int // in the list of products
	Parts   int64
}

// Amount is a mass or a volume; both where both are known.
type Amount struct {
	Milligrams  float64 `json:"mg,omitzero"`
	Microliters float64 `json:"uL,omitzero"`
}

// Window is counted from the end of an application: surely not before From,
// surely from Safe.
type Window struct {
	From, Safe time.Duration
	Known      bool
}

// extraShare is how much more a face counts that is given extra.
const extraShare = 2

// Spread is the area in mm² over which an act goes on panels, faces given extra
// counted twice; false where a thickness is wanted and not known.
func Spread(panels []Panel, a Act) (float64, bool) {
	var all float64
	for _, p := range panels {
		h, w, d := float64(p.Height), float64(p.Width), float64(p.Thickness)
		for _, f := range a.Faces {
			mm2 := h * w / 1e6
			if f == Edges {
				if p.Thickness == 0 {
					return 0, false
				}
				mm2 = 2 * (h + w) * d / 1e6
			}
			for _, e := range a.Extra {
				if e == f {
					mm2 *= extraShare
				}
			}
			all += mm2 * float64(p.Count)
		}
	}
	return all, true
}
