package tell

// DossierWords are printed in dossiers.
type DossierWords struct {
	Texts   `json:"texts"`
	Verify  []Message          // {number} {n} {root} {key}
	Effects map[string]Message // of solvents on binders
	Sides   [2]Message         // of a panel
}

func englishDossier() DossierWords {
	return DossierWords{Texts: Texts{
		"kind":    "Conservator’s dossier",
		"running": "{number} · {title}",
		"page":    "{n} of {all}", "continued": "{title} (continued)",
		"lead": "All that the studio’s journal holds on panel {number}, up to entry E{n} of {date}, in the order in which a conservator asks. " +
			"Gaps are named, estimates marked. It states what the maker wrote down and proves nothing beyond that.",
		"demo":         "A demonstration: studio, panel and products are invented.",
		"entries":      "E14 means entry 14 of that journal, the source of a statement.",
		"glance-title": "At a glance", "glance-is": "What it is", "glance-hazards": "Hazards", "glance-no-hazard": "none that the record names; where no pigments are recorded, nothing is known", "glance-varnish": "Varnish",
		"glance-condition": "Condition", "glance-no-condition": "no report yet", "glance-gaps": "Not recorded", "glance-more-gaps": "and each field marked “not recorded” below", "glance-no-gaps": "nothing that is asked for", "glance-changed": "Changed", "glance-no-change": "no entry corrected, no treatment",
		"glance-corrected": "{n, plural, one {one entry corrected} other {{n} entries corrected}}", "glance-treated": "{n, plural, one {treated once} other {treated {n} times}}",
		"batch-alone": "It was made alone.", "batch-of": "One of {n} panels of the batch {batch}.", "batch-discarded": "{number} discarded, {because}", "batch-treated": "{number} treated, {text}", "batch-seen": "{number}: {text}",
		"batch-well":            "Nothing amiss was recorded of the others.",
		"titles-identification": "Identification", "titles-support": "Support", "titles-cloth": "Cloth", "titles-sealing": "Size, sealer and adhesive", "titles-ground": "Ground", "titles-paint": "Paint",
		"titles-coating": "Surface coating", "titles-drawings": "Drawings and details", "titles-steps": "Work, dates and climate", "titles-products": "Products and lots", "titles-sensitivity": "What the binders are sensitive to",
		"titles-hazards": "Health hazards for whoever works on it", "titles-findings": "Rules of thumb", "titles-bow": "Bow and movement", "titles-history": "Treatments, condition and whereabouts", "titles-batch": "The batch", "titles-corrections": "Corrections",
		"titles-gaps": "Not recorded", "titles-verify": "How to verify this dossier",
		"names-photographs": "Photographs", "names-type": "Type of object", "names-materials": "Materials and techniques", "names-measurements": "Measurements", "names-inscriptions": "Inscriptions and markings",
		"names-features": "Distinguishing features", "names-title": "Title", "names-subject": "Subject", "names-date": "Date or period", "names-maker": "Maker", "names-description": "Short description",
		"names-inventory": "Inventory number", "names-written": "Related written material", "names-origin": "Place of origin", "names-cross-references": "Cross references", "names-documented": "Date documented",
		"names-painting": "painting", "names-blank-panel": "painting panel, not yet painted", "names-no-photograph": "none recorded",
		"names-photograph": "{role}{more, if {; {more}}} ({entry})",
		"names-signed":     "signed {where}", "names-batch": "batch “{batch}”", "names-own-reference": "{number}; the studio’s own reference {own}",
		"names-label-printed": "label printed {date} ({entry})", "names-certificate-issued": "certificate issued {date} ({entry})", "names-certificate-gone": "certificate {of} withdrawn {date} ({entry})",
		"names-board": "Board", "names-product": "Product", "names-producer": "Producer", "names-lot": "Lot", "names-thickness": "Thickness", "names-species": "Wood", "names-plies": "Plies", "names-grain": "Face grain", "names-formaldehyde": "Formaldehyde class",
		"names-density": "Density", "names-rough-side": "Rough side", "names-settled": "Settled in the room", "names-degreased": "Degreased", "names-keyed": "Surface keyed", "names-cut": "Cut", "names-bracing": "Bracing", "names-sealed": "Sealing", "names-today": "Today",
		"names-fibre": "Fibre", "names-weave": "Weave", "names-threads": "Threads, warp × weft", "names-mass": "Mass", "names-came": "Came sized or primed", "names-run": "Warp runs", "names-oversize": "Cut oversize by", "names-wet-through": "Wetted through",
		"names-pressed": "Edges pressed", "names-weighted": "Under weights", "names-trimmed": "Trimmed", "names-on-faces": "Laid on",
		"names-underdrawing": "Underdrawing", "names-technique": "Technique", "names-pigments": "Pigments",
		"columns-no": "No.", "columns-layer": "Layer", "columns-faces": "Face", "columns-product": "Product and lot", "columns-amount": "Wet amount", "columns-thickness": "Dry thickness", "columns-date": "Date", "columns-entry": "Entry", "columns-step": "Step",
		"columns-air": "Air", "columns-detail": "Detail", "columns-basis": "Values from", "columns-lots": "Lots", "columns-use": "Product", "columns-binder": "Binder", "columns-water": "Water", "columns-alcohol": "Alcohols", "columns-hydrocarbon": "Hydrocarbons", "columns-heat": "Heat", "columns-alkali": "Alkali",
		"columns-source": "Source", "columns-rule": "Rule", "columns-finding": "Found", "columns-missing": "Not recorded", "columns-bow": "Bow", "columns-span": "Over", "columns-share": "Share", "columns-hollow": "Hollow at", "columns-side": "Side", "columns-movement": "Movement", "columns-what": "What happened",
		"figures-caption": "Figure {n}. {text}",
		"figures-section": "The build-up cut through, from front to back; beside it to scale what is known of it, estimates at their upper limit.",
		"figures-edge":    "An edge cut through, from the outside to the board.",
		"figures-mark":    "{n}: {what}, {face}{size, if {, {size}}}{note, if {, {note}}} ({entry}).", "figures-mark-at": "{n}: {what}, {face}, {left} from the left and {top} from the top, seen on that face{size, if {, {size}}}{note, if {, {note}}} ({entry}).",
		"figures-picture": "Photograph: {role} ({entry}).", "figures-no-picture": "{picture} Its file is not at hand.", "figures-other-picture": "{picture} The file at hand is not the one on record.",
		"figures-plan": "Front and back in plan, with the run of grain and threads, as far as recorded.", "figures-plan-found": "Front and back in plan, with the run of grain and threads, as far as recorded, and what was found at a place.",
		"figures-time":     "Time line of the work. Numbers are those of the table; waiting times are compressed.",
		"figures-time-air": "Time line of the work. Numbers are those of the table; waiting times are compressed. Below it temperature and relative humidity where they were recorded.",
		"figures-bow":      "Measured bow over time, as a share of the span; positive is hollow at the front.",
		"figures-top":      "TOP", "figures-front-side": "Front", "figures-back-side": "Back, seen from behind",
		"figures-grain-run": "grain", "figures-thread-run": "warp",
		"figures-temperature": "°C", "figures-humidity": "% RH",
		"figures-minutes": "{n} min", "figures-hours": "{n} h", "figures-days": "{n} d", "figures-months": "{n} months",
		"figures-off-the-line": "{n, plural, one {One step without an exact day is not on the line.} other {{n} steps without an exact day are not on the line.}}",
		"figures-time-desc":    "Steps in order: {steps}.", "figures-plan-desc": "{size}. {detail}", "figures-bow-desc": "Measurements in order: {steps}.", "figures-reading": "{step}, {date}{air}",
		"layers-parts": "{n, plural, one {1 part {product}} other {{n} parts {product}}}", "layers-lot-of": "{product}, lot\u00A0{lot}", "layers-thinned": "thinned {share}", "layers-thinned-with": "thinned {share} with {thinner}", "layers-tool": "by {tool}",
		"layers-wet-film": "wet film {film}, by gauge", "layers-measured": "{t}, measured", "layers-estimated": "at most {t}, estimate", "layers-on-face": "{faces} {t}", "layers-extra": "extra on {faces}",
		"layers-lean": "lean", "layers-fat": "fat", "layers-leaner": "leaner than the layer below", "layers-fatter": "fatter than the layer below", "layers-same": "as fat as the layer below", "layers-thin": "thin", "layers-thick": "thick", "layers-index": "{name} ({index})",
		"layers-each": "each coat {what}", "layers-none-of": "Not recorded of any of them: {what}.", "layers-estimate-note": "A thickness called an estimate is reckoned from the amount used, the area and the solids of the product: the most that it can be, since the tool and the board keep some of it.",
		"steps-cut": "board cut", "steps-cloth": "{cloth} laid", "steps-trimmed": "cloth trimmed", "steps-eased": "edges eased: {answer}", "steps-sanded": "sanded, {grit}",
		"steps-sanded-through": "through to fibre or board: {answer}", "steps-sanded-wet": "wet: {answer}", "steps-dusted": "dust removed: {answer}", "steps-braced": "braced", "steps-warm-air": "warm air for {time}",
		"steps-climate": "air read{place}", "steps-on": "{step}, {faces}", "steps-numbered": "{n}. {step}", "steps-no-air": "not recorded", "steps-air-of-none": "The air was recorded of no step.",
		"products-stated": "not stated", "products-also": "{product}: {stated}.", "products-no-basis": "Where these values come from is not recorded.", "products-no-lot": "lot not recorded",
		"products-test-first":    "By class of binder, not by product: age, pigment and additives change all of it. Test first; a conservator decides.",
		"products-effect-source": "{binder}: {source}.", "products-no-binder": "No binder of a product used on this panel is recorded.", "products-unlisted": "No entry in this table for: {binders}.", "products-memory": "from memory of {source}",

		"hazards-local":        "Usual cautions; local rules come first.",
		"hazards-recorded":     "{product}: {hazard}",
		"hazards-toxic":        "{product}: recorded as harmful when it is sanded or cleaned, even dry.",
		"hazards-pigment":      "{pigment} ({index}): contains {metal}. Do not sand dry, do not spray; wash, and keep it from children.",
		"hazards-pigment-may":  "{pigment} ({index}): may contain {metal}; only the Colour Index name on the tube or an analysis can tell. Treat it as if it did.",
		"hazards-board":        "Dust of wood and boards: wood dust is a known human carcinogen. Extraction first, then a mask; no dry sweeping.",
		"hazards-formaldehyde": "Board products with formaldehyde binders give some of it off, more when cut or sanded. Class on the sheet: {class}.",
		"hazards-oil":          "Rags with drying oil can catch fire by themselves: spread flat outdoors or keep under water in a lidded metal can.",
		"hazards-solvent":      "Solvents for varnish: ventilate, gloves, no flame.",
		"hazards-sources": "Wood dust: IARC 2012, US National Toxicology Program 2002. Lead: OSHA, permissible limit 50 µg/m³ over 8 hours. Formaldehyde: NIOSH, 0.016 ppm. Self-heating rags: insurers’ notes. " +
			"Pigments by Colour Index generic name, from conservation literature and, for the greater part, from memory. Other cautions: common practice.",

		"findings-lead": "The record held against rules of thumb, as they stood for it on {date}. A rule is no judgement of the object: the panel itself decides.",
		"findings-none": "No rule falls short.", "findings-short": "Falls short", "findings-open": "Cannot be judged, for want of a record", "findings-holds": "Holds",
		"findings-severe": "{title} ({severity})", "findings-remedy": "What can still be done: {remedy}", "findings-not-apply": "Do not apply to this panel: {n}.", "findings-count": "{n, plural, one {one rule} other {{n} rules}}",

		"bow-movement": "Movement in its plane between 40 and 60 % relative humidity, estimate", "bow-no-movement": "No figure for the in-plane movement of this board is at hand.",
		"bow-low-confidence": "low confidence", "bow-measured": "Measured", "bow-not-measured": "No bow was measured.",
		"bow-solid-wood": "Solid wood moves by species and direction of grain.", "bow-air": "{low} to {high}",
		"no-head": "not at hand", "photograph-digest": "Photograph, {role} ({entry}), SHA-256 {digest}.",
		"none": "Nothing recorded.",

		"no-cloth-meant": "This panel is meant to carry no cloth.",
		"no-corrections": "No entry was amended or withdrawn.", "no-gaps": "None of the gaps that are looked for. Where a single field was not recorded, its place above says so.",
	},
		Effects: map[string]Message{"none": "hardly any effect", "little": "little effect", "swells": "swells", "softens": "softens", "dissolves": "dissolves", "attacked": "attacked",
			"swells-young": "swells while young", "melts": "melts", "blanches": "blanches", "dissolves-warm": "softens; warm water dissolves", "aromatic": "aromatic kinds swell or dissolve", "aromatic-swells": "aromatic kinds swell",
			"leached": "swells, is leached", "with-damp": "softens if damp", "alkali-soluble": "swells, dissolves"},
		Sides: [2]Message{"Height", "Width"},
		Verify: []Message{
			"The journal of the studio is a hash tree (RFC 6962). When this dossier was made its last entry was E{n} and its root hash was {root}.",
			"With the studio’s book at hand: “backleaf verify” counts the tree again and says whether the root up to E{n} is still the same; “backleaf dossier {number}” prints this dossier again from it.",
			"With the certificate at hand: the record attached to it is signed. “openssl pkeyutl -verify -rawin -pubin -inkey studio.pem -in record.json -sigfile record.sig” checks the signature without backleaf; “sha256sum record.json” gives the digest printed on it.",
			"A signature says that the holder of the key wrote the record. Who holds the key must be learned from the studio; a photograph of the front compared with the panel says that this is the panel.",
		},
	}
}
