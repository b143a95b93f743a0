package tell

import (
	"golang.org/x/text/language"

	"backleaf/record"
	"backleaf/record/edtf"
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
		englishActs,
		englishBench,
		englishTablet,
		englishCommands,
		englishKeys,
		englishVerify,
		englishSite,
		englishProducts,
		englishAsk,
		englishCare,
		englishCareInShort,
		englishFindings, englishDue, englishBalance, englishRemedies, watching("Leave it, and watch ", englishRules),
	),
	Tablet:   englishAtTablet,
	Hints:    englishHints,
	Rules:    englishRules,
	Findings: FindingLines{Found: "{what} ({entries})", Run: "{from}–{to}"},
	Join:     Joins{List: "{a}, {b}", LastOfList: "{a} and {b}", Clauses: "; ", Bracket: "{text} ({aside})", Pair: "{name}: {value}", Named: "{name} {value}", Quote: "“{text}”"},
	Dates:    edtf.English,
	Section: section.Words{
		Front: "Front", Back: "Back",
		Measured: "{t}, measured", Estimated: "at most {t}, estimated", NotRecorded: "Where no date or thickness stands, none is recorded.",
		NotToScale: "Not to scale", ToScale: "To scale, {times} times as large", LeftOut: "Left out, as their thickness is not recorded: {layers}",
		Part: "Layers {first} to {last} of {all}, counted from the front",
	},
	Lines: Lines{
		Blank: "Blank panel", Untitled: "Untitled", TitleUnknown: "Title not known",
		NotRecorded: "not recorded", Unknown: "unknown",
		Size: "{measured} ({other})", NoSize: "dimensions not recorded", NoSides: "height and width unknown", NoDepth: "{size}, depth not recorded",
		NoDate: "date not recorded", UnknownDate: "date unknown",
		Between: "between {from} and {to}",
		On:      "{medium} on {support}", LaidOn: "{cloth} laid on {board}", NoMedium: "medium not recorded, on {support}",
		BinderLayer: "{binder} {layer}", PaintLayer: "{medium} paint", VarnishLayer: "{resin} varnish",
		Coats: "{n, plural, one {{layer}} other {{layer}, {n}\u00A0coats}}", More: "{layer}, laid on thicker", OtherCoats: "of other coats not recorded",
		Threads:  "{warp}\u00A0×\u00A0{weft}",
		BackLine: "back: {layer}", EdgesLine: "edges: {layer}",
		BuildUp: "{board}. On the front, from the board outwards: {front}.", BuildUpBack: "On the back: {back}.", BuildUpEdges: "On the edges: {edges}.",
		Nothing: map[record.FaceState]Message{record.FaceBare: "left bare", record.FaceNothing: "nothing", record.FaceUnknown: "nothing recorded"},
		Faces: map[record.FaceState]Message{record.FaceSealed: "{faces} sealed", record.FaceCoated: "{faces}: nothing that seals", record.FaceBare: "{faces} left bare",
			record.FaceNothing: "{faces}: nothing laid", record.FaceUnknown: "{faces}: no sealing coat recorded"},
		NoVarnish: "no varnish recorded", Removable: "{varnish}, removable", RemovableWith: "{varnish}, removable by a conservator with {solvent}",
		NotRemovable: "{varnish}, not removable", RemovableUnknown: "{varnish}, not known whether removable", RemovableNotRecorded: "{varnish}, not recorded whether removable",
		AsProduct: "{line} (as stated for the product: {basis})", AsProductUnstated: "{line} (as stated for the product)", AsTypical: "{line} (typical for this kind; test first)",
		Entry: "E{n}", Amended: "{entry}, {date}: {of} changed, {changes} ({because})", Withdrawn: "{entry}, {date}: {of} withdrawn ({because})",
		Unfit:  "{entry}, {date}: {of}, change could not be applied ({because})",
		Change: "{field}: {was} → {now}", SharedByPanels: "{n, plural, one {{amount} for one panel} other {{amount} for {n} panels together}}", ForEach: "{amount} for each panel",
		PaintedIn:    "painted {dates}",
		SectionTitle: "Build-up of {number}, cut through", EdgeTitle: "An edge of {number}, cut through", Outside: "Outside", Inside: "Board",
		Cloth: "cloth", Coat: "coat", Paint: "paint", Varnish: "varnish", Board: "board of a kind not recorded",
		Newer: "newer: {code}", NewerValues: "newer: {code}, {values}", NewerKind: "newer: {kind}",
		Today: "today {time}", Tomorrow: "tomorrow {time}", Yesterday: "yesterday {time}", Digest: "{first}…", Panels: "{n} panels, {first} to {last}", PanelsAmong: "{n} panels, {first} … {last}", Products: "{layer} ({mix})",
	},
	Danger:      englishDanger,
	Label:       englishLabel,
	Certificate: englishCertificate,
	Page:        englishPage,
	Dossier:     englishDossier,
	Plan:        englishPlan,
}
