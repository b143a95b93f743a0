package tell

import (
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/amount"
	"backleaf/record/paper"
)

// A Teller says what is recorded of one panel.
type Teller struct {
	c *Catalogue
	w *record.Workshop
	p *record.Panel

	films []amount.Film // made when first asked for
}

// New returns the teller of a panel of a workshop. An amount given for several
// panels together is shared out only if the workshop holds all of them.
func New(c *Catalogue, w *record.Workshop, p *record.Panel) *Teller { return &Teller{c: c, w: w, p: p} }

// Catalogue returns the words the teller speaks with.
func (t *Teller) Catalogue() *Catalogue { return t.c }

// Title returns the title of the work; "Blank panel" for one not yet painted
// "Untitled" for a painting without, and that a title is not known.
func (t *Teller) Title() string {
	switch title := t.p.Description().Title; {
	case title == record.Unknown:
		return string(t.c.Lines.T("title-unknown"))
	case title == "" && t.Painted():
		return string(t.c.Lines.T("untitled"))
	case title == "":
		return string(t.c.Lines.T("blank"))
	default:
		return title
	}
}

// PrintTitle returns the title as a paper can print it: where no face at hand
// has its script, the one in Latin letters, else that beside it in brackets.
func (t *Teller) PrintTitle() string {
	title, latin := t.Title(), t.p.Description().Romanised
	if latin == "" || latin == record.Unknown {
		return title
	}
	if _, err := paper.Compose(0, paper.Span{Style: paper.Title, Text: title}); err != nil {
		return latin
	}
	return t.c.Join.Bracket.With("text", title, "aside", latin)
}

// Painted reports whether paint or varnish was recorded.
func (t *Teller) Painted() bool {
	s := t.p.Stage()
	return s == record.StagePainted || s == record.StageVarnished
}

// Number returns the number of the panel.
func (t *Teller) Number() string { return string(t.p.Number) }

// Link returns the address of the panel's record, or nothing if the studio
// has no link base.
func (t *Teller) Link() string {
	if t.w.Studio.LinkBase == "" {
		return ""
	}
	return t.w.Studio.LinkBase + t.p.Number.Bare()
}

// LinkInLetters is the link for the eye.
func (t *Teller) LinkInLetters() string { return InLetters(t.Link()) }

// InLetters is a link for the eye: scheme and host in small letters, which
// lead to the same place (RFC 3986, 6.2.2.1), the path as it is.
func InLetters(link string) string {
	scheme, rest, ok := strings.Cut(link, "://")
	if !ok {
		return link
	}
	end := strings.IndexAny(rest, "/?#")
	if end < 0 {
		end = len(rest)
	}
	return strings.ToLower(scheme) + "://" + strings.ToLower(rest[:end]) + rest[end:]
}

// PlainText returns number, maker and contact, for a symbol without a link.
func (t *Teller) PlainText() string {
	lines := []string{t.Number()}
	for _, s := range []string{t.Maker(), t.w.Studio.Contact} {
		if s != "" {
			lines = append(lines, s)
		}
	}
	return strings.Join(lines, "\n")
}

// DateOfWork returns the date of the work in words or, where none is recorded,
// when it was painted.
func (t *Teller) DateOfWork() string {
	made := t.p.Description().Made
	first, last := t.p.PaintedBetween()
	if made.Known() || first.IsZero() {
		return t.Day(made)
	}
	return t.c.Lines.T("painted-in").With("dates", t.c.Span(first, last))
}

// MadeBetween returns the days between which the panel was made and worked on,
// as far as they were recorded.
func (t *Teller) MadeBetween() string {
	first, last := t.madeFrom()
	return t.c.Span(first, last)
}

// Span tells the days from one date to another: "2–4 May 2026", "between about
// 1998 and 2001", or the one day that both are of.
func (c *Catalogue) Span(first, last record.When) string {
	if from, to := c.one("When", first.String(), ""), c.one("When", last.String(), ""); from == to {
		return from
	} else if spanOf(first, last).IsZero() {
		return c.Lines.T("between").With("from", from, "to", to)
	}
	return c.one("When", spanOf(first, last).String(), "short")
}

// spanOf is the interval between two dates, or the one day of both; zero if
// that is no interval of EDTF.
func spanOf(first, last record.When) record.When {
	from, to := first.Date().Day(), last.Date().Day()
	if from == to {
		return first
	}
	span, _ := record.ParseWhen(from.String() + "/" + to.String())
	return span
}

// madeFrom returns the first and the last known date of work on the board.
func (t *Teller) madeFrom() (first, last record.When) {
	for _, e := range t.p.Events {
		if !e.Body.Kind().Traits().Bench || !e.At.Known() {
			continue
		}
		if last = e.At; first.IsZero() {
			first = e.At
		}
	}
	return first, last
}

// Day returns a date in words without the time of day.
func (t *Teller) Day(w record.When) string { return t.c.one("When", w.String(), "") }

// Moment returns a date in words with the time of day, where it is recorded,
// to the minute: seconds are a clock's, not a painter's.
func (t *Teller) Moment(w record.When) string { return t.c.one("When", w.String(), "moment") }

// orNot returns a recorded text, or says that it is unknown or not recorded.
func (t *Teller) orNot(s string) string {
	switch s {
	case "":
		return string(t.c.Lines.T("not-recorded"))
	case record.Unknown:
		return string(t.c.Lines.T("unknown"))
	}
	return s
}

// Said is what a text of the record says, or that it says nothing.
func (t *Teller) Said(s string) string { return t.orNot(s) }

// Word is [Catalogue.Word].
func (t *Teller) Word(v any) string { return t.c.Word(v) }

// List is [Catalogue.List].
func (t *Teller) List(words []string) string { return t.c.List(words) }

// Faces names faces: "front, back and edges".
func (t *Teller) Faces(fs []record.Face) string {
	var in []record.Face
	for _, f := range record.Faces {
		if slices.Contains(fs, f) {
			in = append(in, f)
		}
	}
	if in == nil {
		return ""
	}
	return t.c.Word(in)
}
