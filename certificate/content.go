package certificate

import (
	"strings"

	"backleaf/record"
	"backleaf/record/section"
	"backleaf/record/tell"
)

// content is everything that a certificate says, in words.
type content struct {
	in       Input
	words    tell.CertificateWords
	language string
	teller   *tell.Teller

	number, title, maker string
	titled               bool
	notices              []notice
	facts                []fact
	signedAt, more       []fact // may stand on page 2
	sentences            []string
	section              section.Section
	care, gaps           []string
	careSources          string
	statementText        string
	link                 string // what the small symbol holds
	url                  string // the same if it is a web address
	photo                photograph
	small, big           symbol
	total                int // pages

	laid     map[layKey]laid
	drawings map[drawKey]drawn
}

// A fact has a name and a text; field names its place in the record.
type fact struct{ name, text, field string }

func newContent(in Input) (*content, error) {
	if in.Catalogue == nil {
		in.Catalogue = tell.English
	}
	t := tell.New(in.Catalogue, in.Workshop, in.Panel)
	c := &content{in: in, words: in.Catalogue.Certificate, language: in.Catalogue.Tag.String(), teller: t,
		number: t.Number(), title: t.Title(), maker: t.Maker(), section: t.Section(), url: t.Link(), link: t.Link(),
		total: 2, laid: map[layKey]laid{}, drawings: map[drawKey]drawn{}}
	d := in.Panel.Description()
	c.titled = d.Title != "" && d.Title != record.Unknown
	if c.link == "" {
		c.link = t.PlainText()
	}
	c.notices = c.noticesOf()
	c.takeFacts(d)
	c.sentences = []string{t.BuildUpSentence(), c.sentence(t.SealedFaces()), c.sentence(t.VarnishLine())}
	if n := len(in.Panel.Corrections); n > 0 {
		c.sentences = append(c.sentences, in.Catalogue.Fill(c.words.Corrected, record.With("n", n)))
	}
	c.care = t.CareAdvice()
	c.careSources = string(c.words.CareSources)
	if strings.Contains(strings.Join(c.care, ""), string(in.Catalogue.Care.Cold)) {
		c.careSources += " " + string(c.words.Cold)
	}
	c.takeGaps(d)
	c.statementText = c.words.StatementText.With("maker", c.maker)
	if p := t.MakerPlace(); p != "" {
		c.statementText = c.words.StatementPlace.With("maker", c.maker, "place", p)
	}
	var err error
	if c.photo, err = c.takePhotograph(); err != nil {
		return nil, err
	}
	if c.small, err = linkSymbol(c.link); err != nil {
		return nil, err
	}
	if c.signed() {
		c.big, err = statementSymbol(string(in.Deed.Statement))
	}
	return c, err
}

func (c *content) sentence(s string) string { return c.words.Sentence.With("text", s) }

// A notice is what must be said before all else.
type notice struct {
	text  string
	loud  bool
	field string
}

func (c *content) noticesOf() []notice {
	var out []notice
	if c.in.Preview {
		out = append(out, notice{string(c.words.Preview), true, ""})
	} else {
		line := c.words.Issued.With("date", c.teller.Day(record.Moment(c.in.Issued)))
		if c.in.Replaces.Known() {
			line += " " + c.words.Replaces.With("date", c.teller.Day(c.in.Replaces))
		}
		out = append(out, notice{line, false, "date of issue"})
	}
	if c.in.Deed.Demo || c.in.Workshop.Studio.Demo {
		demo := c.words.DemoOnly
		if c.signed() && c.in.Deed.Key.IsDemo() {
			demo = c.words.Demo
		}
		out = append(out, notice{string(demo), true, ""})
	}
	return out
}

// takeFacts gathers the facts that a cataloguer asks for. What is not recorded
// is told among the gaps.
func (c *content) takeFacts(d record.Described) {
	t, w := c.teller, c.words
	add := func(to *[]fact, name tell.Message, text, field string) {
		if text != "" && text != record.Unknown {
			*to = append(*to, fact{string(name), text, field})
		}
	}
	if d.Made.Known() {
		add(&c.facts, w.Date, t.DateOfWork(), "date of the work")
	}
	add(&c.facts, w.Medium, first(t.MediumLine()), "medium and support")
	add(&c.facts, w.Size, t.Dimensions(), "size")
	add(&c.facts, w.Owner, c.in.Buyer, "buyer")
	add(&c.facts, w.Price, c.in.Price, "price")
	add(&c.signedAt, w.Signed, d.Signed, "signature")
	add(&c.more, w.Inscription, d.Inscription, "inscription")
	add(&c.more, w.Features, d.Features, "distinguishing features")
	add(&c.more, w.Subject, d.Subject, "subject")
	kind := d.Type
	if kind == "" {
		kind = string(w.Painting)
	}
	add(&c.more, w.Type, kind, "type of object")
	add(&c.more, w.Place, t.MakerPlace(), "place")
	add(&c.more, w.OwnNumber, d.Owner, "own reference")
}

// first starts a text with a capital.
func first(s string) string {
	r := []rune(s)
	if len(r) == 0 {
		return s
	}
	return strings.ToUpper(string(r[:1])) + string(r[1:])
}

// takeGaps says what is not recorded: the gaps of the record, and of the
// categories of Object ID those that it does not ask for.
func (c *content) takeGaps(d record.Described) {
	for _, g := range c.teller.GapsTogether() {
		c.gaps = append(c.gaps, c.sentence(g))
	}
	var names []string
	for _, f := range []struct {
		name tell.Message
		text string
	}{{c.words.NoFeatures, d.Features}, {c.words.NoSubject, d.Subject}, {c.words.NoPlace, c.teller.MakerPlace()}} {
		if f.text == "" || f.text == record.Unknown {
			names = append(names, string(f.name))
		}
	}
	if names != nil {
		c.gaps = append(c.gaps, c.sentence(first(c.teller.List(names))))
	}
}
