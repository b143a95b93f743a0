package tell

import (
	"sync"

	"golang.org/x/text/language"

	"backleaf/record"
	"backleaf/record/edtf"
	"backleaf/record/section"
)

// English is the catalogue that ships. It is put together when it is first asked.
var English = sync.OnceValue(func() *Catalogue {
	return &Catalogue{
		Tag:     language.English,
		Number:  englishNumbers,
		Words:   englishWords(),
		Meant:   englishMeant(),
		Events:  englishEvents(),
		Objects: codes(englishObjects),
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
			englishFindings, englishDue, englishBalance, englishRemedies, watching("Leave it, and watch ", englishRules()),
		),
		Tablet:   codes(englishAtTablet),
		Hints:    codes(englishHints),
		Rules:    englishRules(),
		Findings: FindingLines{Found: "{what} ({entries})", Run: "{from}–{to}", Besides: "{found}; not recorded: {open}"},
		Join:     Joins{List: "{a}, {b}", LastOfList: "{a} and {b}", Clauses: "; ", Bracket: "{text} ({aside})", Pair: "{name}: {value}", Named: "{name} {value}", Quote: "“{text}”"},
		Dates:    edtf.English,
		Section: section.Words{
			Front: "Front", Back: "Back",
			Measured: "{t}, measured", Estimated: "at most {t}, estimated", NotRecorded: "Where no date or thickness stands, none is recorded.",
			NotToScale: "Not to scale", ToScale: "To scale, {times} times as large", LeftOut: "Left out, as their thickness is not recorded: {layers}",
			Part: "Layers {first} to {last} of {all}, counted from the front",
		},
		Lines: Lines{Texts: Texts{
			"blank": "Blank panel", "untitled": "Untitled", "title-unknown": "Title not known",
			"not-recorded": "not recorded", "unknown": "unknown",
			"size": "{measured} ({other})", "no-size": "dimensions not recorded", "no-sides": "height and width unknown", "no-depth": "{size}, depth not recorded",
			"no-date": "date not recorded", "unknown-date": "date unknown",
			"between": "between {from} and {to}",
			"on":      "{medium} on {support}", "laid-on": "{cloth} laid on {board}", "no-medium": "medium not recorded, on {support}",
			"binder-layer": "{binder} {layer}", "paint-layer": "{medium} paint", "varnish-layer": "{resin} varnish",
			"coats": "{n, plural, one {{layer}} other {{layer}, {n}\u00A0coats}}", "more": "{layer}, laid on thicker", "other-coats": "of other coats not recorded",
			"threads":   "{warp}\u00A0×\u00A0{weft}",
			"back-line": "back: {layer}", "edges-line": "edges: {layer}",
			"build-up": "{board}. On the front, from the board outwards: {front}.", "build-up-back": "On the back: {back}.", "build-up-edges": "On the edges: {edges}.",
			"no-varnish": "no varnish recorded", "varnish-gone": "no varnish today: {varnish}", "removable": "{varnish}, removable", "removable-with": "{varnish}, removable by a conservator with {solvent}",
			"not-removable": "{varnish}, not removable", "removable-unknown": "{varnish}, not known whether removable", "removable-not-recorded": "{varnish}, not recorded whether removable",
			"as-product": "{line} (as stated for the product: {basis})", "as-product-unstated": "{line} (as stated for the product)", "as-typical": "{line} (typical for this kind; test first)",
			"entry": "E{n}", "amended": "{entry}, {date}: {of} changed, {changes} ({because})", "withdrawn": "{entry}, {date}: {of} withdrawn ({because})",
			"unfit":  "{entry}, {date}: {of}, change could not be applied ({because})",
			"change": "{field}: {was} → {now}", "shared-by-panels": "{n, plural, one {{amount} for one panel} other {{amount} for {n} panels together}}", "for-each": "{amount} for each panel",
			"painted-in":    "painted {dates}",
			"section-title": "Build-up of {number}, cut through", "edge-title": "An edge of {number}, cut through", "outside": "Outside", "inside": "Board",
			"cloth": "cloth", "coat": "coat", "paint": "paint", "varnish": "varnish", "board": "board of a kind not recorded",
			"newer": "newer: {code}", "newer-values": "newer: {code}, {values}", "newer-kind": "newer: {kind}",
			"today": "today {time}", "tomorrow": "tomorrow {time}", "yesterday": "yesterday {time}", "digest": "{first}…", "panels": "{n} panels, {first} to {last}", "panels-among": "{n} panels, {first} … {last}", "products": "{layer} ({mix})",
		},
			Nothing: map[record.FaceState]Message{record.FaceBare: "left bare", record.FaceNothing: "nothing", record.FaceUnknown: "nothing recorded"},
			Faces: map[record.FaceState]Message{record.FaceSealed: "{faces} sealed", record.FaceCoated: "{faces}: nothing that seals", record.FaceBare: "{faces} left bare",
				record.FaceNothing: "{faces}: nothing laid", record.FaceUnknown: "{faces}: no sealing coat recorded"},
		},
		Danger:      englishDanger,
		Label:       englishLabel(),
		Certificate: codes(englishCertificate),
		Page:        englishPage(),
		Dossier:     englishDossier(),
		Plan:        englishPlan(),
	}
})
