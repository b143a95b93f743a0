package record

// Studio is who makes the panels and how its numbers, links and papers look.
// The first studio entry opens the book; a later one replaces all of it.
type Studio struct {
	Maker    string     `json:"maker"`                           // as it is to be printed
	Voice    Voice      `json:"voice,omitzero"`                  // absent: "I"
	Journal  string     `json:"journal,omitzero" is:"journal"`   // name of this journal: said once, in its first entry
	Picture  Picture    `json:"mark_picture,omitzero"`           // the studio's own mark, for its papers
	Mark     string     `json:"mark" is:"mark"`                  // one to four letters, first part of every number
	Place    string     `json:"place,omitzero"`                  // town and country
	Contact  string     `json:"contact,omitzero"`                // printed where there is no link: durable contact
	LinkBase string     `json:"link_base,omitzero" is:"link"`    // web address to which a bare number is appended, as the studio gave it
	NAAN     string     `json:"naan,omitzero" is:"naan"`         // five-figure ARK prefix, if the studio has one
	Zone     string     `json:"time_zone,omitzero" is:"zone"`    // IANA name, e.g. Europe/Riga
	Units    LengthUnit `json:"units,omitzero"`                  // unit offered first; what was measured is kept
	Paper    string     `json:"paper,omitzero" is:"paper"`       // a4 or letter
	Sheet    LabelSheet `json:"label_sheet,omitzero"`            // bought label sheets, if any
	Currency string     `json:"currency,omitzero" is:"currency"` // ISO 4217
	Demo     bool       `json:"demonstration,omitzero"`          // every paper says that it is a demonstration
}

// LabelSheet is the layout of a sheet of labels: page and label sizes as
// height x width, margins to the first label, pitch from one label to the next.
type LabelSheet struct {
	Page   Size   `json:"page,omitzero"`
	Label  Size   `json:"label,omitzero"`
	Rows   int64  `json:"rows,omitzero"`
	Cols   int64  `json:"columns,omitzero"`
	Top    Length `json:"top,omitzero"`
	Left   Length `json:"left,omitzero"`
	PitchV Length `json:"pitch_down,omitzero"`
	PitchH Length `json:"pitch_across,omitzero"`
}

// Picture names a kept picture by its digest. The file lies beside the book.
type Picture struct {
	SHA256 string `json:"sha256" is:"sha256"`
	Type   string `json:"media_type" is:"media"`
	Width  int64  `json:"width_px"`
	Height int64  `json:"height_px"`
}

// Maker is somebody who makes panels or paints on them: one of several in a
// studio, a workshop, or a painter elsewhere. A later entry of the same key
// describes them anew, from its date on.
type Maker struct {
	Key   Key    `json:"key"`
	Name  string `json:"name"` // as it is to be printed
	Voice Voice  `json:"voice,omitzero"`
	Place string `json:"place,omitzero"`
	Note  string `json:"note,omitzero" is:"text"`
}

// Hand is somebody who did what an entry tells.
type Hand struct {
	Maker Key     `json:"maker"`
	As    []int64 `json:"maker_as,omitzero"` // see Part.As
}

func (Maker) Kind() Kind  { return "maker" }
func (Studio) Kind() Kind { return "studio" }
