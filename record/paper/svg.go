package paper

import (
	"backleaf/record/pattern"
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// A Drawing is a set of shapes with a size, and with words for those who
// cannot see it.
type Drawing struct {
	WidthMM, HeightMM float64
	Title, Desc       string
	Shapes            []Shape
	// ID starts the names of what is referred to inside the SVG; drawings on
	// one web page need different ones.
	ID string
}

// SVG writes the drawing as a document of its own, black on nothing. Title and
// Desc become <title> and <desc>; all text is escaped.
func (d Drawing) SVG() []byte {
	w := &svgWriter{id: escape(d.ID + "-")}
	if d.ID == "" {
		w.id = "drawing-"
	}
	for _, s := range d.Shapes {
		s.svg(w)
	}
	body := w.buf.Bytes()
	face := " " + cssSans // said once for all of its texts, as is their size
	if serif := " " + cssSerif; bytes.Count(body, []byte(serif)) > bytes.Count(body, []byte(face)) {
		face = serif
	}
	body = bytes.ReplaceAll(body, []byte(face), nil)
	if size := mostly(fontSize().FindAllString(string(body), -1)); size != "" {
		body, face = bytes.ReplaceAll(body, []byte(size), nil), face+size
	}
	for _, f := range w.paths {
		if f.repeats == 0 {
			body = bytes.Replace(body, fmt.Appendf(nil, ` id="%s"`, f.id), nil, 1)
		}
	}
	w.buf = bytes.Buffer{}
	w.f(`<svg xmlns="http://www.w3.org/2000/svg" xml:space="preserve" width="%smm" height="%smm" viewBox="0 0 %s %s" role="img" aria-labelledby="%stitle %sdesc"%s>`,
		num(d.WidthMM), num(d.HeightMM), num(d.WidthMM), num(d.HeightMM), w.id, w.id, face)
	w.f(`<title id="%stitle">%s</title><desc id="%sdesc">%s</desc>`, w.id, escape(Clean(d.Title)), w.id, escape(Clean(d.Desc)))
	w.buf.Write(body)
	w.f(`</svg>`)
	return w.buf.Bytes()
}

type svgWriter struct {
	buf   bytes.Buffer
	id    string
	clips int
	paths map[string]*firstPath // by all but their place
}

// firstPath is a path that others repeat elsewhere.
type firstPath struct {
	id      string
	at      Point
	repeats int
}

var fontSize = pattern.Of(` font-size="[^"]*"`)

// mostly is the text that stands most often in a list, the first of several.
func mostly(list []string) (most string) {
	count := map[string]int{}
	for _, s := range list {
		count[s]++
	}
	for _, s := range list {
		if count[s] > count[most] {
			most = s
		}
	}
	return most
}

func (w *svgWriter) f(format string, args ...any) {
	fmt.Fprintf(&w.buf, format+"\n", args...)
}

func (w *svgWriter) all(shapes []Shape) {
	for _, s := range shapes {
		s.svg(w)
	}
}

// num writes a length to a hundredth of a millimetre.
func num(v float64) string {
	s := strconv.FormatFloat(v, 'f', 2, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	switch before, after, ok := strings.Cut(s, "."); {
	case s == "-0":
		return "0"
	case ok && strings.TrimLeft(before, "-") == "0":
		return strings.TrimSuffix(before, "0") + "." + after
	}
	return s
}

func escape(s string) string {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(s)) // a bytes.Buffer does not fail
	return b.String()
}

func paintAttrs(weight float64, fill Fill) string {
	a := [...]string{open: `fill="none"`, Black: `fill="#000"`, White: `fill="#fff"`}[fill]
	if weight > 0 {
		a += fmt.Sprintf(` stroke="#000" stroke-width="%s"`, num(weight))
	}
	return a
}

func (l Line) svg(w *svgWriter) {
	dash := ""
	if len(l.Dash) > 0 {
		parts := make([]string, len(l.Dash))
		for i, d := range l.Dash {
			parts[i] = num(d)
		}
		dash = fmt.Sprintf(` stroke-dasharray="%s"`, strings.Join(parts, " "))
	}
	w.path([][]Point{{{l.X1, l.Y1}, {l.X2, l.Y2}}}, false, paintAttrs(l.WeightMM, open)+dash)
}

func (r Rect) svg(w *svgWriter) {
	w.f(`<rect x="%s" y="%s" width="%s" height="%s" %s/>`, num(r.X), num(r.Y), num(r.W), num(r.H), paintAttrs(r.WeightMM, r.Fill))
}

// pathData is what a path draws, written as short as the grammar of SVG 2 lets it
// (section 9.3.9): a letter only where it changes, a space only where a number
// would run on.
type pathData struct {
	strings.Builder
	letter  byte
	decimal bool // the last number has a point
}

func (d *pathData) put(letter byte, numbers ...float64) {
	after := letter == d.letter
	if !after {
		d.WriteByte(letter)
		d.letter, d.decimal = letter, false
	}
	for _, v := range numbers {
		s := num(v)
		if after && s[0] != '-' && (s[0] != '.' || !d.decimal) {
			d.WriteByte(' ')
		}
		d.WriteString(s)
		after, d.decimal = true, strings.Contains(s, ".")
	}
}

// path draws lines through points, one after the other. Each point is written
// from the one before it, both as rounded from the first of all, so that nothing
// adds up and the same lines elsewhere are the same text, which stands once.
func (w *svgWriter) path(lines [][]Point, close bool, attrs string) {
	if len(lines) == 0 || len(lines[0]) == 0 {
		return
	}
	first := lines[0][0]
	var d pathData
	var x, y float64
	for n, l := range lines {
		for i, p := range l {
			px, py := math.Round((p.X-first.X)*100)/100, math.Round((p.Y-first.Y)*100)/100
			switch dx, dy := px-x, py-y; {
			case i == 0 && n > 0:
				d.letter = 0
				d.put('m', dx, dy)
				d.letter = 'l' // as which what follows it is read
			case i == 0:
			case num(dy) == "0":
				d.put('h', dx)
			case num(dx) == "0":
				d.put('v', dy)
			default:
				d.put('l', dx, dy)
			}
			x, y = px, py
		}
	}
	if close {
		d.WriteByte('z')
	}
	key := d.String() + attrs
	if f, ok := w.paths[key]; ok {
		f.repeats++
		w.f(`<use href="#%s" x="%s" y="%s"/>`, f.id, num(first.X-f.at.X), num(first.Y-f.at.Y))
		return
	}
	if w.paths == nil {
		w.paths = map[string]*firstPath{}
	}
	id := w.id + "p" + itoa(len(w.paths)+1)
	w.paths[key] = &firstPath{id: id, at: first}
	start := pathData{}
	start.put('M', first.X, first.Y)
	w.f(`<path id="%s" d="%s%s" %s/>`, id, start.String(), d.String(), attrs)
}

func (p Polygon) svg(w *svgWriter) {
	w.path([][]Point{p.Points}, true, paintAttrs(p.WeightMM, p.Fill))
}

func (s Strokes) svg(w *svgWriter) { w.path(s.Lines, false, paintAttrs(s.WeightMM, open)) }

// Areas of one size in rows of one pitch, as of a hatching of dots, are drawn as
// dashes: that takes a tenth of the room.
func (r Rects) svg(w *svgWriter) {
	rows := map[string]*strings.Builder{} // by size and pitch
	var sizes []string
	var single strings.Builder
	for i := 0; i < len(r.Areas); {
		a, n, step := r.Areas[i], 1, 0.0
		for ; i+n < len(r.Areas); n++ {
			b, before := r.Areas[i+n], r.Areas[i+n-1]
			if n == 1 {
				step = b.X - a.X
			}
			if num(b.Y) != num(a.Y) || num(b.W) != num(a.W) || num(b.H) != num(a.H) || step <= a.W || math.Abs(b.X-before.X-step) > 1e-6 {
				break
			}
		}
		if n < 3 {
			fmt.Fprintf(&single, "M%s %sh%sv%sh-%sZ", num(a.X), num(a.Y), num(a.W), num(a.H), num(a.W))
			i++
			continue
		}
		size := fmt.Sprintf(`stroke-width="%s" stroke-dasharray="%s %s"`, num(a.H), num(a.W), num(step-a.W))
		if rows[size] == nil {
			rows[size], sizes = &strings.Builder{}, append(sizes, size)
		}
		fmt.Fprintf(rows[size], "M%s %sH%s", num(a.X), num(a.Y+a.H/2), num(r.Areas[i+n-1].X+a.W))
		i += n
	}
	if single.Len() > 0 {
		w.f(`<path d="%s" fill="#000"/>`, single.String())
	}
	for _, size := range sizes {
		w.f(`<path d="%s" fill="none" stroke="#000" %s/>`, rows[size].String(), size)
	}
}

// Each run of a font has its length given, so that a viewer with other fonts
// still keeps the lines as they were set.
func (t Text) svg(w *svgWriter) {
	t.eachLine(func(x, y float64, l line) {
		for i := 0; i < len(l.pieces); {
			p := l.pieces[i]
			text, end := p.text, p.x+p.width
			for i++; i < len(l.pieces); i++ {
				q := l.pieces[i]
				if q.cut != p.cut || q.sizePt != p.sizePt || q.risePt != p.risePt || q.trackPt != p.trackPt {
					break
				}
				text, end = text+q.text, q.x+q.width
			}
			track := ""
			if p.trackPt != 0 {
				track = fmt.Sprintf(` letter-spacing="%s"`, num(p.trackPt*mmPerPt))
			}
			w.f(`<text x="%s" y="%s" font-size="%s" textLength="%s" lengthAdjust="spacingAndGlyphs" %s%s>%s</text>`,
				num(x+p.x), num(y-p.risePt*mmPerPt), num(p.sizePt*mmPerPt), num(end-p.x), p.cut.css, track, escape(text))
		}
	})
}

func (p Picture) svg(w *svgWriter) {
	data, err := encodePicture(p.Image)
	if err != nil {
		return // nothing that could be seen: empty or beyond what a page holds
	}
	w.f(`<image x="%s" y="%s" width="%s" height="%s" preserveAspectRatio="none" href="data:image/jpeg;base64,%s"><title>%s</title></image>`,
		num(p.X), num(p.Y), num(p.W), num(p.H), base64.StdEncoding.EncodeToString(data), escape(Clean(p.Title)))
}

func (l Link) svg(w *svgWriter) {
	if checkLink(l.URL) == nil {
		w.f(`<a href="%s"><rect x="%s" y="%s" width="%s" height="%s" fill="none" pointer-events="all"/></a>`,
			escape(l.URL), num(l.X), num(l.Y), num(l.W), num(l.H))
	}
}

func (c Clip) svg(w *svgWriter) {
	w.clips++
	id := w.id + "clip" + itoa(w.clips)
	w.f(`<clipPath id="%s"><rect x="%s" y="%s" width="%s" height="%s"/></clipPath><g clip-path="url(#%s)">`,
		id, num(c.X), num(c.Y), num(c.W), num(c.H), id)
	w.all(c.Shapes)
	w.f(`</g>`)
}

func (g Group) svg(w *svgWriter) {
	turn := ""
	if g.Degrees != 0 {
		turn = fmt.Sprintf(" rotate(%s)", num(g.Degrees))
	}
	w.f(`<g transform="translate(%s %s)%s">`, num(g.X), num(g.Y), turn)
	w.all(g.Shapes)
	w.f(`</g>`)
}

// At places the drawing on a page with its top left corner at x, y.
func (d Drawing) At(x, y float64) Shape { return Group{X: x, Y: y, Shapes: d.Shapes} }
