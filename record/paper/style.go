package paper

// A Style sets a run of text.
type Style struct {
	face    face
	SizePt  float64
	LeadPt  float64 // from baseline to baseline
	Caps    bool    // set in capitals, whatever was written
	TrackEm float64 // space added after each letter, in em
}

// The sizes of type. A page uses these and no others; what does not fit is
// scaled as a whole by [Fit]. Certificate and dossier are set in the serif
// styles, labels and drawings in the sans ones.
var (
	Title   = Style{face: serif, SizePt: 22, LeadPt: 26}
	Heading = Style{face: serif, SizePt: 8.5, LeadPt: 12, Caps: true, TrackEm: 0.09}
	Body    = Style{face: serif, SizePt: 10, LeadPt: 13}
	Strong  = Style{face: serifBold, SizePt: 10, LeadPt: 13}
	Aside   = Style{face: serifItalic, SizePt: 10, LeadPt: 13}
	Small   = Style{face: serif, SizePt: 8, LeadPt: 10}
	Digest  = Style{face: mono, SizePt: 7, LeadPt: 9}

	LabelNumber = Style{face: sansBold, SizePt: 15, LeadPt: 17}
	LabelBold   = Style{face: sansBold, SizePt: 8, LeadPt: 10}
	LabelBody   = Style{face: sans, SizePt: 8, LeadPt: 10}
	LabelSmall  = Style{face: sans, SizePt: 6.5, LeadPt: 8}
	LabelHead   = Style{face: sans, SizePt: 6, LeadPt: 8, Caps: true, TrackEm: 0.08}
)

// The smallest type that is ever set, and the smallest figures of a built
// fraction. Common practice for what is read at arm's length.
const (
	SmallestPt       = 6.0
	smallestFigurePt = 5.0
)

// Scaled returns the style at a fraction of its size.
func (s Style) Scaled(by float64) Style {
	s.SizePt *= by
	s.LeadPt *= by
	return s
}

// Plain, Italic and Bold return the style in another cut of its face; that of
// digests has but one.
func (s Style) Plain() Style  { return s.cut(serif) }
func (s Style) Italic() Style { return s.cut(serifItalic) }
func (s Style) Bold() Style   { return s.cut(serifBold) }

func (s Style) cut(of face) Style {
	if s.face < mono {
		s.face = s.face/sans*sans + of
	}
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
