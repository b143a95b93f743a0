package label

import "backleaf/record/tell"

// A Field is one part of a label.
type Field string

// The fields, in the order in which they stand on a label.
const (
	Number      Field = "number"
	Top         Field = "top"
	Notice      Field = "notice" // that this is a demonstration
	Title       Field = "title"
	Date        Field = "date"
	Maker       Field = "maker"
	Place       Field = "place"
	Support     Field = "medium and support" // the support alone on a blank panel
	Dimensions  Field = "dimensions"
	QR          Field = "qr"
	BuildUp     Field = "build-up"
	BuildUpList Field = "build-up line by line" // left out: its layers stand one after the other
	BuildUpFull Field = "build-up in full"      // left out: the build-up is told in short
	Sealed      Field = "sealed faces"
	Varnish     Field = "varnish"
	Changed     Field = "changes"
	Care        Field = "care"
	Signature   Field = "signature"
	Remarks     Field = "remarks"
	Where       Field = "where the record is"
	Fingerprint Field = "fingerprint"
)

// reading is the order in which fields are read, and drawn: programs that take
// text out of a page keep it.
var reading = []Field{Number, Top, Notice, Title, Date, Maker, Place, Support, Dimensions, QR, BuildUp, Sealed, Varnish, Changed, Care,
	Signature, Remarks, Where, Fingerprint, line}

// line is the rule below the number.
const line Field = "line"

// leavingOut is what each design leaves out when room is short, first things
// first. What is not in the list always stands on the label: the number, the
// maker, the arrow to the top, where the record is, and the notice on a
// demonstration. Even the symbol can go, last of all, because its link stands
// in letters in the line that says where the record is.
var leavingOut = map[Size][]Field{
	Small: {Remarks, Signature, BuildUpFull, Care, BuildUp, Fingerprint, Place, Sealed, Changed, Varnish,
		Date, Dimensions, Support, Title, QR},
	Medium: {Remarks, Care, Signature, BuildUpFull, BuildUp, Fingerprint, Place, Sealed, Changed, Varnish,
		Date, Dimensions, Support, Title, QR},
	Large: {BuildUpList, Remarks, Care, BuildUpFull, Signature, Fingerprint, BuildUp, Sealed, Place, Changed, Varnish,
		Date, Dimensions, Support, Title, QR},
}

// LeavingOut returns what a size leaves out when room is short, first things
// first. After that, what still finds room is put back, last things first.
func (s Size) LeavingOut() []Field { return append([]Field(nil), leavingOut[s]...) }

// Words are the printed words of labels.
type Words = tell.LabelWords
