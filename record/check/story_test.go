package check_test

import (
	"fmt"
	"math/rand"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/check"
)

// shelfLines is what drawn histories are made with. The products are invented.
const shelfLines = `
material - key=ply3 name=ply uses=board board={"kind":"plywood","species":"birch","plies":3,"thickness":"3~mm","formaldehyde_class":"E1"}
material - key=ply6 name=ply uses=board board={"kind":"plywood","species":"birch","plies":5,"thickness":"6.4~mm","formaldehyde_class":"ULEF"}
material - key=mdf3 name=mdf uses=board board={"kind":"mdf","thickness":"3~mm","formaldehyde_class":"E2"}
material - key=mdf6 name=mdf uses=board board={"kind":"mdf","thickness":"6~mm"}
material - key=hard name=hardboard uses=board board={"kind":"hardboard","thickness":"3.2~mm"}
material - key=temp name=tempered uses=board board={"kind":"tempered-hardboard","thickness":"3.2~mm"}
material - key=alu name=composite uses=board board={"kind":"aluminium-composite","thickness":"3~mm"}
material - key=oak name=oak uses=board board={"kind":"solid-wood","species":"oak","thickness":"12~mm"}
material - key=comb name=honeycomb uses=board board={"kind":"honeycomb","thickness":"12~mm"}
material - key=odd name=board uses=board
material - key=linen name=linen uses=cloth cloth={"fibre":"linen","sized":"no"}
material - key=primed name=primed uses=cloth cloth={"fibre":"linen","sized":"yes"}
material - key=poly name=polyester uses=cloth cloth={"fibre":"polyester","sized":"no"}
material - key=rag name=rag uses=cloth
material - key=sealer name=sealer uses=sealer,adhesive binder=acrylic-dispersion waterborne=yes solids_by_volume=42_% density=1.04_g/mL touch_dry_from=20_min touch_dry_to=30_min cure_from=24_h cure_to=36_h film_forms_above=8_°C toxic_dry=no gloss=satin
material - key=gloss name=gloss uses=stain-block,isolation binder=acrylic-dispersion waterborne=yes solids_by_volume=43_% density=1.04_g/mL cure_from=24_h cure_to=72_h gloss=gloss toxic_dry=no
material - key=pva name=pva uses=size,adhesive binder=pva-dispersion waterborne=yes cure_from=12_h cure_to=24_h gloss=satin
material - key=glue name=glue uses=size binder=animal-glue waterborne=yes
material - key=shellac name=shellac uses=sealer binder=shellac waterborne=no
material - key=enamel name=enamel uses=sealer binder=alkyd waterborne=no
material - key=ground name=ground uses=ground binder=acrylic-dispersion waterborne=yes solids_by_volume=38_% density=1.35_g/mL cure_from=24_h cure_to=72_h film_forms_above=10_°C gloss=matt toxic_dry=no
material - key=oilground name=oilground uses=ground binder=drying-oil toxic_dry=yes
material - key=tin name=tin uses=sealer,ground
material - key=resin name=resin uses=varnish binder=hydrocarbon-resin removable=yes
material - key=floor name=floor uses=varnish binder=polyurethane removable=no
lot - key=new material=sealer expires=2030
lot - key=old material=sealer expires=2025`

// teller draws histories of one panel: acts at distinct exact times, written
// down as they happened.
type teller struct {
	*rand.Rand
	at time.Time
}

func pick[T any](r *teller, of ...T) T { return of[r.Intn(len(of))] }

// often gives a value three times out of four, else nothing.
func often[T any](r *teller, v T) (none T) {
	if r.Intn(4) > 0 {
		return v
	}
	return none
}

var (
	boards  = []record.Key{"ply3", "ply3", "ply6", "mdf3", "mdf6", "mdf6", "hard", "temp", "alu", "oak", "comb", "odd"}
	answers = []record.Answer{"yes", "yes", "no", "unknown", ""}
	sides   = [][]record.Face{{"front"}, {"back"}, {"front", "back"}, {"front", "back", "edges"}, {"edges"}, {"front", "edges"}}
)

func length(s string) record.Length {
	l, err := record.ParseLength(s)
	if err != nil {
		panic(err)
	}
	return l
}

func (r *teller) coating(material ...record.Key) record.Coating {
	c := record.Coating{Mix: []record.Part{{Parts: 1, Material: pick(r, material...), Lot: pick[record.Key](r, "", "", "new", "old")}}}
	if c.Mix[0].Material != "sealer" {
		c.Mix[0].Lot = ""
	}
	if r.Intn(20) == 0 {
		c.Mix = nil
	}
	switch r.Intn(5) {
	case 0:
	case 1:
		c.WetEach.UnmarshalText(fmt.Appendf(nil, "%d g", 5+r.Intn(60)))
	default:
		c.DryFilm = length(fmt.Sprintf("%d µm", 10+r.Intn(200)))
	}
	if r.Intn(2) == 0 {
		c.Humidity.UnmarshalText(fmt.Appendf(nil, "%d %%", 30+r.Intn(60)))
		c.Temperature.UnmarshalText(fmt.Appendf(nil, "%d °C", 4+r.Intn(22)))
	}
	return c
}

// act draws what happens next.
func (r *teller) act() record.Body {
	switch r.Intn(16) {
	case 0, 1, 2, 3:
		p := pick[record.Purpose](r, "size", "sealer", "sealer", "stain-block", "isolation", "barrier", "", "other")
		return record.Coat{Purpose: p, Faces: pick(r, sides...), Coating: r.coating("sealer", "sealer", "gloss", "pva", "glue", "shellac", "enamel", "tin")}
	case 4, 5, 6:
		return record.Coat{Purpose: "ground", Faces: pick(r, sides[:3]...), Coating: r.coating("ground", "ground", "oilground", "glue", "tin")}
	case 7:
		b := record.ClothLaid{Faces: pick(r, sides[:3]...), Cloth: pick[record.Key](r, "linen", "linen", "primed", "poly", "rag"), WetThrough: pick(r, answers...),
			EdgesPressed: pick(r, answers...), Coating: r.coating("sealer", "sealer", "pva", "glue", "tin")}
		b.Weighted.UnmarshalText(fmt.Appendf(nil, "%d h", r.Intn(48)))
		return b
	case 8:
		return record.Trimmed{}
	case 9:
		return record.Sanded{Faces: pick(r, sides[:3]...), Scale: "P", Grit: pick[int64](r, 80, 150, 180, 220, 0), Through: pick(r, answers...)}
	case 10, 11:
		return record.PaintLayer{Faces: pick(r, []record.Face{"front"}, []record.Face{"front"}, []record.Face{"back"}, nil), Medium: pick[record.PaintMedium](r, "oil", "oil", "acrylic", "acrylic", "alkyd", "egg-tempera", "encaustic", ""),
			Film: pick[record.Film](r, "thin", "thick", ""), Gloss: pick[record.Gloss](r, "matt", "gloss", ""), Oil: pick[record.OilContent](r, "lean", "same", "fat", ""),
			Pigments: pick(r, nil, []record.Pigment{{Name: "white", Index: "PW 6"}}, []record.Pigment{{Name: "zinc white", Index: "PW 4"}}, []record.Pigment{{Name: "mixing white"}, {Name: "lead white", Index: "PW 1"}})}
	case 12:
		return record.Varnish{Coating: record.Coating{Mix: []record.Part{{Parts: 1, Material: pick[record.Key](r, "resin", "floor")}}}, Removable: pick[record.Answer](r, "", "", "yes", "unknown")}
	case 13:
		b := record.Inspection{Edges: pick[record.Sound](r, "sound", "lifting", ""), Adhesion: pick[record.Sound](r, "sound", "loose", "unknown", "")}
		switch r.Intn(4) {
		case 0:
			b.Toward = "flat"
		case 1, 2:
			b.Bow, b.Toward, b.Along = length(fmt.Sprintf("%d µm", r.Intn(4000))), pick[record.Toward](r, "front", "back", ""), pick[record.Along](r, "height", "width", "")
			b.Span = often(r, length(pick(r, "300 mm", "400 mm", "500 mm")))
		}
		return b
	case 14:
		return record.Braced{Bracing: "battens", Fixing: pick[record.Fixing](r, "rigid", "sliding", ""), Run: pick[record.Moving](r, "along-grain", "across-grain", "")}
	}
	return record.LeftBare{Faces: []record.Face{pick[record.Face](r, "back", "edges", "front")}}
}

// story draws a history: the cut, some acts, and perhaps what the panel is
// meant for. The first entries are the shelf.
func (r *teller) story(shelf []record.Entry, acts int) []record.Entry {
	out := append([]record.Entry(nil), shelf...)
	add := func(b record.Body) {
		r.at = r.at.Add(time.Duration(10+r.Intn(60*24*20)) * time.Minute).Truncate(time.Second)
		out = append(out, record.Entry{Seq: int64(len(out) + 1), At: record.Moment(r.at), Written: record.Moment(r.at.Add(time.Minute)), Panels: []record.Number{panel}, Body: b})
	}
	cut := record.Cut{Batch: "b", Board: pick(r, boards...), Grain: pick[record.Grain](r, "height", "width", ""), Degreased: pick(r, answers...), Keyed: pick(r, answers...)}
	cut.Size = size(fmt.Sprintf("%d cm x %d cm x %s", 15+5*r.Intn(10), 15+5*r.Intn(10), pick(r, "3 mm", "3.2 mm", "6 mm", "6.4 mm", "12 mm")))
	if r.Intn(5) == 0 {
		cut.Recorded = "afterwards"
	}
	cut.Settled.UnmarshalText(fmt.Appendf(nil, "%d h", r.Intn(100)))
	add(cut)
	for range acts {
		add(r.act())
		if r.Intn(5) == 0 { // the room was read
			c := record.Climate{}
			c.Temperature.UnmarshalText(fmt.Appendf(nil, "%d °C", 4+r.Intn(22)))
			c.Humidity.UnmarshalText(fmt.Appendf(nil, "%d %%", 30+r.Intn(60)))
			at := record.Moment(r.at.Add(time.Duration(1+r.Intn(20*60)) * time.Minute))
			out = append(out, record.Entry{Seq: int64(len(out) + 1), At: at, Written: at, Body: c})
		}
	}
	if r.Intn(2) == 0 {
		d := record.Described{}
		d.MeantFor.UnmarshalText(fmt.Appendf(nil, "%d %%", 40+r.Intn(40)))
		add(d)
	}
	return out
}

func size(s string) record.Size {
	z, err := record.ParseSize(s)
	if err != nil {
		panic(err)
	}
	return z
}

// stories draws n histories from a seed and gives each to a test.
func stories(t *testing.T, seed int64, n int, test func(t *testing.T, r *teller, es []record.Entry)) {
	t.Helper()
	shelf := lines(t, strings.TrimSpace(shelfLines))
	for i := range n {
		r := &teller{rand.New(rand.NewSource(seed + int64(i))), time.Date(2026, 1, 5, 9, 0, 0, 0, moment.Location())}
		es := r.story(shelf, 3+r.Intn(9))
		t.Run(fmt.Sprint(seed+int64(i)), func(t *testing.T) { test(t, r, es) })
	}
}

// found judges a history at its end.
func found(t testing.TB, es []record.Entry) map[string]check.Finding {
	t.Helper()
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]check.Finding{}
	for _, f := range check.Judge(w, w.Panel(panel), moment) {
		out[f.Rule] = f
	}
	return out
}
