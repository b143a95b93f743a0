package tell

// LabelWords are printed on labels and on what is printed beside them.
type LabelWords struct {
	Top     Message // beside the arrow
	BuildUp Message // headings
	Faces   Message
	Varnish Message
	Changed Message
	Care    Message
	Lead    Message // {head} {text}: where the heading has no column of its own
	Between Message // between two layers
	Short   Message // {n} layers, where the build-up has no room

	Made                          Message // {dates}: of a blank panel
	Replaces                      Message // {date}: of the label before
	Treated                       Message // {date} {what}
	TreatedLong                   Message // {date}
	Also                          Message // between changes
	Signature, Remarks, PaintedBy Message // before a line to write on
	Where                         Message // {link}
	WhereKept                     Message // {contact}
	WhereMaker                    Message
	Fingerprint                   Message // {groups}
	Demo                          Message

	FileTitle   Message // {number}
	FileTitles  Message // {first} {last}
	FileSubject Message

	RulerTitle, RulerText  Message
	Millimetres, Inches    Message
	NoteTitle, NoteSources Message
	Notes                  []Message
	Sources                []Message
}

var englishLabel = LabelWords{
	Top:     "Top",
	BuildUp: "Front to back", Faces: "Faces", Varnish: "Varnish", Changed: "Changed", Care: "Care",
	Lead: "{head}: {text}", Between: "\u00A0/ ",
	Short:    "{n, plural, one {one layer, told in the record} other {{n} layers, told in the record}}",
	Made:     "Made {dates}",
	Replaces: "replaces the label of {date}", Treated: "treated {date}: {what}", TreatedLong: "treated {date}, told in the record", Also: "; ",
	Signature: "Signature", Remarks: "Remarks", PaintedBy: "Painted by",
	Where:       "Record of this panel: {link}",
	WhereKept:   "The record of this panel is kept by its maker: {contact}",
	WhereMaker:  "The record of this panel is kept by its maker.",
	Fingerprint: "SHA-256 of the record: {groups} …",
	Demo:        "Demonstration: an invented studio",

	FileTitle: "Label of {number}", FileTitles: "Labels of {first} to {last}",
	FileSubject: "Labels for the backs of painting panels",

	RulerTitle: "Does the printer keep the scale?",
	RulerText: "Print this page as you will print the labels: at 100 %, “actual size”, never “fit to page”. Lay a ruler on both scales. " +
		"If 150 mm are not 150 mm, or 6 inches not 6 inches, labels will not meet their places and symbols may not be read.",
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
