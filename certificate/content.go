package certificate

import (
	"cmp"
	"strings"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/paper"
	"backleaf/record/section"
	"backleaf/record/tell"
)

// content is everything that a certificate says, in words.
type content struct {
	in     Input
	words  tell.Texts
	teller *tell.Teller

	number, title, maker string
	artist               string // who painted the work; the maker where no paint is on record
	titled               bool
	notices              []string // what must be said before all else
	warnings             string
	lines                []line // of the front, below title and maker
	particulars          []fact // of the reverse
	sentences            []string
	section              section.Section
	care                 []tell.Row
	gaps                 []tell.Row
	link                 string // what the small symbol holds
	url                  string // the same if it is a web address
	photo                photograph
	small, big           symbol
	proof                bool // there is room for a signature and what belongs to it
}

// A line is a text of the front; field names its place in the record. One that
// stands on the reverse too may give way.
type line struct {
	text, field string
	may         bool
}

// A fact has a name and a text.
type fact struct{ name, text, field string }

func newContent(in Input) (*content, error) {
	if in.Catalogue == nil {
		in.Catalogue = tell.English()
	}
	t := tell.New(in.Catalogue, in.Workshop, in.Panel)
	c := &content{in: in, words: in.Catalogue.Certificate, teller: t,
		number: t.Number(), title: t.PrintTitle(), maker: t.Maker(), artist: cmp.Or(t.Painter(), t.Maker()), section: t.Section(), url: t.Link()}
	d := in.Panel.Description()
	c.titled = d.Title != "" && d.Title != record.Unknown
	if c.link = c.url; c.link == "" {
		c.link = t.PlainText()
	}
	c.takeNotices()
	c.warnings = strings.Join(t.Warnings(), " ")
	c.takeLines(d)
	c.takeParticulars(d)
	c.sentences = []string{c.sentence(t.SealedFaces()), c.sentence(t.VarnishLine())}
	if edges := t.On(record.Edges); edges != nil {
		c.sentences = append(c.sentences, c.sentence(c.words.T("edges-line").With("layers", in.Catalogue.Clauses(edges))))
	}
	if n := len(in.Panel.Corrections); n > 0 {
		c.sentences = append(c.sentences, in.Catalogue.Fill(c.words.T("corrected"), record.With("n", n)))
	}
	c.care = t.CareByTopic()
	c.takeGaps(d)
	c.section.Name, c.section.Detail, c.section.Head = text.Bold(), note, sized(paper.Heading, 7)
	return c, c.takeSymbols()
}

func (c *content) takeSymbols() (err error) {
	if c.photo, err = c.takePhotograph(); err != nil {
		return err
	}
	if c.small, err = linkSymbol(c.link); err != nil {
		return err
	}
	if c.signed() {
		c.big, err = statementSymbol(string(c.in.Deed.Statement))
	}
	c.proof = c.signed()
	if c.in.Preview {
		ring, kerr := deed.Keys(c.in.Workshop.Keys)
		_, has := ring.Current()
		c.proof = kerr == nil && has
	}
	return err
}

// signed reports that there is a signature to print.
func (c *content) signed() bool { return len(c.in.Deed.Signature) > 0 && !c.in.Preview }

func (c *content) sentence(s string) string { return c.words.T("sentence").With("text", s) }

func (c *content) takeNotices() {
	if c.in.Deed.Demo || c.in.Workshop.Studio.Demo {
		demo := c.words.T("demo-only")
		if c.signed() && c.in.Deed.Key.IsDemo() {
			demo = c.words.T("demo")
		}
		c.notices = append(c.notices, string(demo))
	}
}

// takeLines gathers what stands below title and maker on the front, as beside
// a picture on a wall.
func (c *content) takeLines(d record.Described) {
	add := func(form tell.Message, text, field string, may bool) {
		if known(text) {
			c.lines = append(c.lines, line{form.With("text", text), field, may})
		}
	}
	w := c.words
	add("{text}", c.in.Catalogue.Capital(c.teller.MediumLine()), "medium and support", true)
	add("{text}", c.teller.Dimensions(), "size", false)
	add("{text}", c.teller.Edition(c.ownHands()), "edition and frame", false)
	add(w.T("signed-line"), d.Signed, "signature", true)
	add(w.T("inscribed-line"), d.Inscription, "inscription", true)
	add(w.T("owner-line"), c.in.Buyer, "buyer", true)
}

// takeParticulars gathers what else a cataloguer asks for.
func (c *content) takeParticulars(d record.Described) {
	w := c.words
	add := func(name tell.Message, text, field string) {
		if known(text) {
			c.particulars = append(c.particulars, fact{string(name), text, field})
		}
	}
	add(w.T("type"), d.Type, "type of object")
	add(w.T("medium"), c.teller.MediumLine(), "medium and support")
	add(w.T("size"), c.teller.Dimensions(), "size")
	add(w.T("date"), c.date(), "date of the work")
	add(w.T("pigments"), c.teller.Pigments(), "pigments")
	add(w.T("signed"), d.Signed, "signature")
	add(w.T("inscription"), d.Inscription, "inscription")
	add(w.T("owner"), c.in.Buyer, "buyer")
	add(w.T("subject"), d.Subject, "subject")
	add(w.T("features"), d.Features, "distinguishing features")
	add(w.T("own-number"), d.Owner, "own reference")
	add(w.T("price"), c.in.Price, "price")
}

func known(text string) bool { return text != "" && text != record.Unknown }

// date is that of the work, or nothing.
func (c *content) date() string {
	painted, _ := c.in.Panel.PaintedBetween()
	if !c.in.Panel.Description().Made.Known() && painted.IsZero() {
		return ""
	}
	return c.teller.DateOfWork()
}

// ownHands reports that who made the panel also painted on it.
func (c *content) ownHands() bool {
	return c.teller.Painted() && c.teller.Painter() != "" && c.teller.OwnHands()
}

// takeGaps says what is not recorded: the gaps of the record, and of the
// categories of Object ID those that it does not ask for.
func (c *content) takeGaps(d record.Described) {
	c.gaps = c.teller.GapRows()
	var names []string
	for _, f := range []struct {
		name tell.Message
		text string
	}{{c.words.T("no-features"), d.Features}, {c.words.T("no-subject"), d.Subject}, {c.words.T("no-place"), c.teller.MakerPlace()}} {
		if !known(f.text) {
			names = append(names, string(f.name))
		}
	}
	if names != nil {
		c.gaps = append(c.gaps, tell.Row{Value: c.in.Catalogue.Capital(c.teller.List(names))})
	}
}

// statement is what the maker says by signing, in sentences. Those who made the panel and
// painted on it say so; where others painted it only says what was recorded.
func (c *content) statement() []string {
	painter := c.teller.Painter()
	switch {
	case !c.teller.Painted() || painter == "":
		return []string{c.words.T("statement-panel").With("maker", c.maker)}
	case !c.ownHands():
		return []string{c.words.T("statement-apart").With("maker", c.maker, "painter", painter)}
	}
	hands, place, unique := 1, c.teller.MakerPlace(), ""
	if !c.teller.OneHand() {
		hands = 2
	}
	if !known(place) {
		place = ""
	}
	if c.teller.Unique() {
		unique = string(c.words.T("unique"))
	}
	return []string{c.teller.Catalogue().Fill(c.words.T("statement"), record.With("hands", hands), tell.Told("maker", c.maker), tell.Told("place", place)),
		c.teller.Catalogue().Fill(c.words.T("original"), tell.Told("unique", unique))}
}

// day is the day of issue.
func (c *content) day() string { return c.teller.Day(record.Moment(c.in.Issued)) }

// issued says when the certificate was issued and what it replaces.
func (c *content) issued() string {
	issued := c.words.T("issued")
	if c.in.Preview {
		issued = c.words.T("not-issued")
	}
	return strings.TrimSpace(issued.With("date", c.day()) + " " + c.replaces())
}

// replaces says which certificate this one replaces, if it does.
func (c *content) replaces() string {
	if !c.in.Replaces.Known() {
		return ""
	}
	n := len(record.Each[record.Issued](c.in.Panel)) + 1
	return c.teller.Catalogue().Fill(c.words.T("replaces"), record.With("n", n), record.With("before", n-1), tell.Told("date", c.teller.Day(c.in.Replaces)))
}

// shorten takes the longest line off the front that may give way, if there is one.
func (c *content) shorten() bool {
	at := -1
	for i, l := range c.lines {
		if l.may && (at < 0 || len(l.text) > len(c.lines[at].text)) {
			at = i
		}
	}
	if at < 0 {
		return false
	}
	c.lines = append(c.lines[:at:at], c.lines[at+1:]...)
	return true
}
