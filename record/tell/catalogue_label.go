package tell

// LabelWords are printed on labels and on what is printed beside them.
type LabelWords struct {
	Texts   `json:"texts"`
	Notes   []Message
	Sources []Message
}

func englishLabel() LabelWords {
	return LabelWords{Texts: Texts{
		"top":      "Top",
		"build-up": "Front to back", "faces": "Faces", "varnish": "Varnish", "changed": "Changed", "care": "Care", "hazard": "Hazard:",
		"lead": "{head}: {text}", "between": "\u00A0· ",
		"short": "{n, plural, one {One layer, its binder not recorded} other {{n} layers, their binders not recorded}}", "prepared": "Prepared with {binders}",
		"sides":   "{size}, H\u00A0×\u00A0W\u00A0×\u00A0D",
		"made":    "Made {dates}",
		"treated": "treated {date}: {what}", "treated-long": "treated {date}, told in the record", "also": "; ",
		"signature": "Signature", "remarks": "Remarks", "painted-by": "Painted by",
		"where":       "Record: {link}",
		"where-kept":  "The record of this panel is kept by its maker: {contact}",
		"where-maker": "The record of this panel is kept by its maker.",
		"issue":       "Label of {date}, record as of entry {entry}{before, if {; replaces the label of {before}}}", "as-of": "entry\u00A0{entry}", "facts-caption": "These facts as text", "link-caption": "The record", "part": "{part} of {parts}",
		"fingerprint": "SHA-256 of the record begins {groups}",
		"demo":        "Demonstration: an invented studio",

		"file-title": "Label of {number}", "file-titles": "Labels of {first} to {last}",
		"file-subject": "Labels for the backs of painting panels",

		"ruler-title": "Does the printer keep the scale?",
		"ruler-text": "Print this page as you will print the labels: at 100 %, “actual size”, never “fit to page”. Lay a ruler on both scales. " +
			"If 150 mm are not 150 mm, or 6 inches not 6 inches, labels will not meet their places and symbols may not be read.",
		"align-title": "Do the labels meet their places?",
		"align-text": "Print this page on plain paper, at 100 %, “actual size”. Hold it behind a sheet of labels against a window: every outline must lie on the edge of a label. " +
			"The numbers count the places of a part-used sheet.",
		"place":       "{place}",
		"millimetres": "mm", "inches": "inches",
		"note-title":   "To print and fix these labels",
		"note-sources": "Sources",
	},
		Notes: []Message{
			"Paper: permanent paper to ISO 9706.¹",
			"Print: carbon toner or pigment ink that meets ISO 11798; no dye ink, no thermal paper. Write by hand in pencil or carbon ink.²",
			"Fix: with wheat-starch or methyl-cellulose paste, which water takes off again, to the sealed back; never on bare board. " +
				"No self-adhesive labels, no tape, no staples.³",
			"Place: where it is found without handling the front, arrow to the top edge; not over an opening that lets the back breathe.³",
			"Copies: keep a second copy of the record in another place.⁴",
		},
		Sources: []Message{
			"¹ ISO 9706, Paper for documents: requirements for permanence.",
			"² ISO 11798, Permanence and durability of writing, printing and copying on paper; for entries by hand and against self-adhesive labels, " +
				"advice of museums on the marking of objects.",
			"³ Common practice; museums’ advice on labels: attached securely but not for ever, legible, to be removed without harm.",
			"⁴ Archives’ advice on keeping records: two copies apart, not on electronic media alone.",
		},
	}
}
