package label

import (
	"image"
	"strings"
)

// An Input is what one label says, in the words in which it is printed; [Say]
// makes it from the record. A field that is empty is not on the label; number,
// maker, the line that says where the record is, and a link or a plain text
// must not be.
type Input struct {
	Number       string
	Back         Area   // of the panel; zero if not known
	Blank        bool   // a panel without a painting: its painter signs
	Notice       string // that this is a demonstration
	Title        string
	Date         string // of the work, beside its title
	Made         string // what else is to be said of dates, on its own line
	Maker        string
	Place        string
	Medium       string // medium and support, or the support
	Dimensions   string // as measured
	OtherUnits   string // the same with the other units in brackets
	Hazards      []string
	BuildUp      []string // from the front to the back
	BuildUpShort string
	Sealed       string
	Varnish      string
	Changed      string
	Care         string
	Link         string // web address; empty if the studio has no link base
	Plain        string // what the symbol says without a link
	Facts        string // what a second symbol says, if one is asked for
	FactsShort   string // the same, where that has no room
	Where        string // where the record is, with the link in letters
	Issue        string // which record the label tells, and when it was printed
	Fingerprint  string
	Mark         image.Image // of the studio; nil if it has none
}

// marked puts a byte order mark before text beyond ASCII in a symbol: without
// it readers guess, and some take UTF-8 for Shift JIS.
func marked(text string) string {
	if strings.ContainsFunc(text, func(r rune) bool { return r > '~' }) {
		return "\uFEFF" + text
	}
	return text
}

// code is what the symbol says.
func (in Input) code() string {
	if in.Link != "" {
		return in.Link
	}
	return marked(in.Plain)
}

// says reports whether there is something to say for a field.
func (in Input) says(f Field) bool {
	switch f {
	case BuildUpFull:
		return len(in.BuildUp) > 0
	case BuildUp:
		return len(in.BuildUp) > 0 && in.BuildUpShort != ""
	case Date:
		return in.Date != "" || in.Made != ""
	case StudioMark:
		return in.Mark != nil
	case QR, Signature, Remarks:
		return true
	}
	return in.text(f) != ""
}

// varnishInBuildUp reports that the build-up in full begins with the varnish:
// then it begins with all that is said of it, and it is not said again.
func (in Input) varnishInBuildUp() bool {
	return len(in.BuildUp) > 0 && strings.HasPrefix(in.Varnish, in.BuildUp[0])
}

// buildUp are the lines of the build-up in full.
func (in Input) buildUp() []string {
	if in.varnishInBuildUp() {
		return append([]string{in.Varnish}, in.BuildUp[1:]...)
	}
	return in.BuildUp
}

// text is what is printed for a field of one text.
func (in Input) text(f Field) string {
	for _, t := range [...]struct {
		field Field
		text  string
	}{{Notice, in.Notice}, {Title, in.Title}, {Place, in.Place}, {Support, in.Medium}, {Dimensions, in.Dimensions}, {OtherUnits, in.OtherUnits},
		{Sealed, in.Sealed}, {Varnish, in.Varnish}, {Changed, in.Changed}, {Care, in.Care}, {Facts, in.Facts}, {Issue, in.Issue}, {Fingerprint, in.Fingerprint}} {
		if t.field == f {
			return t.text
		}
	}
	return ""
}
