package record

// Studio is who makes the panels and how its numbers, links and papers look.
// The first studio entry opens the book; a later one replaces all of it.
type Studio struct {
	Maker    string     `json:"maker"`                           // as it is to be printed
	Mark     string     `json:"mark" is:"mark"`                  // one to four letters, first part of every number
	Place    string     `json:"place,omitzero"`                  // town and country
	Contact  string     `json:"contact,omitzero"`                // printed where there is no link: durable contact
	LinkBase string     `json:"link_base,omitzero" is:"link"`    // upper-case URL to which a bare number is appended
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

func (Studio) Kind() Kind { return "studio" }
