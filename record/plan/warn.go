package plan

// Warning is something about a sheet of a plan that a person at the saw should
// know. Sizes are micrometres.
type Warning struct {
	Sheet int    `json:"sheet"` // in Plan.Sheets
	What  Danger `json:"what"`
	Size  int64  `json:"size_um"` // the least that it is about
	Times int    `json:"times"`
}

// Danger is what a warning is about. All are common practice; the 300 mm are
// the length of a saw's cut for which the British Health and Safety Executive
// asks for a push stick (guidance on circular saw benches).
type Danger string

// Dangers.
const (
	Sliver      Danger = "sliver"       // a strip or rest narrower than two kerfs
	ShortPiece  Danger = "short-piece"  // less than 300 mm along the cut
	NarrowStrip Danger = "narrow-strip" // narrower than 100 mm
	FreeOffcut  Danger = "free-offcut"  // cross-cuts, whose stop must end short of the blade
)

// What counts as small.
const (
	shortAlong  = 300_000
	narrowStrip = 100_000
	sliverKerfs = 2
)

// Warnings lists what to be careful about, sheet by sheet. With a knife, kerf
// nothing, there are none.
func (p Plan) Warnings() []Warning {
	var out []Warning
	if p.Order.Kerf == 0 {
		return nil
	}
	for i, c := range p.Sheets {
		found := map[Danger]*Warning{}
		see := func(d Danger, size int64) {
			w := found[d]
			if w == nil {
				w = &Warning{Sheet: i, What: d, Size: size}
				found[d] = w
			}
			w.Size = min(w.Size, size)
			w.Times++
		}
		for _, part := range p.Parts(i) {
			if part.Number == 0 && min(part.Length, part.Width) < sliverKerfs*p.Order.Kerf {
				see(Sliver, min(part.Length, part.Width))
			}
		}
		for _, s := range c.Strips {
			if s.Size < narrowStrip {
				see(NarrowStrip, s.Size)
			}
			for _, b := range s.Blocks {
				see(FreeOffcut, b.Size)
				if s.Size < shortAlong {
					see(ShortPiece, s.Size)
				}
				if len(b.Pieces) > 1 && b.Size < shortAlong {
					see(ShortPiece, b.Size)
				}
			}
		}
		for _, d := range []Danger{Sliver, ShortPiece, NarrowStrip, FreeOffcut} {
			if w := found[d]; w != nil {
				out = append(out, *w)
			}
		}
	}
	return out
}
