package label

import "strings"

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
	Dimensions   string
	BuildUp      []string // from the front to the back
	BuildUpShort string
	Sealed       string
	Varnish      string
	Changed      string
	Care         string
	Link         string // web address; empty if the studio has no link base
	Plain        string // what the symbol says without a link
	Where        string // where the record is, with the link in letters
	Fingerprint  string
}

// code is what the symbol says. Text beyond ASCII begins with a byte order
// mark: without it readers guess, and some take UTF-8 for Shift JIS.
func (in Input) code() string {
	switch {
	case in.Link != "":
		return in.Link
	case strings.ContainsFunc(in.Plain, func(r rune) bool { return r > '~' }):
		return "\uFEFF" + in.Plain
	}
	return in.Plain
}

// says reports whether there is something to say for a field.
func (in Input) says(f Field) bool {
	switch f {
	case Notice:
		return in.Notice != ""
	case Title:
		return in.Title != ""
	case Date:
		return in.Date != "" || in.Made != ""
	case Place:
		return in.Place != ""
	case Support:
		return in.Medium != ""
	case Dimensions:
		return in.Dimensions != ""
	case BuildUp, BuildUpFull, BuildUpList:
		return len(in.BuildUp) > 0
	case Sealed:
		return in.Sealed != ""
	case Varnish:
		return in.Varnish != ""
	case Changed:
		return in.Changed != ""
	case Care:
		return in.Care != ""
	case Fingerprint:
		return in.Fingerprint != ""
	}
	return true
}
