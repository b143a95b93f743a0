package page

import (
	"cmp"
	"errors"
	"html/template"
	"slices"
	"strconv"

	"backleaf/record"
	"backleaf/record/linkedart"
	"backleaf/record/paper"
	"backleaf/record/seal"
	"backleaf/record/tell"
	"backleaf/record/trade"
)

// content is all that a page says, in words, in the order in which it says it.
type content struct {
	tell.PageWords
	Papers tell.Texts // the words that the papers have for the same
	frame

	Number, Title, By, Date string
	Alarm                   string // a theft or loss
	Notices                 []string
	Picture                 *picture
	Withheld                bool
	Lines                   []string
	Warnings                []string
	Facts                   []fact
	Drawings                []template.HTML
	BuildUp                 []string
	Care, Gaps, Corrections []string
	Certificates            []paperLine
	Studio                  []string
	NoPapers                string
	NotText                 string
	AsOf, OnPaper           string

	Signed     bool
	Record     string // its digest
	Files      []file
	LinkedArt  string
	Data       template.JS
	Structured template.JS

	origin string
	t      *tell.Teller
}

type fact struct{ Name, Text string }

// A paperLine says how a certificate stands.
type paperLine struct{ Text, Digest string }

// A file is one to save.
type file struct{ URL, Name string }

func newContent(in Input, p *Page) (*content, error) {
	t := tell.New(in.Catalogue, in.Workshop, in.Panel)
	w, words := in.Workshop, in.Catalogue.Page
	f, err := newFrame(in.Catalogue, "../", p)
	if err != nil {
		return nil, err
	}
	c := &content{PageWords: words, Papers: in.Catalogue.Certificate, frame: f, t: t, Number: t.Number(), Title: t.Title(), Warnings: t.Warnings(),
		BuildUp: t.BuildUp(), Care: t.Care(trade.Owner), Gaps: t.GapsTogether(), Corrections: t.Corrections(), Withheld: in.Withheld}
	c.WindowTitle = words.Window.With("title", paper.OneLine(c.Title), "number", c.Number)
	c.AsOf = words.AsOf.With("n", strconv.FormatInt(lastEntry(in), 10), "date", t.Day(w.Written))
	c.OnPaper = words.Sheet.With("number", c.Number, "link", t.Link())
	c.NoPapers = words.NoCertificate.With("until", t.Day(w.Written))
	c.NotText = string(in.Catalogue.Certificate.T("not-text"))
	c.takeNotices(in)
	c.takeWork(in)
	c.takeCertificates(in.Panel, t.Day(w.Written))
	if c.Drawings, err = c.drawings(); err != nil {
		return nil, err
	}
	image := ""
	if in.Photograph != nil {
		pic, err := pictures(in.Photograph, p)
		if err != nil {
			return nil, err
		}
		pic.Alt = c.Papers.T("photograph").With("title", c.Title)
		if ph, ok := Front(in.Panel); ok {
			pic.Credit = t.Credit(ph)
		}
		c.Picture, image = &pic, pic.Sizes[len(pic.Sizes)-1].URL
	}
	for _, s := range []string{w.Studio.Maker, w.Studio.Place, w.Studio.Contact} {
		if known(s) {
			c.Studio = append(c.Studio, s)
		}
	}
	if c.Structured, err = structured(t, in.Panel, image); err != nil {
		return nil, err
	}
	if c.LinkedArt, err = linked(in, p); err != nil {
		return nil, err
	}
	return c, c.takeProof(in, p)
}

// lastEntry is the last entry of the journal that the record follows from.
func lastEntry(in Input) int64 { return in.Workshop.Last }

// contact is how to reach the studio, nothing if nobody wrote it down.
func contact(s record.Studio) string {
	if !known(s.Contact) {
		return ""
	}
	return s.Contact
}

func known(s string) bool { return s != "" && s != record.Unknown }

func (c *content) takeNotices(in Input) {
	if in.Deed.Demo || in.Workshop.Studio.Demo {
		demo := c.Papers.T("demo-only")
		if in.Deed.Key.IsDemo() {
			demo = c.Papers.T("demo")
		}
		c.Notices = append(c.Notices, string(demo))
	}
	if h, away := in.Panel.Away(); away {
		if m, ok := map[record.Parting]tell.Message{"theft": c.Stolen, "loss": c.Missing}[h.Body.How]; ok {
			c.Alarm = m.With("date", c.t.Day(h.At), "contact", contact(in.Workshop.Studio))
		}
	}
}

// takeWork gathers what stands beside a picture on a wall, and what else a
// cataloguer asks for.
func (c *content) takeWork(in Input) {
	t, d := c.t, in.Panel.Description()
	c.By = cmp.Or(t.Painter(), t.Maker())
	if painter := t.Painter(); painter != "" && painter != t.Maker() {
		c.By = c.PageWords.By.With("painter", painter, "maker", t.Maker())
	}
	if d.Made.Known() {
		c.Date = t.DateOfWork()
	}
	c.Lines = []string{t.MediumLine(), t.Dimensions()}
	if e := t.Edition(false); e != "" && t.Painted() {
		c.Lines = append(c.Lines, e)
	}
	for _, f := range []struct {
		name tell.Message
		text string
	}{{c.Papers.T("signed"), d.Signed}, {c.Papers.T("inscription"), d.Inscription}, {c.Papers.T("type"), d.Type}, {c.Papers.T("subject"), d.Subject}, {c.Papers.T("features"), d.Features},
		{c.Papers.T("own-number"), d.Owner}, {c.Faces, t.SealedFaces()}, {c.Varnish, t.VarnishLine()}} {
		if known(f.text) {
			c.Facts = append(c.Facts, fact{string(f.name), f.text})
		}
	}
}

// takeCertificates says how each certificate stands, the newest first.
func (c *content) takeCertificates(p *record.Panel, until string) {
	all := record.Each[record.Issued](p)
	slices.SortFunc(all, func(a, b record.Done[record.Issued]) int { return cmp.Compare(b.Seq, a.Seq) })
	for _, i := range all {
		text := c.Stands.With("date", c.t.Day(i.At), "until", until)
		for _, n := range all {
			if n.Body.Replaces == i.Seq {
				text = c.ReplacedBy.With("date", c.t.Day(i.At), "by", c.t.Day(n.At))
			}
		}
		for _, r := range record.Each[record.Revoked](p) {
			if r.Body.Certificate == i.Seq {
				text = c.WithdrawnOn.With("date", c.t.Day(i.At), "by", c.t.Day(r.At), "because", r.Body.Because)
			}
		}
		digest, _ := seal.ParseDigest(i.Body.Record)
		c.Certificates = append(c.Certificates, paperLine{text, digest.Groups()})
	}
}

// narrowMM is the width of the drawing: that of the smallest screens, at
// which its words are still 9 pt. Larger ones enlarge it.
const narrowMM, tallestMM = 76, 400

// drawings draws the build-up. What no face of ours can set has no drawing;
// the words below it are the browser's to set.
func (c *content) drawings() ([]template.HTML, error) {
	s := c.t.Section()
	s.Name, s.Detail, s.Head = paper.Body.Scaled(.95).Bold(), paper.Body.Scaled(.9), paper.Heading
	all, err := s.Draw(narrowMM, tallestMM)
	if _, ok := errors.AsType[*paper.GlyphError](err); ok {
		return nil, nil
	}
	var out []template.HTML
	for i, d := range all {
		d.ID, d.Desc = "cut"+strconv.Itoa(i+1), string(c.Drawn)
		out = append(out, template.HTML(d.SVG())) // escaped by its writer
	}
	return out, err
}

// Front is the last photograph of the front, and whether there is one.
func Front(p *record.Panel) (last record.Photograph, ok bool) {
	for _, ph := range record.Each[record.Photograph](p) {
		if ph.Body.Role == record.PhotoFront {
			last, ok = ph.Body, true
		}
	}
	return last, ok
}

// linked keeps the panel in Linked Art, all its documents in one list.
func linked(in Input, p *Page) (string, error) {
	docs, err := linkedart.Documents(in.Workshop, in.Panel)
	if err != nil {
		return "", err
	}
	list := []byte("[\n")
	for i, d := range docs {
		if i > 0 {
			list = append(list, ",\n"...)
		}
		list = append(list, d.JSON...)
	}
	a := asset(".jsonld", append(list, "]\n"...))
	p.Assets = append(p.Assets, a)
	return "../" + Assets + "/" + a.Name, nil
}

// takeProof keeps the files to save, and the data for the script.
func (c *content) takeProof(in Input, p *Page) (err error) {
	d := in.Deed
	c.Signed = len(d.Signature) > 0 && in.Key != nil
	st := in.Workshop.Studio
	if c.origin, err = seal.Origin(st.Mark, st.Journal); err != nil {
		return err
	}
	add := func(name, ending string, data []byte) {
		a := asset(ending, data)
		p.Assets = append(p.Assets, a)
		c.Files = append(c.Files, file{"../" + Assets + "/" + a.Name, name})
	}
	add("record.json", ".json", d.Record)
	if c.Signed {
		add("record.sig", ".sig", d.Signature)
		add("studio.pem", ".pem", d.Key.PEM())
		add("head.txt", ".txt", d.Head)
		add("proof.json", ".json", d.Proof)
		c.Record = seal.DigestOf(d.Record).Groups()
	}
	c.Data, err = data(d, nil)
	return err
}
