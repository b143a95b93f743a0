package check_test

import (
	"strconv"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/tell"
	"backleaf/record/trade"
)

// pairShelf names one product for each binder; they are invented.
const pairShelf = `
material - key=ply name=ply uses=board board={"kind":"plywood","species":"birch","thickness":"6~mm"}
material - key=mdf name=mdf uses=board board={"kind":"mdf","thickness":"6~mm"}
material - key=alu name=composite uses=board board={"kind":"aluminium-composite","thickness":"3~mm"}
material - key=linen name=linen uses=cloth cloth={"fibre":"linen","sized":"no"}
material - key=acrylic name=ground uses=ground binder=acrylic-dispersion gloss=matt
material - key=medium name=medium uses=sealer binder=acrylic-dispersion gloss=gloss
material - key=size name=size uses=sealer binder=acrylic-dispersion gloss=matt
material - key=pva name=pva uses=size binder=pva-dispersion gloss=satin
material - key=oil name=oil uses=ground binder=drying-oil
material - key=glue name=glue uses=size,ground binder=animal-glue
material - key=shellac name=shellac uses=sealer binder=shellac
material - key=dammar name=dammar uses=varnish binder=natural-resin
material - key=hydro name=hydro uses=varnish binder=hydrocarbon-resin
material - key=pu name=pu uses=varnish binder=polyurethane
material - key=av name=av uses=varnish binder=acrylic-dispersion`

// layersOf spells the layers of the test in the lines of a history.
var layersOf = map[string]string{
	"AG": "coat purpose=ground faces=front mix=acrylic", "AM": "coat purpose=sealer faces=front mix=medium", "AM matt": "coat purpose=sealer faces=front mix=size",
	"AP": "paint medium=acrylic film=thin gloss=matt", "AP thick": "paint medium=acrylic film=thick gloss=gloss", "AV": "varnish mix=av",
	"PV": "coat purpose=size faces=front mix=pva", "OG": "coat purpose=ground faces=front mix=oil", "OP": "paint medium=oil film=thin oil_content=fat", "OP lean": "paint medium=oil film=thin oil_content=lean",
	"AK": "paint medium=alkyd film=thin", "ET": "paint medium=egg-tempera film=thin", "CA": "paint medium=casein film=thin", "GS": "coat purpose=size faces=front mix=glue",
	"GG": "coat purpose=ground faces=front mix=glue", "GU": "paint medium=gouache film=thin gloss=matt", "WX": "paint medium=encaustic film=thin", "SH": "coat purpose=sealer faces=front mix=shellac",
	"NR": "varnish mix=dammar", "HC": "varnish mix=hydro", "PU": "varnish mix=pu", "LI": "cloth faces=front cloth=linen wet_through=no mix=medium",
	"WD": "", "MD": "", "AL": "",
}

// Pairs of layers, each by a history: what lies over what, what is expected, and
// where that stands. S is sound, C asks for a condition that the history meets
// or not, X is advised against. MITRA is the conservators' forum for artists.
func TestPairs(t *testing.T) {
	const (
		sound, against, unmet, open = "pair-sound", "pair-against", "pair-unmet", "pair-open"
		navy                        = "US Navy manual 14262; a magazine's answer to painters"
		plywood                     = "a paint maker's note on plywood"
		memory                      = "from memory"
		mitra98                     = "MITRA QID 54, oil on acrylic"
		seepage                     = "MITRA, glue in primed cloth on composite (for the principle)"
	)
	for _, c := range []struct{ over, on, want, source string }{
		{"AG", "AM", sound, plywood}, {"AG", "AG", sound, plywood}, {"AG", "AP", sound, plywood}, {"AP", "AG", sound, plywood}, {"AP", "AM", sound, plywood},
		{"AP", "AP", sound, plywood}, {"AG", "PV", sound, "MITRA, glue migration, for the slickness"}, {"AG", "OP", against, navy}, {"AP", "OP", against, navy}, {"AP", "OG", against, navy},
		{"AP", "AK", against, memory}, {"AG", "ET", against, memory}, {"AG", "GS", against, "Kay, The Painter's Guide, 1983"}, {"AP", "GS", against, memory}, {"AG", "GU", against, memory},
		{"AP", "WX", against, memory}, {"AG", "HC", against, "a paint maker's note on oil over varnish"}, {"OP", "HC", against, "a paint maker's note on oil over varnish"}, {"AP", "GG", sound, "Kay 1983"},
		{"OP", "AG", sound, "MITRA QID 351: 72 hours, better two weeks, a month best"}, {"OP", "AM", against, mitra98}, {"OP", "AM matt", sound, mitra98}, {"OP", "AP", sound, mitra98}, {"OP", "AP thick", unmet, mitra98},
		{"OP", "OG", sound, "MITRA QID 351"}, {"OP", "OP", sound, "MITRA, oil over acrylic ground"}, {"OP lean", "OP", unmet, "MITRA, oil over acrylic ground"}, {"OP", "AK", sound, "MITRA, oil over acrylic ground"},
		{"AK", "OP", open, "MITRA, oil over acrylic ground: unless the oil is lean"}, {"OP", "GG", unmet, "MITRA, cutting the absorbency of gesso: isolate"}, {"OG", "GS", sound, "Padfield, Stress, strain and craquelure 7"},
		{"OG", "AG", sound, "MITRA QID 351"}, {"OP", "WX", against, memory}, {"OP", "SH", sound, "MITRA, cutting the absorbency of gesso: thin"},
		{"ET", "GG", sound, "MITRA QID 711"}, {"ET", "AG", against, "MITRA QID 213"}, {"ET", "AM", against, seepage}, {"ET", "OP", against, memory}, {"ET", "ET", sound, memory}, {"ET", "HC", against, memory},
		{"CA", "AG", sound, "MITRA QID 415: matt, rigid, thin"}, {"CA", "OP", against, "MITRA QID 415"}, {"CA", "GG", sound, "Kay 1983"}, {"GG", "GS", sound, memory}, {"GG", "AG", against, memory}, {"GG", "AM", against, seepage},
		{"GG", "OP", against, memory}, {"GS", "AM", against, memory}, {"GS", "GG", sound, "MITRA, cutting the absorbency of gesso"}, {"GU", "AG", sound, "MITRA QID 236, practice"}, {"GU", "OP", against, memory},
		{"WX", "GG", sound, "teachers' and suppliers' pages on encaustic"}, {"WX", "AG", against, "teachers' and suppliers' pages on encaustic"}, {"WX", "OP", against, "teachers' and suppliers' pages on encaustic"},
		{"SH", "GG", sound, "MITRA, cutting the absorbency of gesso"}, {"SH", "OP", against, memory}, {"NR", "AP", against, memory}, {"HC", "AP", sound, "MITRA QID 634"}, {"HC", "OP", sound, "note on waiting before varnishing"},
		{"NR", "ET", unmet, "MITRA QID 151: isolate first"}, {"HC", "CA", against, "letter of a gallery's chief of conservation, 2003"}, {"PU", "OP", against, "MITRA, what not to use"}, {"AV", "OP", against, memory},
		{"OP", "LI", against, "Padfield, Stress, strain and craquelure 7"}, {"OG", "LI", against, "Padfield, Stress, strain and craquelure 7"}, {"AG", "LI", sound, "Kay 1983"},
		{"AG", "MD", sound, "practice"}, {"OG", "WD", unmet, "MITRA, oil penetration into wood: size first"}, {"AP", "AL", unmet, "a paint maker's note on composite: key it"}, {"SH", "WD", sound, "MITRA QID 431"},
	} {
		t.Run(c.over+" over "+c.on, func(t *testing.T) {
			board := map[string]string{"WD": "ply", "AL": "alu"}[c.on]
			if board == "" {
				board = "mdf"
			}
			story := pairShelf + "\ncut 2026-01-05 batch=b size=30_x_40_cm board=" + board + " keyed=no degreased=yes"
			upper := 17
			if l := layersOf[c.on]; l != "" {
				kind, rest, _ := strings.Cut(l, " ")
				story += "\n" + kind + " 2026-01-06 " + rest
				upper++
			}
			kind, rest, _ := strings.Cut(layersOf[c.over], " ")
			story += "\n" + kind + " 2027-04-01 " + rest // long after
			w, p := fold(t, lines(t, strings.TrimSpace(story)))
			for _, f := range check.Judge(w, p, moment) {
				if f.Rule != "layers-hold" {
					continue
				}
				for _, s := range f.Said {
					at := s.Value("entries").Texts
					if len(at) == 2 && at[1] == strconv.Itoa(upper) || len(at) == 1 && upper == 17 && at[0] == "17" || c.on == "WD" || c.on == "MD" || c.on == "AL" {
						if s.Code == c.want {
							return
						}
						t.Errorf("%s, want %s (%s): %v", s.Code, c.want, c.source, s.Values)
						return
					}
				}
				if c.want == sound && f.Outcome != check.Holds && len(f.Said) > 0 {
					return // sound pairs are not told beside what falls short
				}
				t.Errorf("%s is not said (%s): %v", c.want, c.source, f.Said)
			}
		})
	}
}

// A condition that the record leaves open is asked for as a painter would ask:
// each that decides of a pair has words of its own.
func TestOpenConditionsAreAsked(t *testing.T) {
	for _, c := range []trade.Condition{trade.Tooth, trade.ThinBelow, trade.ThinAbove, trade.LeanBelow, trade.Waited, trade.Keyed, trade.Degreased, trade.Untempered,
		trade.SealedFirst, trade.GroundBetween, trade.Isolated, trade.FatOverLean, trade.Rigid} {
		said := tell.Say(tell.English(), record.Say("pair-open", record.With("layer", record.Code("a")), record.With("below", record.Code("b")), record.With("open", record.Code("open-"+c))))
		if !strings.HasPrefix(said, "a over b: whether the ") && !strings.HasPrefix(said, "a over b: whether a ") || strings.Contains(said, string("open-"+c)) {
			t.Errorf("%s is asked for as %q", c, said)
		}
	}
}
