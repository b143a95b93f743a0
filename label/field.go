package label

import "backleaf/record/tell"

// A Field is one part of a label.
type Field string

// The fields, in the order in which they are read.
const (
	Number      Field = "number"
	Part        Field = "part" // "1 of 2", where hazards need a second label
	Top         Field = "top"
	Notice      Field = "notice" // that this is a demonstration
	Title       Field = "title"
	Date        Field = "date"
	Maker       Field = "maker"
	Place       Field = "place"
	Support     Field = "medium and support" // the support alone on a blank panel
	Dimensions  Field = "dimensions"
	OtherUnits  Field = "dimensions in other units"
	Hazards     Field = "hazards"
	QR          Field = "qr"
	BuildUp     Field = "build-up"
	BuildUpFull Field = "build-up in full" // left out: the build-up is told in short
	Sealed      Field = "sealed faces"
	Varnish     Field = "varnish"
	Changed     Field = "changes"
	Care        Field = "care"
	Facts       Field = "facts as a symbol"
	Signature   Field = "signature"
	Remarks     Field = "remarks"
	Where       Field = "where the record is"
	Issue       Field = "which record"
	Fingerprint Field = "fingerprint"
	StudioMark  Field = "mark of the studio"
)

// rule is the line below the number.
const rule Field = "rule"

// reading is the order in which fields are read, and drawn: programs that take
// text out of a page keep it.
var reading = []Field{Number, Part, Top, Notice, Title, Date, Maker, Place, Support, Dimensions, Hazards, QR, BuildUp, Sealed, Varnish, Changed,
	Care, Facts, StudioMark, Signature, Remarks, Where, Issue, Fingerprint, rule}

// staying is the order in which fields find room: the first stay longest, the
// last give way first. What is not in it always stands on the label.
var staying = []Field{Title, Date, Support, Dimensions, QR, BuildUp, Sealed, Varnish, Changed, Issue, Place, OtherUnits, Facts, BuildUpFull, Care,
	Fingerprint, StudioMark, Signature, Remarks}

// Words are the printed words of labels.
type Words = tell.LabelWords
