package benchpage

import (
	"cmp"
	"errors"
	"html/template"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/paper"
	"backleaf/record/studio"
	"backleaf/record/studio/handover"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/papers"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
)

// one reads the panel that a page is about.
func (d *desk) one() (*record.Workshop, *record.Panel, error) {
	w, p, err := questions.One(d.ctx, d.Studio.Book, d.r.PathValue("panel"))
	if err == nil && p.Number != record.Number(d.r.PathValue("panel")) {
		http.Redirect(d.w, d.r, "/panel/"+string(p.Number), http.StatusSeeOther)
		err = errAnswered
	}
	return w, p, err
}

type finding struct{ Outcome, Class, Title, Text, Remedy string }

// panel shows all that is recorded of a panel.
func (d *desk) panel() error {
	w, p, err := d.one()
	if err != nil {
		return err
	}
	var body struct {
		Number    record.Number
		Batch     string
		Lines     [][2]string
		Now, Made []template.HTML // drawings
		AsItWas   string          // the entry after which the second drawing was
		Faces     []faceLayers
		Findings  []finding
		Open      []finding // of which it is not recorded whether they hold
		Rest      int       // findings that hold or do not apply
		Gaps      []string
		Links     []actLink // by which gaps are answered
		Done      []done
		Mended    []string
		Pictures  []picture
		Acts      []actGroup
		Steps     []step
		Roles     []option
		Private   []string
		Newer     bool
		Secret    bool
	}
	body.Number, body.Batch = p.Number, string(p.Batch)
	k := tell.New(d.c, w, p)
	body.Lines = k.Particulars()
	body.Newer = len(p.Newer) > 0
	if body.Now, err = drawing(k, "now"); err != nil {
		return err
	}
	if then := d.r.FormValue("then"); then != "" {
		if old, at := asItWas(p, then); old != nil {
			body.AsItWas = at
			if body.Made, err = drawing(tell.New(d.c, w, old), "then"); err != nil {
				return err
			}
		}
	}
	for _, f := range record.Faces {
		body.Faces = append(body.Faces, faceLayers{d.c.Capital(d.c.Word(f)), k.On(f)})
	}
	if !body.Newer {
		around, err := d.Studio.Book.Around(d.ctx, p.Number)
		if err != nil {
			return err
		}
		for _, x := range (questions.Checking{Words: d.c, Now: d.now}).Panel(around, around.Panel(p.Number)).Findings {
			if !x.Open() {
				body.Rest++
				continue
			}
			f := finding{d.c.Outcome(x.Outcome), strings.ReplaceAll(string(x.Outcome), " ", "-"), x.Title, x.Text, x.Remedy}
			if x.Outcome == check.FallsShort {
				body.Findings = append(body.Findings, f)
			} else {
				body.Open = append(body.Open, f)
			}
		}
	}
	body.Gaps = k.GapsTogether()
	body.Mended = k.Corrections()
	events := slices.Clone(p.Events)
	slices.Reverse(events)
	body.Done = d.dones(d.c.WholeEvent, events)
	for i := range body.Done {
		body.Done[i].Panel = p.Number
	}
	for _, e := range events {
		if ph, ok := e.Body.(record.Photograph); ok {
			body.Pictures = append(body.Pictures, picture{"/photograph/" + ph.SHA256, cmp.Or(ph.Caption, d.c.Word(ph.Role))})
		}
	}
	if !d.ReadOnly && !body.Newer {
		q := url.Values{"panel": {string(p.Number)}, "back": {"/panel/" + string(p.Number)}}
		body.Steps = d.steps([]*record.Panel{d.shop.Panel(p.Number)})
		body.Acts = d.groups(q, here(p))
		body.Links = d.links(q, "describe", "coat", "inspect", "varnish", "note")
		a := ask{d: d}
		body.Roles = words[record.PhotoRole](&a, nil)
		if body.Secret = d.r.FormValue("private") == "yes"; body.Secret {
			if body.Private, err = d.partings(p); err != nil {
				return err
			}
		}
	}
	title := d.say("page-panel", record.With("panel", p.Number), record.With("title", p.Description().Title))
	return d.show("panel", title, body)
}

type faceLayers struct {
	Face   string
	Layers []string
}

type picture struct{ Link, Words string }

// drawingMM is the width at which the words of a drawing are as large as those
// around it on a telephone; a tablet enlarges it.
const drawingMM = 60

// drawing is the build-up of a panel cut through.
func drawing(k *tell.Teller, id string) (out []template.HTML, err error) {
	s := k.Section()
	s.Name, s.Detail, s.Head = paper.Body.Bold(), paper.Body, paper.Body
	all, err := s.Draw(drawingMM, 400)
	if _, ok := errors.AsType[*paper.GlyphError](err); ok { // the words below it are the browser's to set
		return nil, nil
	}
	for i, one := range all {
		one.ID = id + itoa(int64(i))
		out = append(out, template.HTML(one.SVG())) // escaped by its writer
	}
	return out, err
}

// asItWas is a panel as it was after one of its entries.
func asItWas(p *record.Panel, entry string) (*record.Panel, string) {
	i := slices.IndexFunc(p.Events, func(e record.Event) bool { return itoa(e.Seq) == entry })
	if i < 0 {
		return nil, ""
	}
	return p.With(p.Events[:i+1]), entry
}

// partings are to whom and for how much a panel left.
func (d *desk) partings(p *record.Panel) (out []string, err error) {
	hs, err := handover.Of(d.ctx, d.Studio.Book, p)
	for _, h := range hs {
		if h.State == handover.Here {
			price := ""
			if h.Private.Price.Currency != "" {
				price = h.Private.Price.String()
			}
			out = append(out, d.say("page-parting", record.With("how", h.How), record.With("at", h.At), record.With("to", h.Private.To), record.With("price", price), record.With("note", h.Private.Note)))
		}
	}
	return out, err
}

// finish shows what makes a work ready to leave.
func (d *desk) finish() error {
	_, p, err := d.one()
	if err != nil {
		return err
	}
	var body struct {
		Number record.Number
		Lines  []finishLine
	}
	body.Number = p.Number
	say := d.p(p)
	c, issued := p.Certificate()
	_, labelled := record.Latest[record.LabelPrinted](p)
	h, away := p.Away()
	for _, l := range []finishLine{
		{Act: "paint", Done: p.Stage() == record.StagePainted || p.Stage() == record.StageVarnished, Words: say.MediumLine()},
		{Act: "describe", Done: p.Description().Title != "", Words: p.Description().Title},
		{Act: "varnish", Done: p.Stage() == record.StageVarnished, Words: say.VarnishLine()},
		{Act: "label", Done: labelled},
		{Act: "certificate", Done: issued, Words: d.c.Fill("{at, if {{at:on}}}", record.With("at", c.At))},
		{Act: "handover", Done: away, Words: d.c.Fill("{how, if {{how}}}", record.With("how", h.Body.How))},
	} {
		l.Name = d.say("act-" + l.Act)
		if !d.ReadOnly {
			l.Link = d.links(url.Values{"panel": {string(p.Number)}, "back": {"/finish/" + string(p.Number)}}, l.Act)[0].Link
		}
		body.Lines = append(body.Lines, l)
	}
	return d.show("finish", d.say("page-finish", record.With("panel", p.Number), record.With("title", p.Description().Title)), body)
}

type finishLine struct {
	Act, Name, Words, Link string
	Done                   bool
}

func (d *desk) p(p *record.Panel) *tell.Teller { return tell.New(d.c, d.shop, p) }

// dossier shows all that a conservator asks.
func (d *desk) dossier() error {
	_, doc, err := papers.Dossier(d.ctx, d.Studio, d.r.PathValue("panel"))
	if err != nil {
		return err
	}
	data, err := doc.PDF()
	if err != nil {
		return err
	}
	return d.pdf(data)
}

// preview shows a paper before it is printed or issued.
func (d *desk) preview() error {
	panels := ticked(d.r.URL.Query())
	switch d.r.PathValue("paper") {
	case "label":
		v, err := d.Studio.LookWhole(d.ctx, panels, nil)
		if err != nil {
			return err
		}
		o, err := papers.Usual(v.Shop.Studio)
		if err != nil {
			return err
		}
		o.Preview = true
		l, err := papers.Print(d.ctx, v, o)
		if err != nil {
			return err
		}
		return d.pdf(l.PDF)
	case "certificate":
		c, err := papers.Issue(d.ctx, &studio.Session{Book: d.Studio.Book, Clock: d.Studio.Clock}, papers.CertificateOrder{Panel: strings.Join(panels, ","), Preview: true})
		if err != nil {
			return err
		}
		return d.pdf(c.PDF)
	}
	return noPage("there is no such paper")
}

func (d *desk) pdf(data []byte) error {
	d.w.Header().Set("Content-Type", "application/pdf")
	d.w.Header().Set("Content-Disposition", "inline")
	_, err := d.w.Write(data)
	return err
}

// paper hands a paper out that left the studio. One that prints the owner's
// name or a price is private.
func (d *desk) paper() error {
	f, ok := kept.Find(d.shop, func(f kept.File) bool {
		return f.Folder == kept.Papers && f.SHA256 == d.r.PathValue("sum") && !(f.Private && d.ReadOnly)
	})
	if !ok {
		return noPage("no such paper left the studio")
	}
	data, err := kept.Read(d.Studio.Book.Path(), f)
	if err != nil {
		return err
	}
	return d.pdf(data)
}
