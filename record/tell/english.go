package tell

import (
	"reflect"
	"strings"

	"backleaf/record"
	"backleaf/record/edtf"
	"backleaf/record/paper"
)

// English is the catalogue that ships.
var English = &Catalogue{
	Language: "en",
	Form: func(n int) int {
		if n == 1 {
			return 0
		}
		return 1
	},
	Dates:   edtf.English,
	Section: paper.EnglishSection,
	Words: Words{
		Faces: map[record.Face]Message{record.Front: "front", record.Back: "back", record.Edges: "edges"},
		Purposes: map[record.Purpose]Message{record.Sizing: "size", record.Sealer: "sealer", record.Adhesive: "adhesive", record.StainBlock: "stain block",
			record.Ground: "ground", record.Isolation: "isolation coat", record.Barrier: "barrier coat", "other": "coat"},
		Binders: map[record.Binder]Message{record.Acrylic: "acrylic dispersion", record.PVA: "PVA dispersion", record.AnimalGlue: "animal glue",
			record.Cellulose: "cellulose ether", record.Starch: "starch paste", record.Casein: "casein", record.Egg: "egg", record.Gum: "gum", record.DryingOil: "drying oil",
			record.Alkyd: "alkyd", record.Shellac: "shellac", record.Wax: "wax", record.NaturalResin: "natural resin", record.AcrylicResin: "acrylic resin",
			record.HydrocarbonRs: "hydrocarbon resin", record.KetoneResin: "ketone resin", record.Polyurethane: "polyurethane", record.Epoxy: "epoxy resin", "other": "other binder"},
		Boards: map[record.BoardKind]Message{record.Plywood: "{species} plywood", record.MDF: "medium-density fibreboard", record.Hardboard: "hardboard",
			record.TemperedHardboard: "tempered hardboard", record.SolidWood: "{species} wood", record.Particleboard: "particleboard",
			record.Honeycomb: "honeycomb panel", record.AluminiumComp: "aluminium composite panel", "other": "board"},
		Fibres: map[record.Fibre]Message{"linen": "linen", "cotton": "cotton", "hemp": "hemp", "jute": "jute", "silk": "silk", "polyester": "polyester",
			"linen-cotton": "linen and cotton cloth", "other": "cloth"},
		Weaves: map[record.Weave]Message{"plain": "plain weave", "basket": "basket weave", "twill": "twill", "herringbone": "herringbone twill", "satin": "satin",
			"huckaback": "huckaback", "other": "other weave"},
		Media: map[record.PaintMedium]Message{record.Oil: "oil", record.AlkydPaint: "alkyd", record.WaterMixableOil: "water-mixable oil", record.AcrylicPaint: "acrylic",
			record.EggTempera: "egg tempera", record.CaseinPaint: "casein", record.Gouache: "gouache", record.Watercolour: "watercolour", record.Encaustic: "encaustic",
			record.VinylPaint: "vinyl", "other": "other medium"},
		Stages: map[record.Stage]Message{record.StageBoard: "bare board", record.StageSealed: "sealed", record.StageClothed: "cloth laid", record.StageGrounded: "ground laid",
			record.StagePainted: "painted", record.StageVarnished: "varnished"},
		Glosses: map[record.Gloss]Message{"matt": "matt", "satin": "satin", "gloss": "gloss"},
		Answers: map[record.Answer]Message{record.Yes: "yes", record.No: "no", record.Unknown: "unknown"},
		Others: map[string]Message{"height": "along the height", "width": "along the width", "along-grain": "along the grain", "across-grain": "across the grain", "bias": "on the bias",
			"sound": "sound", "lifting": "lifting", "loose": "loose", "damaged": "damaged", "flat": "flat", "lean": "leaner", "same": "the same", "fat": "fatter",
			"thin": "thin", "thick": "thick", "sale": "sale", "gift": "gift", "loan": "loan", "consignment": "consignment", "return": "return", "theft": "theft", "loss": "loss",
			"cradle": "cradle", "battens": "battens", "strainer": "strainer", "brace": "brace", "rigid": "fixed rigidly", "sliding": "free to slide",
			"weave-detail": "weave, detail", "edge": "edge", "signature": "signature", "P": "P", "CAMI": "CAMI", "unknown": "unknown"},
		Units: map[string]Message{"mm": "mm", "cm": "cm", "m": "m", "in": "in", "ft": "ft", "µm": "µm", "mil": "mil", "g": "g", "kg": "kg", "mg": "mg", "mL": "mL", "L": "L",
			"oz": "oz", "lb": "lb", "US fl oz": "US fl oz", "US qt": "US qt", "US gal": "US gal", "yd": "yd", "m2": "m²", "sheets": "sheets", "%": "%",
			"g/mL": "g/mL", "kg/m3": "kg/m³", "lb/US gal": "lb/US gal", "h": "h", "min": "min", "s": "s", "d": "d", "weeks": "weeks", "months": "months",
			"°C": "°C", "°F": "°F", "g/m2": "g/m²", "oz/yd2": "oz/yd²", "/cm": "threads/cm", "/in": "threads/in"},
		Single: map[string]Message{"sheets": "sheet", "weeks": "week", "months": "month"},
		Fields: fieldWords(),
		Cloth:  "cloth", Coat: "coat", Paint: "paint", Varnish: "varnish", Board: "board of a kind not recorded",
	},
	Lines: Lines{
		Blank: "Blank panel", Untitled: "Untitled",
		NotRecorded: "not recorded", Unknown: "unknown",
		List: "{a}, {b}", LastOfList: "{a} and {b}",
		Size: "{measured} ({other})", NoSize: "dimensions not recorded", NoSides: "height and width unknown", NoDepth: "{size}, depth not recorded",
		NoDate: "date not recorded", UnknownDate: "date unknown",
		Between: "between {from} and {to}",
		On:      "{medium} on {support}", LaidOn: "{cloth} laid on {board}", NoMedium: "medium not recorded, on {support}",
		BinderLayer: "{binder} {layer}", PaintLayer: "{medium} paint", VarnishLayer: "{resin} varnish",
		Coats: Counted{"{layer}", "{layer}, {n} coats"}, More: "{layer}, extra",
		Weave: "{cloth}, {weave}", Threads: "{cloth}, {warp} × {weft}",
		BackLine: "back: {layer}", EdgesLine: "edges: {layer}",
		BuildUp: "{board}. On the front, from the board outwards: {front}.", BuildUpBack: "On the back: {back}.", BuildUpEdges: "On the edges: {edges}.",
		NothingOnFront: "nothing recorded",
		Sealed:         "{faces} sealed", NotSealed: "{faces}: no sealing coat recorded",
		NoVarnish: "no varnish recorded", Removable: "{varnish}, removable", RemovableWith: "{varnish}, removable with {solvent}",
		NotRemovable: "{varnish}, not removable", RemovableUnknown: "{varnish}, not known whether removable", RemovableNotRecorded: "{varnish}, not recorded whether removable",
		AsProduct: "{line} (as stated for the product: {basis})", AsProductUnstated: "{line} (as stated for the product)",
		Gap: "{topic}: {what}", GapUnknown: "{topic}: {what} (recorded as unknown)",
		GapTopics: map[string]Message{"support": "support", "cloth": "cloth", "identification": "identification", "size": "size", "sealer": "sealer", "adhesive": "adhesive",
			"stain-block": "stain block", "ground": "ground", "isolation": "isolation coat", "barrier": "barrier coat", "other": "coat", "coat": "coat", "paint": "paint", "varnish": "varnish"},
		GapThings: map[string]Message{"size": "size", "thickness": "thickness", "kind of board": "kind of board", "lot of the board": "lot of the board", "run of the grain": "run of the grain",
			"date of cutting": "date of cutting", "whether the front is sealed": "whether the front is sealed", "whether the back is sealed": "whether the back is sealed",
			"whether the edges are sealed": "whether the edges are sealed", "which cloth": "which cloth", "lot of the cloth": "lot of the cloth", "run of the threads": "run of the threads",
			"date": "date", "medium": "medium", "pigments": "pigments", "resin": "resin", "whether it can be removed": "whether it can be removed", "which material": "which material",
			"amount": "amount", "title": "title", "date of the work": "date of the work", "inscription or signature": "inscription or signature", "photograph of the front": "photograph of the front"},
		GapLot: "lot of {material}",
		Entry:  "E{n}", Amended: "{entry}, {date}: {of} changed, {changes} ({because})", Withdrawn: "{entry}, {date}: {of} withdrawn ({because})",
		Unfit:  "{entry}, {date}: {of}, change could not be applied ({because})",
		Change: "{field}: {was} → {now}", SharedByPanels: Counted{"{amount} for one panel", "{amount} for {n} panels together"}, ForEach: "{amount} for each panel",
		SectionTitle: "Build-up of {number}, cut through",
	},
	Care: CareWords{
		Line:     "Keep at 40–60 % relative humidity, 16–25 °C, at most 200" + paper.NoBreakSpace + "lux; no damp, sun or heat.",
		Climate:  "Relative humidity from 40 to 60 %, changing by no more than 10 % in a day; 16 to 25 °C.¹",
		Extremes: "Above 75 % mould may grow; below 25 % laminated boards may split, even in a short time.²",
		Light:    "Light of 150 to 200" + paper.NoBreakSpace + "lux, ultraviolet at most 75 µW per lumen; never direct sun.³",
		Place:    "Not in an attic or cellar, on a cold outside wall, above a heater or vent; no sudden cold.⁴",
		Dust:     "Dust with a soft, dry brush. No water, no cleaner: a conservator decides on anything more.⁵",
		Cold:     "Acrylic layers grow brittle in the cold: do not ship, flex or knock the panel below 10 °C.⁶",
		Sources: []Message{
			"¹ Bizot Green Protocol, 2023, as reported by the American Institute for Conservation.",
			"² Canadian Conservation Institute, Incorrect relative humidity; for 25 %, a published proposal of a standard for relative humidity.",
			"³ A museum association’s sheet of recommended light levels (oil paintings 150 lux, 75 µW/lm); MITRA, Storage, exhibition, handling (at most 200 lux).",
			"⁴ MITRA, Storage, exhibition, handling.",
			"⁵ Common practice.",
		},
		ColdSource: "⁶ Erlebacher, Brown, Mecklenburg, Tumosa, Materials Research Society 1992: acrylic paint stiffens fast below 15 °C; at low humidity some is brittle near 11 °C.",
	},
	Label:       englishLabel,
	Certificate: englishCertificate,
	Dossier:     englishDossier,
}

// fieldWords names the fields of all entries: in English they are the names of
// the record themselves.
func fieldWords() map[string]Message {
	out := map[string]Message{}
	var add func(reflect.Type)
	add = func(t reflect.Type) {
		for i := range t.NumField() {
			f := t.Field(i)
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			if name == "" && f.Anonymous {
				add(f.Type)
			} else if name != "" {
				out[name] = Message(strings.ReplaceAll(name, "_", " "))
			}
		}
	}
	for _, k := range record.Kinds() {
		b, _ := record.Blank(k)
		add(reflect.TypeOf(b))
	}
	out["at"] = "when"
	return out
}
