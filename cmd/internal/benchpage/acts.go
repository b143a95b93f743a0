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
	last  func(record.Body) url.Values // how it looks as a filled form; nil: never filled
	none  bool                         // it is about no panels
	one   bool                         // it is about one panel
	maybe bool                         // it may be about no panels
	now   bool                         // it is done as it is written down
}

// inputs are what an act asks for.
func (a act) inputs(d *desk) []input {
	q := ask{d: d}
	a.asks(&q)
	return q.all
}

// doing makes the act that one entry about panels is.
func doing[B record.Body](asks func(*ask), read func(*typed.Reader, url.Values) B, last func(B) url.Values) act {
	a := act{asks: asks, do: func(d *desk, v *studio.View, r *typed.Reader, at record.When, f url.Values) (studio.Written, error) {
		body := read(r, f)
		if r.Err() != nil {
			return studio.Written{}, r.Err()
		}
		return bench.Do(d.ctx, v, at, body)
	}}
	if last != nil {
		a.last = func(b record.Body) url.Values { return last(b.(B)) }
	}
	return a
}

// acts are the acts at the bench by name; those of shelf, papers and whereabouts
// stand in other files.
var acts = map[string]act{
	"coat": doing(func(a *ask) {
		word(a, "as", record.Sealer, record.Ground, record.Sizing, record.Adhesive, record.StainBlock, record.Isolation)
		a.stuff("with", "sealer", "ground", "size", "adhesive", "stain-block", "isolation")
		a.faces("on", "extra")
		a.line("amount")
		a.coating()
	}, func(r *typed.Reader, f url.Values) record.Coat {
		c := record.Coat{Coating: coating(r, f), Faces: r.Faces("on", f["on"]), Extra: r.Faces("extra", f["extra"])}
		typed.Word(r, "as", f.Get("as"), &c.Purpose)
		return c
	}, func(c record.Coat) url.Values {
		return coated(c.Coating, url.Values{"as": {string(c.Purpose)}, "on": texts(c.Faces), "extra": texts(c.Extra)})
	}),
	"cloth": doingCloth(),
	"trim": doing(func(a *ask) { a.line("tool"); word[record.Answer](a, "eased"); a.more("note") }, func(r *typed.Reader, f url.Values) (t record.Trimmed) {
		typed.Word(r, "eased", f.Get("eased"), &t.Eased)
		t.Tool, t.Note = f.Get("tool"), f.Get("note")
		return t
	}, func(t record.Trimmed) url.Values {
		return url.Values{"tool": {t.Tool}}
	}),
	"sand": doing(func(a *ask) {
		a.faces("on")
		a.add("grit", "one", option{Value: "P150", Words: "P150"}, option{Value: "P180", Words: "P180"}, option{Value: "P220", Words: "P220"}, option{Value: "P320", Words: "P320"})
		word[record.Answer](a, "dusted")
		word[record.Answer](a, "through").More = true
		a.more("grit-other", "note")
	}, func(r *typed.Reader, f url.Values) (t record.Sanded) {
		t.Faces, t.Note = r.Faces("on", f["on"]), f.Get("note")
		t.Scale, t.Grit = r.Grit("grit", first(f, "grit-other", "grit"))
		typed.Word(r, "dusted", f.Get("dusted"), &t.Dusted)
		typed.Word(r, "through", f.Get("through"), &t.Through)
		return t
	}, func(t record.Sanded) url.Values {
		f := url.Values{"on": texts(t.Faces)}
		if t.Grit > 0 {
			f.Set("grit", strings.TrimSpace(string(t.Scale))+itoa(t.Grit))
			if t.Scale != "P" {
				f.Set("grit", string(t.Scale)+" "+itoa(t.Grit))
			}
		}
		return f
	}),
	"warm": doing(func(a *ask) { a.faces("on"); a.line("for"); a.more("note") }, func(r *typed.Reader, f url.Values) (t record.WarmAir) {
		t.Faces, t.Note = r.Faces("on", f["on"]), f.Get("note")
		r.Text("for", f.Get("for"), &t.For)
		return t
	}, nil),
	"bare": doing(func(a *ask) { a.faces("on"); a.line("because") }, func(r *typed.Reader, f url.Values) record.LeftBare {
		return record.LeftBare{Faces: r.Faces("on", f["on"]), Because: f.Get("because")}
	}, nil),
	"no-cloth": doing(func(*ask) {}, func(*typed.Reader, url.Values) record.Intended { return record.Intended{Cloth: record.No} }, nil),
	"inspect": doing(func(a *ask) {
		word[record.Sound](a, "edges")
		word[record.Sound](a, "adhesion")
		a.line("remarks", "bow", "span")
		word[record.Toward](a, "hollow-to").More = true
		word[record.Along](a, "along").More = true
	}, func(r *typed.Reader, f url.Values) (t record.Inspection) {
		r.Text("bow", f.Get("bow"), &t.Bow)
		r.Text("span", f.Get("span"), &t.Span)
		typed.Word(r, "hollow-to", f.Get("hollow-to"), &t.Toward)
		typed.Word(r, "along", f.Get("along"), &t.Along)
		typed.Word(r, "edges", f.Get("edges"), &t.Edges)
		typed.Word(r, "adhesion", f.Get("adhesion"), &t.Adhesion)
		t.Remarks = f.Get("remarks")
		return t
	}, nil),
	"note": doing(func(a *ask) { a.long("text") }, func(_ *typed.Reader, f url.Values) record.Note { return record.Note{Text: f.Get("text")} }, nil),
	"discard": doing(func(a *ask) { a.line("because") }, func(_ *typed.Reader, f url.Values) record.Discarded {
		return record.Discarded{Because: f.Get("because")}
	}, nil),
	"cut":     {asks: askCut, do: cut, none: true},
	"climate": climate(),
}

func climate() act {
	a := doing(func(a *ask) { a.line("temp", "rh"); a.more("place") }, func(r *typed.Reader, f url.Values) (t record.Climate) {
		r.Text("temp", inUnit(f.Get("temp"), "°C"), &t.Temperature)
		r.Text("rh", inUnit(f.Get("rh"), "%"), &t.Humidity)
		t.Place = f.Get("place")
		return t
	}, nil)
	a.none = true
	return a
}

func doingCloth() act {
	a := doing(func(a *ask) {
		a.stuff("cloth", "cloth")
		a.faces("on")
		a.stuff("with", "adhesive")
		a.line("amount")
		word[record.Answer](a, "wet-through")
		word[record.Answer](a, "edges-pressed")
		word[record.ThreadRun](a, "threads")
		a.yes("again")
		a.more("oversize", "weighted")
		a.coating()
	}, readCloth, func(c record.ClothLaid) url.Values {
		cloth := string(c.ClothLot)
		if cloth == "" {
			cloth = string(c.Cloth)
		}
		return coated(c.Coating, url.Values{"cloth": {cloth}, "on": texts(c.Faces), "threads": {string(c.Run)}, "oversize": {c.Oversize.String()}})
	})
	a.front = true
	a.do = func(d *desk, v *studio.View, r *typed.Reader, at record.When, f url.Values) (w studio.Written, err error) {
		c := readCloth(r, f)
		if r.Err() != nil {
			return w, r.Err()
		}
		return bench.Perform(d.ctx, v, bench.Act{Body: c, At: []record.When{at}, Relaid: f.Get("again") == "yes"})
	}
	return a
}

func readCloth(r *typed.Reader, f url.Values) record.ClothLaid {
	c := record.ClothLaid{Coating: coating(r, f), Faces: r.Faces("on", f["on"])}
	c.Cloth, c.ClothLot = r.OnShelf(f.Get("cloth"))
	r.Text("oversize", f.Get("oversize"), &c.Oversize)
	r.Text("weighted", f.Get("weighted"), &c.Weighted)
	typed.Word(r, "threads", f.Get("threads"), &c.Run)
	typed.Word(r, "wet-through", f.Get("wet-through"), &c.WetThrough)
	typed.Word(r, "edges-pressed", f.Get("edges-pressed"), &c.EdgesPressed)
	return c
}

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
	a.stuff("board", "board")
	a.line("new-batch")
	word[record.Grain](a, "grain")
	a.yes("cut-no-cloth")
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
	var c record.Cut
	c.Board, c.Lot = r.OnShelf(f.Get("board"))
	c.Batch = record.Key(strings.TrimSpace(f.Get("new-batch")))
	typed.Word(r, "grain", f.Get("grain"), &c.Grain)
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
