package dossier

import (
	"strconv"
	"strings"

	"backleaf/record"
	"backleaf/record/paper"
	"backleaf/record/tell"
)

// Book is the book that a dossier is made from: the head of its journal, and
// its photographs.
type Book struct {
	Entries int64
	Root    string // of the hash tree, hex; empty if not at hand

	// Photograph reads the file of a photograph; nil if none are at hand.
	Photograph func(record.Photograph) ([]byte, error)
}

// New makes the dossier of a panel. The workshop should hold all the panels
// that share an entry with it, so that what was used is shared out right.
func New(c *tell.Catalogue, w *record.Workshop, p *record.Panel, book Book) *Document {
	b := &builder{Teller: tell.New(c, w, p), c: c, d: c.Dossier, w: w, p: p, book: book}
	doc := &Document{
		Language: c.Tag.String(), Number: b.Number(), Title: b.PrintTitle(), Kind: string(b.d.T("kind")), Author: b.Maker(), Letter: w.Studio.Paper == "letter",
		Running: b.d.T("running").With("number", b.Number(), "title", b.PrintTitle()),
		PageOf: func(n, all int) string {
			return b.d.T("page").With("n", strconv.Itoa(n), "all", strconv.Itoa(all))
		},
		Continued: func(title string) string { return b.d.T("continued").With("title", title) },
	}
	doc.By = doc.Author
	if painted, _ := p.PaintedBetween(); p.Description().Made.Known() || !painted.IsZero() {
		doc.By += ", " + b.DateOfWork()
	}
	doc.Made, _ = w.Written.Exact()
	last := strconv.FormatInt(w.Last, 10)
	doc.Lead = []string{b.d.T("lead").With("number", b.Number(), "n", last, "date", b.Day(w.Written)), string(b.d.T("entries"))}
	if w.Studio.Demo {
		doc.Lead = append(doc.Lead, string(b.d.T("demo")))
	}
	doc.Glance = b.glance()
	t := b.d
	for _, s := range []struct {
		title tell.Message
		items []Item
	}{
		{t.T("titles-identification"), b.identification()},
		{t.T("titles-support"), b.support()},
		{t.T("titles-cloth"), b.cloths()},
		{t.T("titles-sealing"), b.layers(isSealing)},
		{t.T("titles-ground"), b.layers(isGround)},
		{t.T("titles-paint"), b.paint()},
		{t.T("titles-coating"), b.coating()},
		{t.T("titles-drawings"), b.drawings()},
		{t.T("titles-steps"), b.steps()},
		{t.T("titles-products"), b.products()},
		{t.T("titles-sensitivity"), b.sensitivity()},
		{t.T("titles-hazards"), b.hazards()},
		{t.T("titles-findings"), b.findings()},
		{t.T("titles-bow"), b.bow()},
		{t.T("titles-history"), b.history()},
		{t.T("titles-batch"), b.batch()},
		{t.T("titles-corrections"), lines(b.Corrections(), b.d.T("no-corrections"))},
		{t.T("titles-gaps"), lines(b.GapsTogether(), b.d.T("no-gaps"))},
		{t.T("titles-verify"), b.verify()},
	} {
		if len(s.items) == 0 {
			s.items = []Item{Text{Text: string(b.d.T("none"))}}
		}
		doc.Sections = append(doc.Sections, Section{string(s.title), s.items})
	}
	return doc
}

type builder struct {
	*tell.Teller
	c       *tell.Catalogue
	d       tell.DossierWords
	w       *record.Workshop
	p       *record.Panel
	book    Book
	figures int
	noted   bool // what an estimated thickness is
}

func lines(texts []string, none tell.Message) []Item {
	if len(texts) == 0 {
		texts = []string{string(none)}
	}
	var out []Item
	for _, s := range texts {
		out = append(out, Text{Text: s})
	}
	return out
}

// pairs collects names and values; what is not recorded says so.
type pairs struct {
	b    *builder
	list Pairs
}

func (ps *pairs) add(name tell.Message, value string) {
	ps.list = append(ps.list, Pair{string(name), ps.b.Said(value)})
}

func (ps *pairs) quantity(name tell.Message, q tell.Quantity) { ps.add(name, ps.b.Quantity(q)) }
func (ps *pairs) word(name tell.Message, w any)               { ps.add(name, ps.b.Word(w)) }

// others adds what else a body says, by the names of its fields.
func (ps *pairs) others(body record.Body, elsewhere ...string) {
	for _, r := range ps.b.c.Others(body, elsewhere...) {
		ps.list = append(ps.list, Pair{ps.b.c.Capital(r.Name), r.Value})
	}
}

func (b *builder) figure(text tell.Message, draw func(w, h float64) ([]paper.Drawing, error)) Figure {
	b.figures++
	return Figure{b.d.T("figures-caption").With("n", strconv.Itoa(b.figures), "text", string(text)), draw}
}

// sentence joins short statements. What was recorded keeps its own full stop.
func (b *builder) sentence(parts ...string) string {
	out := ""
	for _, p := range parts {
		switch {
		case p == "":
		case out == "":
			out = p
		case strings.HasSuffix(out, "."):
			out += " " + b.c.Capital(p)
		default:
			out += "; " + p
		}
	}
	return out
}

// known reports that a text of the record says something.
func known(s string) bool { return s != "" && s != record.Unknown }

// has reports that an amount is recorded.
func has(q tell.Quantity) bool { return !q.IsZero() && !q.IsUnknown() }

func (b *builder) verify() []Item {
	root, n := b.book.Root, strconv.FormatInt(b.book.Entries, 10)
	if root == "" {
		root, n = string(b.d.T("no-head")), strconv.FormatInt(b.w.Last, 10)
	}
	var out []Item
	for _, m := range b.d.Verify {
		out = append(out, Text{Text: m.With("number", b.Number(), "n", n, "root", root)})
	}
	for _, p := range record.Each[record.Photograph](b.p) {
		out = append(out, Text{Text: b.d.T("photograph-digest").With("role", b.Word(p.Body.Role), "entry", b.Entry(p.Seq), "digest", p.Body.SHA256), Small: true})
	}
	return out
}
