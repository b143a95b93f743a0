package tell

import (
	"golang.org/x/text/language"

	"backleaf/record/edtf"
	"backleaf/record/paper"
	"backleaf/record/section"
)

// English is the catalogue that ships.
var English = &Catalogue{
	Tag:     language.English,
	Number:  englishNumbers,
	Words:   englishWords.with("code", englishTrade.words()),
	Events:  englishEvents,
	Objects: englishObjects,
	Codes: codes(
		englishRecipes,
		englishGaps,
		englishWhere,
		englishWarnings,
		englishBench,
		englishCommands,
		englishProducts,
		englishAsk,
		englishCare,
		englishFindings, englishDue, englishBalance, englishRemedies, watching("Leave it, and watch ", englishRules),
	),
	Rules:    englishRules,
	Findings: FindingLines{Found: "{what} ({entries})", Run: "{from}–{to}"},
	Join:     Joins{List: "{a}, {b}", LastOfList: "{a} and {b}", Clauses: "; ", Bracket: "{text} ({aside})", Pair: "{name}: {value}", Named: "{name} {value}", Quote: "“{text}”"},
	Dates:    edtf.English,
	Section: section.Words{
		Front: "Front", Back: "Back",
		Measured: "measured", Estimated: "estimated", NotRecorded: "thickness not recorded",
		NotToScale: "Not to scale",
		Part:       "Layers {first} to {last} of {all}, counted from the front",
	},
	Lines: Lines{
		Blank: "Blank panel", Untitled: "Untitled",
		NotRecorded: "not recorded", Unknown: "unknown",
		Size: "{measured} ({other})", NoSize: "dimensions not recorded", NoSides: "height and width unknown", NoDepth: "{size}, depth not recorded",
		NoDate: "date not recorded", UnknownDate: "date unknown",
		Between: "between {from} and {to}",
		On:      "{medium} on {support}", LaidOn: "{cloth} laid on {board}", NoMedium: "medium not recorded, on {support}",
		BinderLayer: "{binder} {layer}", PaintLayer: "{medium} paint", VarnishLayer: "{resin} varnish",
		Coats: "{n, plural, one {{layer}} other {{layer}, {n} coats}}", More: "{layer}, extra",
		Weave: "{cloth}, {weave}", Threads: "{cloth}, {warp} × {weft}",
		BackLine: "back: {layer}", EdgesLine: "edges: {layer}",
		BuildUp: "{board}. On the front, from the board outwards: {front}.", BuildUpBack: "On the back: {back}.", BuildUpEdges: "On the edges: {edges}.",
		NothingOnFront: "nothing recorded",
		Sealed:         "{faces} sealed", NotSealed: "{faces}: no sealing coat recorded",
		NoVarnish: "no varnish recorded", Removable: "{varnish}, removable", RemovableWith: "{varnish}, removable with {solvent}",
		NotRemovable: "{varnish}, not removable", RemovableUnknown: "{varnish}, not known whether removable", RemovableNotRecorded: "{varnish}, not recorded whether removable",
		AsProduct: "{line} (as stated for the product: {basis})", AsProductUnstated: "{line} (as stated for the product)", AsTypical: "{line} (typical for this kind; test first)",
		Entry: "E{n}", Amended: "{entry}, {date}: {of} changed, {changes} ({because})", Withdrawn: "{entry}, {date}: {of} withdrawn ({because})",
		Unfit:  "{entry}, {date}: {of}, change could not be applied ({because})",
		Change: "{field}: {was} → {now}", SharedByPanels: "{n, plural, one {{amount} for one panel} other {{amount} for {n} panels together}}", ForEach: "{amount} for each panel",
		SectionTitle: "Build-up of {number}, cut through",
		Cloth:        "cloth", Coat: "coat", Paint: "paint", Varnish: "varnish", Board: "board of a kind not recorded",
		Newer: "newer: {code}", NewerValues: "newer: {code}, {values}", NewerKind: "newer: {kind}",
		Today: "today {time}", Tomorrow: "tomorrow {time}", Yesterday: "yesterday {time}", Digest: "{first}…", Panels: "{n} panels, {first} to {last}", PanelsAmong: "{n} panels, {first} … {last}", Products: "{layer} ({mix})",
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
	Danger:      englishDanger,
	Label:       englishLabel,
	Certificate: englishCertificate,
	Dossier:     englishDossier,
	Plan:        englishPlan,
}
