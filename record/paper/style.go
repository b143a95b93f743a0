package paper

// A Style sets a run of text.
type Style struct {
	Face    Face
	SizePt  float64
	LeadPt  float64 // from baseline to baseline
	Caps    bool    // set in capitals, whatever was written
	TrackEm float64 // space added after each letter, in em
}

// The sizes of type. A page uses these and no others; what does not fit is
// scaled as a whole by [Fit]. Certificate and dossier are set in the serif
// styles, labels and drawings in the sans ones.
var (
	Title   = Style{Face: Serif, SizePt: 22, LeadPt: 26}
	Heading = Style{Face: Serif, SizePt: 8.5, LeadPt: 12, Caps: true, TrackEm: 0.09}
	Body    = Style{Face: Serif, SizePt: 10, LeadPt: 13}
	Strong  = Style{Face: SerifBold, SizePt: 10, LeadPt: 13}
	Aside   = Style{Face: SerifItalic, SizePt: 10, LeadPt: 13}
	Small   = Style{Face: Serif, SizePt: 8, LeadPt: 10}
	Digest  = Style{Face: Mono, SizePt: 7, LeadPt: 9}

	LabelNumber = Style{Face: SansBold, SizePt: 15, LeadPt: 17}
	LabelBold   = Style{Face: SansBold, SizePt: 8, LeadPt: 10}
	LabelBody   = Style{Face: Sans, SizePt: 8, LeadPt: 10}
	LabelAside  = Style{Face: SansItalic, SizePt: 8, LeadPt: 10}
	LabelSmall  = Style{Face: Sans, SizePt: 6.5, LeadPt: 8}
	LabelHead   = Style{Face: Sans, SizePt: 6, LeadPt: 8, Caps: true, TrackEm: 0.08}
)

// SmallestPt is the smallest type that is ever set.
const SmallestPt = 5.0

// Scaled returns the style at a fraction of its size.
func (s Style) Scaled(by float64) Style {
	s.SizePt *= by
	s.LeadPt *= by
	return s
}

// With returns the style in another face.
func (s Style) With(f Face) Style {
	s.Face = f
	return s
}

// A Span is text in one style. Field names where the text was recorded, for
// errors; words of our own leave it empty.
type Span struct {
	Style Style
	Text  string
	Field string
}

// Spaces that do not break: between a number and its unit, a whole number and
// its fraction, the parts of a date.
const (
	ThinSpace    = "\u202F"
	NoBreakSpace = "\u00A0"
)
