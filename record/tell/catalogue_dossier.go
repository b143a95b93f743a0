package tell

// DossierWords are printed in dossiers.
type DossierWords struct {
	Kind      Message // of paper
	Running   Message // {number} {title}: at the head of each page
	Page      Message // {n} {all}
	Continued Message // {title}: of a table that goes on
	Lead      Message // {number} {n} {date}: what the paper is and how far the record goes
	Demo      Message
	Entries   Message // what E12 means

	Titles   DossierTitles
	Glance   DossierGlance
	Batch    DossierBatch
	Names    DossierNames
	Columns  DossierColumns
	Figures  DossierFigures
	Layers   DossierLayers
	Steps    DossierSteps
	Products DossierProducts
	Hazards  DossierHazards
	Findings DossierFindings
	Bow      DossierBow
	Verify   []Message // {number} {n} {root} {key}
	NoHead   Message

	PhotographDigest Message // {role} {entry} {digest}

	None Message // nothing recorded under a title

	NoCorrections, NoGaps, NoClothMeant Message
}

// DossierTitles head the sections, in the order in which a conservator asks.
type DossierTitles struct {
	Identification, Support, Cloth, Sealing, Ground, Paint, Coating, Drawings, Steps, Products, Sensitivity, Hazards, Findings, Bow, History, Batch, Corrections,
	Gaps, Verify Message
}

// DossierGlance is what is asked first.
type DossierGlance struct {
	Title, Is, Hazards, NoHazard, Varnish, Condition, NoCondition, Gaps, NoGaps, MoreGaps, Changed, NoChange, Corrected, Treated Message
}

// DossierBatch is said of the panels made together.
type DossierBatch struct {
	Alone, Of, Discarded, Treated, Seen, Well Message
}

// DossierNames name what is recorded once. Those of the identification are the
// categories of Object ID.
type DossierNames struct {
	Photographs, Type, Materials, Measurements, Inscriptions, Features, Title, Subject, Date, Maker, Description Message
	Inventory, Written, Origin, CrossReferences, Documented                                                      Message

	Painting, BlankPanel, NoPhotograph, Photograph, Signed, Batch, OwnReference Message
	LabelPrinted, CertificateIssued, CertificateGone                            Message

	Board, Product, Producer, Lot, Thickness, Species, Plies, Grain, Formaldehyde, Density, RoughSide, Settled, Degreased, Keyed, Cut, Bracing, Sealed, Today Message

	Fibre, Weave, Threads, Mass, Came, Run, Oversize, WetThrough, Pressed, Weighted, Trimmed, OnFaces, Note Message

	Underdrawing, Technique, Pigments Message
}

// DossierColumns head the columns of tables.
type DossierColumns struct {
	No, Layer, Faces, Product, Amount, Thickness, Date, Entry, Step, Air, Detail, Basis, Lots, Use, Binder, Water, Alcohol, Hydrocarbon, Heat, Alkali, Source,
	Rule, Finding, Missing, Bow, Span, Share, Hollow, Side, Movement, What Message
}

// DossierFigures are the captions, and the words in the drawings.
type DossierFigures struct {
	Caption                                            Message // {n} {text}
	Section, Edge, Plan, PlanFound, Time, TimeAir, Bow Message
	Mark, MarkAt                                       Message // {n} {what} {face} {note}; {left} {top} behind it
	Picture, NoPicture, OtherPicture                   Message // {role} {entry}; {picture}
	Top, FrontSide, BackSide                           Message
	GrainRun, ThreadRun                                Message
	Temperature, Humidity                              Message
	Minutes, Hours, Days, Months                       Message // {n}
	OffTheLine                                         Message // steps without a day
	TimeDesc, PlanDesc, BowDesc, Reading               Message // for readers who cannot see the drawing
}

// DossierLayers are said of layers.
type DossierLayers struct {
	Parts                                                                        Message
	LotOf, Thinned, ThinnedWith, Tool, WetFilm                                   Message
	Measured, Estimated, OnFace, Extra, Leaner, Fatter, Same, Thin, Thick, Index Message
	Lean, Fat                                                                    Message // of the first paint, which has none below
	EstimateNote                                                                 Message
	Each                                                                         Message // {what}: of several coats alike
	NoneOf                                                                       Message // {what}: columns in which nothing would stand
}

// DossierSteps name what was done.
type DossierSteps struct {
	Cut, Cloth, Trimmed, Eased, Sanded, SandedThrough, SandedWet, Dusted, Braced, WarmAir, Climate, On, Numbered Message
	NoAir, AirOfNone                                                                                             Message // AirOfNone: of no step
}

// DossierProducts are said of products and binders.
type DossierProducts struct {
	Stated, NoLot, Also, NoBasis                        Message
	Effects                                             map[string]Message
	TestFirst, EffectSource, NoBinder, Unlisted, Memory Message
}

// DossierHazards warn whoever works on the panel.
type DossierHazards struct {
	Local, Recorded, Toxic, Pigment, PigmentMay, Board, Formaldehyde, Oil, Solvent, Sources Message
}

// DossierFindings introduce what the rules say.
type DossierFindings struct {
	Lead, None               Message
	Short, Open, Holds       Message
	Severe, Remedy, NotApply Message
	Count                    Message
}

// DossierBow is said of bow and movement.
type DossierBow struct {
	Movement, NoMovement, LowConfidence, Measured, NotMeasured, SolidWood Message
	Sides                                                                 [2]Message
	Air                                                                   Message
}

var englishDossier = DossierWords{
	Kind:    "Conservator’s dossier",
	Running: "{number} · {title}",
	Page:    "{n} of {all}", Continued: "{title} (continued)",
	Lead: "All that the studio’s journal holds on panel {number}, up to entry E{n} of {date}, in the order in which a conservator asks. " +
		"Gaps are named, estimates marked. It states what the maker wrote down and proves nothing beyond that.",
	Demo:    "A demonstration: studio, panel and products are invented.",
	Entries: "E14 means entry 14 of that journal, the source of a statement.",
	Glance: DossierGlance{Title: "At a glance", Is: "What it is", Hazards: "Hazards", NoHazard: "none that the record names; where no pigments are recorded, nothing is known", Varnish: "Varnish",
		Condition: "Condition", NoCondition: "no report yet", Gaps: "Not recorded", MoreGaps: "and each field marked “not recorded” below", NoGaps: "nothing that is asked for", Changed: "Changed", NoChange: "no entry corrected, no treatment",
		Corrected: "{n, plural, one {one entry corrected} other {{n} entries corrected}}", Treated: "{n, plural, one {treated once} other {treated {n} times}}"},
	Batch: DossierBatch{Alone: "It was made alone.", Of: "One of {n} panels of the batch {batch}.", Discarded: "{number} discarded, {because}", Treated: "{number} treated, {text}", Seen: "{number}: {text}",
		Well: "Nothing amiss was recorded of the others."},
	Titles: DossierTitles{Identification: "Identification", Support: "Support", Cloth: "Cloth", Sealing: "Size, sealer and adhesive", Ground: "Ground", Paint: "Paint",
		Coating: "Surface coating", Drawings: "Drawings and details", Steps: "Work, dates and climate", Products: "Products and lots", Sensitivity: "What the binders are sensitive to",
		Hazards: "Health hazards for whoever works on it", Findings: "Rules of thumb", Bow: "Bow and movement", History: "Treatments, condition and whereabouts", Batch: "The batch", Corrections: "Corrections",
		Gaps: "Not recorded", Verify: "How to verify this dossier"},
	Names: DossierNames{Photographs: "Photographs", Type: "Type of object", Materials: "Materials and techniques", Measurements: "Measurements", Inscriptions: "Inscriptions and markings",
		Features: "Distinguishing features", Title: "Title", Subject: "Subject", Date: "Date or period", Maker: "Maker", Description: "Short description",
		Inventory: "Inventory number", Written: "Related written material", Origin: "Place of origin", CrossReferences: "Cross references", Documented: "Date documented",
		Painting: "painting", BlankPanel: "painting panel, not yet painted", NoPhotograph: "none recorded",
		Photograph: "{role}{more, if {; {more}}} ({entry})",
		Signed:     "signed {where}", Batch: "batch “{batch}”", OwnReference: "{number}; the studio’s own reference {own}",
		LabelPrinted: "label printed {date} ({entry})", CertificateIssued: "certificate issued {date} ({entry})", CertificateGone: "certificate {of} withdrawn {date} ({entry})",
		Board: "Board", Product: "Product", Producer: "Producer", Lot: "Lot", Thickness: "Thickness", Species: "Wood", Plies: "Plies", Grain: "Face grain", Formaldehyde: "Formaldehyde class",
		Density: "Density", RoughSide: "Rough side", Settled: "Settled in the room", Degreased: "Degreased", Keyed: "Surface keyed", Cut: "Cut", Bracing: "Bracing", Sealed: "Sealing", Today: "Today",
		Fibre: "Fibre", Weave: "Weave", Threads: "Threads, warp × weft", Mass: "Mass", Came: "Came sized or primed", Run: "Warp runs", Oversize: "Cut oversize by", WetThrough: "Wetted through",
		Pressed: "Edges pressed", Weighted: "Under weights", Trimmed: "Trimmed", OnFaces: "Laid on", Note: "Note",
		Underdrawing: "Underdrawing", Technique: "Technique", Pigments: "Pigments"},
	Columns: DossierColumns{No: "No.", Layer: "Layer", Faces: "Face", Product: "Product and lot", Amount: "Wet amount", Thickness: "Dry thickness", Date: "Date", Entry: "Entry", Step: "Step",
		Air: "Air", Detail: "Detail", Basis: "Values from", Lots: "Lots", Use: "Product", Binder: "Binder", Water: "Water", Alcohol: "Alcohols", Hydrocarbon: "Hydrocarbons", Heat: "Heat", Alkali: "Alkali",
		Source: "Source", Rule: "Rule", Finding: "Found", Missing: "Not recorded", Bow: "Bow", Span: "Over", Share: "Share", Hollow: "Hollow at", Side: "Side", Movement: "Movement", What: "What happened"},
	Figures: DossierFigures{Caption: "Figure {n}. {text}",
		Section: "The build-up cut through, from front to back; beside it to scale what is known of it, estimates at their upper limit.",
		Edge:    "An edge cut through, from the outside to the board.",
		Mark:    "{n}: {what}, {face}{size, if {, {size}}}{note, if {, {note}}} ({entry}).", MarkAt: "{n}: {what}, {face}, {left} from the left and {top} from the top, seen on that face{size, if {, {size}}}{note, if {, {note}}} ({entry}).",
		Picture: "Photograph: {role} ({entry}).", NoPicture: "{picture} Its file is not at hand.", OtherPicture: "{picture} The file at hand is not the one on record.",
		Plan: "Front and back in plan, with the run of grain and threads, as far as recorded.", PlanFound: "Front and back in plan, with the run of grain and threads, as far as recorded, and what was found at a place.",
		Time:    "Time line of the work. Numbers are those of the table; waiting times are compressed.",
		TimeAir: "Time line of the work. Numbers are those of the table; waiting times are compressed. Below it temperature and relative humidity where they were recorded.",
		Bow:     "Measured bow over time, as a share of the span; positive is hollow at the front.",
		Top:     "TOP", FrontSide: "Front", BackSide: "Back, seen from behind",
		GrainRun: "grain", ThreadRun: "warp",
		Temperature: "°C", Humidity: "% RH",
		Minutes: "{n} min", Hours: "{n} h", Days: "{n} d", Months: "{n} months",
		OffTheLine: "{n, plural, one {One step without an exact day is not on the line.} other {{n} steps without an exact day are not on the line.}}",
		TimeDesc:   "Steps in order: {steps}.", PlanDesc: "{size}. {detail}", BowDesc: "Measurements in order: {steps}.", Reading: "{step}, {date}{air}"},
	Layers: DossierLayers{Parts: "{n, plural, one {1 part {product}} other {{n} parts {product}}}", LotOf: "{product}, lot\u00A0{lot}", Thinned: "thinned {share}", ThinnedWith: "thinned {share} with {thinner}", Tool: "by {tool}",
		WetFilm: "wet film {film}, by gauge", Measured: "{t}, measured", Estimated: "at most {t}, estimate", OnFace: "{faces} {t}", Extra: "extra on {faces}",
		Lean: "lean", Fat: "fat", Leaner: "leaner than the layer below", Fatter: "fatter than the layer below", Same: "as fat as the layer below", Thin: "thin", Thick: "thick", Index: "{name} ({index})",
		Each: "each coat {what}", NoneOf: "Not recorded of any of them: {what}.", EstimateNote: "A thickness called an estimate is reckoned from the amount used, the area and the solids of the product: the most that it can be, since the tool and the board keep some of it."},
	Steps: DossierSteps{Cut: "board cut", Cloth: "{cloth} laid", Trimmed: "cloth trimmed", Eased: "edges eased: {answer}", Sanded: "sanded, {grit}",
		SandedThrough: "through to fibre or board: {answer}", SandedWet: "wet: {answer}", Dusted: "dust removed: {answer}", Braced: "braced", WarmAir: "warm air for {time}",
		Climate: "air read{place}", On: "{step}, {faces}", Numbered: "{n}. {step}", NoAir: "not recorded", AirOfNone: "The air was recorded of no step."},
	Products: DossierProducts{Stated: "not stated", Also: "{product}: {stated}.", NoBasis: "Where these values come from is not recorded.", NoLot: "lot not recorded",
		Effects: map[string]Message{"none": "hardly any effect", "little": "little effect", "swells": "swells", "softens": "softens", "dissolves": "dissolves", "attacked": "attacked",
			"swells-young": "swells while young", "melts": "melts", "blanches": "blanches", "dissolves-warm": "softens; warm water dissolves", "aromatic": "aromatic kinds swell or dissolve", "aromatic-swells": "aromatic kinds swell",
			"leached": "swells, is leached", "with-damp": "softens if damp", "alkali-soluble": "swells, dissolves"},
		TestFirst:    "By class of binder, not by product: age, pigment and additives change all of it. Test first; a conservator decides.",
		EffectSource: "{binder}: {source}.", NoBinder: "No binder of a product used on this panel is recorded.", Unlisted: "No entry in this table for: {binders}.", Memory: "from memory of {source}"},
	Hazards: DossierHazards{
		Local:        "Usual cautions; local rules come first.",
		Recorded:     "{product}: {hazard}",
		Toxic:        "{product}: recorded as harmful when it is sanded or cleaned, even dry.",
		Pigment:      "{pigment} ({index}): contains {metal}. Do not sand dry, do not spray; wash, and keep it from children.",
		PigmentMay:   "{pigment} ({index}): may contain {metal}; only the Colour Index name on the tube or an analysis can tell. Treat it as if it did.",
		Board:        "Dust of wood and boards: wood dust is a known human carcinogen. Extraction first, then a mask; no dry sweeping.",
		Formaldehyde: "Board products with formaldehyde binders give some of it off, more when cut or sanded. Class on the sheet: {class}.",
		Oil:          "Rags with drying oil can catch fire by themselves: spread flat outdoors or keep under water in a lidded metal can.",
		Solvent:      "Solvents for varnish: ventilate, gloves, no flame.",
		Sources: "Wood dust: IARC 2012, US National Toxicology Program 2002. Lead: OSHA, permissible limit 50 µg/m³ over 8 hours. Formaldehyde: NIOSH, 0.016 ppm. Self-heating rags: insurers’ notes. " +
			"Pigments by Colour Index generic name, from conservation literature and, for the greater part, from memory. Other cautions: common practice.",
	},
	Findings: DossierFindings{
		Lead: "The record held against rules of thumb, as they stood for it on {date}. A rule is no judgement of the object: the panel itself decides.",
		None: "No rule falls short.", Short: "Falls short", Open: "Cannot be judged, for want of a record", Holds: "Holds",
		Severe: "{title} ({severity})", Remedy: "What can still be done: {remedy}", NotApply: "Do not apply to this panel: {n}.", Count: "{n, plural, one {one rule} other {{n} rules}}",
	},
	Bow: DossierBow{
		Movement: "Movement in its plane between 40 and 60 % relative humidity, estimate", NoMovement: "No figure for the in-plane movement of this board is at hand.",
		LowConfidence: "low confidence", Measured: "Measured", NotMeasured: "No bow was measured.",
		SolidWood: "Solid wood moves by species and direction of grain.",
		Sides:     [2]Message{"Height", "Width"}, Air: "{low} to {high}",
	},
	Verify: []Message{
		"The journal of the studio is a hash tree (RFC 6962). When this dossier was made its last entry was E{n} and its root hash was {root}.",
		"With the studio’s book at hand: “backleaf verify” counts the tree again and says whether the root up to E{n} is still the same; “backleaf dossier {number}” prints this dossier again from it.",
		"With the certificate at hand: the record attached to it is signed. “openssl pkeyutl -verify -rawin -pubin -inkey studio.pem -in record.json -sigfile record.sig” checks the signature without backleaf; “sha256sum record.json” gives the digest printed on it.",
		"A signature says that the holder of the key wrote the record. Who holds the key must be learned from the studio; a photograph of the front compared with the panel says that this is the panel.",
	},
	NoHead: "not at hand", PhotographDigest: "Photograph, {role} ({entry}), SHA-256 {digest}.",
	None: "Nothing recorded.",

	NoClothMeant:  "This panel is meant to carry no cloth.",
	NoCorrections: "No entry was amended or withdrawn.", NoGaps: "None of the gaps that are looked for. Where a single field was not recorded, its place above says so.",
}
