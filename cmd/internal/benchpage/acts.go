package benchpage

import (
	"net/url"
	"slices"
	"strconv"
	"strings"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/planning"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
)

// act is one thing that is written down by a form.
type act struct {
	front bool // it is done on the front, unless said otherwise
	asks  func(*ask)
	do    func(*desk, *studio.View, *typed.Reader, record.When, url.Values) (studio.Written, error)
	last  func(*desk, record.Body) url.Values // how it looks as a filled form; nil: never filled
	none  bool                                // it is about no panels
	one   bool                                // it is about one panel
	maybe bool                                // it may be about no panels
	now   bool                                // it is done as it is written down
}

// inputs are what an act asks for.
func (a act) inputs(d *desk) []input {
	q := ask{d: d}
	a.asks(&q)
	return q.all
}

// doing makes the act that one entry about panels is: fields names what a form
// asks for, each with the field of the entry where it stands.
func doing[B record.Body](fields func(*ask, *B)) act {
	return act{
		asks: func(a *ask) { fields(a, new(B)) },
		do: func(d *desk, v *studio.View, r *typed.Reader, at record.When, f url.Values) (studio.Written, error) {
			b := read(d, r, f, fields)
			if r.Err() != nil {
				return studio.Written{}, r.Err()
			}
			return bench.Perform(d.ctx, v, bench.Act{Body: b, At: []record.When{at}, Relaid: f.Get("again") == "yes"})
		},
		last: func(d *desk, body record.Body) url.Values {
			b, ok := body.(B)
			a := &ask{d: d, said: url.Values{}}
			if ok {
				fields(a, &b)
			}
			return a.said
		},
	}
}

// read reads a form into an entry.
func read[B any](d *desk, r *typed.Reader, f url.Values, fields func(*ask, *B)) (b B) {
	fields(&ask{d: d, r: r, f: f}, &b)
	return b
}

// acts are the acts at the bench by name; those of shelf, papers and whereabouts
// stand in other files.
var acts = map[string]act{
	"coat": doing(func(a *ask, c *record.Coat) {
		word(a, &c.Purpose, "as", record.Sealer, record.Ground, record.Sizing, record.Adhesive, record.StainBlock, record.Isolation)
		a.mix(&c.Mix, "sealer", "ground", "size", "adhesive", "stain-block", "isolation")
		a.faces(&c.Faces, "on")
		a.faces(&c.Extra, "extra")
		a.coating(&c.Coating)
	}),
	"cloth": onFront(doing(func(a *ask, c *record.ClothLaid) {
		a.shelf(&c.Cloth, &c.ClothLot, "cloth", "cloth")
		a.faces(&c.Faces, "on")
		a.mix(&c.Mix, "adhesive")
		fact(a, &c.WetThrough, "wet-through")
		fact(a, &c.EdgesPressed, "edges-pressed")
		word(a, &c.Run, "threads")
		a.add("again", "yes")
		a.value(&c.Oversize, "oversize").More = true
		a.value(&c.Weighted, "weighted").More = true
		a.coating(&c.Coating)
	})),
	"trim": doing(func(a *ask, t *record.Trimmed) {
		a.text(&t.Tool, "tool")
		fact(a, &t.Eased, "eased")
		a.text(&t.Note, "note").More = true
	}),
	"sand": doing(func(a *ask, t *record.Sanded) {
		a.faces(&t.Faces, "on")
		a.grit(&t.Scale, &t.Grit)
		fact(a, &t.Dusted, "dusted")
		fact(a, &t.Through, "through").More = true
		a.text(&t.Note, "note").More = true
	}),
	"warm": doing(func(a *ask, t *record.WarmAir) {
		a.faces(&t.Faces, "on")
		a.value(&t.For, "for")
		a.text(&t.Note, "note").More = true
	}),
	"bare":     doing(func(a *ask, t *record.LeftBare) { a.faces(&t.Faces, "on"); a.text(&t.Because, "because") }),
	"no-cloth": doing(func(_ *ask, t *record.Intended) { t.Cloth = record.No }),
	"inspect": doing(func(a *ask, t *record.Inspection) {
		word(a, &t.Edges, "edges")
		word(a, &t.Adhesion, "adhesion")
		a.text(&t.Remarks, "remarks")
		a.value(&t.Bow, "bow")
		a.value(&t.Span, "span")
		word(a, &t.Toward, "hollow-to").More = true
		word(a, &t.Along, "along").More = true
	}),
	"note":    doing(func(a *ask, t *record.Note) { a.text(&t.Text, "text").Sort = "long" }),
	"discard": doing(func(a *ask, t *record.Discarded) { a.text(&t.Because, "because") }),
	"climate": ofNoPanels(doing(func(a *ask, t *record.Climate) {
		a.readOff(&t.Temperature, "temp", "°C")
		a.readOff(&t.Humidity, "rh", "%")
		a.text(&t.Place, "place").More = true
	})),
	"paint": doing(func(a *ask, p *record.PaintLayer) {
		p.Faces = []record.Face{record.Front}
		word(a, &p.Medium, "medium")
		a.text(&p.Technique, "technique")
		a.mix(&p.Mix, "paint")
		a.text(&p.Underdrawing, "underdrawing").More = true
		a.coating(&p.Coating)
	}),
	"varnish": doing(func(a *ask, v *record.Varnish) {
		a.mix(&v.Mix, "varnish")
		word(a, &v.Gloss, "gloss")
		word(a, &v.Removable, "removable")
		a.text(&v.RemovedWith, "removed-with")
		a.coating(&v.Coating)
	}),
	"cut": {asks: askCut, do: cut, none: true},
}

func onFront(a act) act { a.front = true; return a }

func ofNoPanels(a act) act { a.none = true; return a }

// sizes is how many different sizes one form of cutting takes.
const sizes = 4

func askCut(a *ask) {
	for i := range sizes {
		n := strconv.Itoa(i + 1)
		for _, x := range [][2]string{{"count", "number"}, {"size", "line"}} {
			in := a.add(x[0], x[1])
			in.Name += n
			if in.More = i > 0; in.More {
				in.Label = a.d.say("in-nth", record.With("input", in.Label), record.With("n", i+1))
			}
		}
	}
	cutFields(a, new(record.Cut))
	a.add("cut-no-cloth", "yes")
}

func cutFields(a *ask, c *record.Cut) {
	a.shelf(&c.Board, &c.Lot, "board", "board")
	a.text((*string)(&c.Batch), "new-batch")
	word(a, &c.Grain, "grain")
}

func cut(d *desk, v *studio.View, r *typed.Reader, at record.When, f url.Values) (w studio.Written, err error) {
	var asked []string
	for i := range sizes {
		n := strconv.Itoa(i + 1)
		if size := strings.TrimSpace(f.Get("size" + n)); size != "" {
			asked = append(asked, first(url.Values{"n": {f.Get("count" + n)}, "one": {"1"}}, "n", "one")+" of "+size)
		}
	}
	if asked == nil {
		return w, refuse.Input("size1", "page-no-size", "how many, and how large?")
	}
	c := read(d, r, f, cutFields)
	panels := planning.ParsePanels(r, strings.Join(asked, ", "))
	if r.Err() != nil {
		return w, r.Err()
	}
	var cuts []record.Cut
	for _, p := range panels {
		c.Size = p.Size
		cuts = append(cuts, slices.Repeat([]record.Cut{c}, min(max(p.Count, 0), bench.MostCut+1))...)
	}
	var also []record.Entry
	if f.Get("cut-no-cloth") == "yes" {
		also = append(also, record.Entry{At: at, Body: record.Intended{Cloth: record.No}})
	}
	return bench.Cut(d.ctx, v, at, cuts, also...)
}
