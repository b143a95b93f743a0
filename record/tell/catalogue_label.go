package tell

// LabelWords are printed on labels and on what is printed beside them.
type LabelWords struct {
	Top      Message // beside the arrow
	BuildUp  Message // headings
	Faces    Message
	Varnish  Message
	Changed  Message
	Care     Message
	Hazard   Message // before what is dangerous, in a frame
	Lead     Message // {head} {text}: where the heading has no column of its own
	Between  Message // between two layers
	Short    Message // {n} layers, where the build-up has no room
	Prepared Message // {binders}: in the same place

	Sides                         Message // {size}: which figure is which
	Made                          Message // {dates}: of a blank panel
	Treated                       Message // {date} {what}
	TreatedLong                   Message // {date}
	Also                          Message // between changes
	Signature, Remarks, PaintedBy Message // before a line to write on
	Where                         Message // {link}
	WhereKept                     Message // {contact}
	WhereMaker                    Message
	Issue                         Message // {date} {entry}: which of two labels is the later one; {before}: of the one that it replaces
	AsOf                          Message // {entry}: the label that told the record so far
	FactsCaption, LinkCaption     Message // of two symbols on one label
	Part                          Message // {part} {parts}: of a label that another one carries on
	Fingerprint                   Message // {groups}
	Demo                          Message

	FileTitle   Message // {number}
	FileTitles  Message // {first} {last}
	FileSubject Message

	RulerTitle, RulerText  Message
	AlignTitle, AlignText  Message // of a bought sheet
	Place                  Message // {place} of it
	Millimetres, Inches    Message
	NoteTitle, NoteSources Message
	Notes                  []Message
	Sources                []Message
}

var englishLabel = LabelWords{
	Top:     "Top",
	BuildUp: "Front to back", Faces: "Faces", Varnish: "Varnish", Changed: "Changed", Care: "Care", Hazard: "Hazard:",
	Lead: "{head}: {text}", Between: "\u00A0/ ",
	Short: "{n, plural, one {One layer, its binder not recorded} other {{n} layers, their binders not recorded}}", Prepared: "Prepared with {binders}",
	Sides:   "{size}, H\u00A0×\u00A0W\u00A0×\u00A0D",
	Made:    "Made {dates}",
	Treated: "treated {date}: {what}", TreatedLong: "treated {date}, told in the record", Also: "; ",
	Signature: "Signature", Remarks: "Remarks", PaintedBy: "Painted by",
	Where:      "Record: {link}",
	WhereKept:  "The record of this panel is kept by its maker: {contact}",
	WhereMaker: "The record of this panel is kept by its maker.",
	Issue:      "Label of {date}, record as of entry {entry}{before, if {; replaces the label of {before}}}", AsOf: "entry\u00A0{entry}", FactsCaption: "These facts as text", LinkCaption: "The record", Part: "{part} of {parts}",
	Fingerprint: "SHA-256 of the record begins {groups}",
	Demo:        "Demonstration: an invented studio",

	FileTitle: "Label of {number}", FileTitles: "Labels of {first} to {last}",
	FileSubject: "Labels for the backs of painting panels",

	RulerTitle: "Does the printer keep the scale?",
	RulerText: "Print this page as you will print the labels: at 100 %, “actual size”, never “fit to page”. Lay a ruler on both scales. " +
		"If 150 mm are not 150 mm, or 6 inches not 6 inches, labels will not meet their places and symbols may not be read.",
	AlignTitle: "Do the labels meet their places?",
	AlignText: "Print this page on plain paper, at 100 %, “actual size”. Hold it behind a sheet of labels against a window: every outline must lie on the edge of a label. " +
		"The numbers count the places of a part-used sheet.",
	Place:       "{place}",
	Millimetres: "mm", Inches: "inches",
	NoteTitle: "To print and fix these labels",
	Notes: []Message{
		"Paper: permanent paper to ISO 9706.¹",
		"Print: carbon toner or pigment ink that meets ISO 11798; no dye ink, no thermal paper. Write by hand in pencil or carbon ink.²",
		"Fix: with wheat-starch or methyl-cellulose paste, which water takes off again, to the sealed back; never on bare board. " +
			"No self-adhesive labels, no tape, no staples.³",
		"Place: where it is found without handling the front, arrow to the top edge; not over an opening that lets the back breathe.³",
		"Copies: keep a second copy of the record in another place.⁴",
	},
	NoteSources: "Sources",
	Sources: []Message{
		"¹ ISO 9706, Paper for documents: requirements for permanence.",
		"² ISO 11798, Permanence and durability of writing, printing and copying on paper; for entries by hand and against self-adhesive labels, " +
			"advice of museums on the marking of objects.",
		"³ Common practice; museums’ advice on labels: attached securely but not for ever, legible, to be removed without harm.",
		"⁴ Archives’ advice on keeping records: two copies apart, not on electronic media alone.",
	},
}
