package paper

import (
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
	face := " " + cssSans // said once for all of its texts
	if serif := " " + cssSerif; bytes.Count(body, []byte(serif)) > bytes.Count(body, []byte(face)) {
		face = serif
	}
	body = bytes.ReplaceAll(body, []byte(face), nil)
	w.buf = bytes.Buffer{}
	w.f(`<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" role="img" aria-labelledby="%stitle %sdesc"%s>`,
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
	w.f(`<path d="M%s %sL%s %s" %s%s/>`, num(l.X1), num(l.Y1), num(l.X2), num(l.Y2), paintAttrs(l.WeightMM, open), dash)
}

func (r Rect) svg(w *svgWriter) {
	w.f(`<rect x="%s" y="%s" width="%s" height="%s" %s/>`, num(r.X), num(r.Y), num(r.W), num(r.H), paintAttrs(r.WeightMM, r.Fill))
}

// pathData writes each point after the first from the one before it, as they
// were rounded, so that nothing adds up.
func pathData(points []Point) string {
	var b strings.Builder
	var x, y float64
	for i, p := range points {
		px, py := math.Round(p.X*100)/100, math.Round(p.Y*100)/100
		b.WriteString(map[bool]string{true: "M", false: "l"}[i == 0])
		b.WriteString(num(px-x) + " " + num(py-y))
		x, y = px, py
	}
	return b.String()
}

func (p Polygon) svg(w *svgWriter) {
	w.f(`<path d="%sZ" %s/>`, pathData(p.Points), paintAttrs(p.WeightMM, p.Fill))
}

func (s Strokes) svg(w *svgWriter) {
	var d strings.Builder
	for _, l := range s.Lines {
		d.WriteString(pathData(l))
	}
	if d.Len() > 0 {
		w.f(`<path d="%s" %s/>`, d.String(), paintAttrs(s.WeightMM, open))
	}
}

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

// Each run of a font is one tspan with its length given, so that a viewer
// with other fonts still keeps the lines as they were set.
func (t Text) svg(w *svgWriter) {
	t.eachLine(func(x, y float64, l line) {
		if len(l.pieces) == 0 {
			return
		}
		var b strings.Builder
		b.WriteString(`<text xml:space="preserve">`)
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
			fmt.Fprintf(&b, `<tspan x="%s" y="%s" font-size="%s" textLength="%s" lengthAdjust="spacingAndGlyphs" %s%s>%s</tspan>`,
				num(x+p.x), num(y-p.risePt*mmPerPt), num(p.sizePt*mmPerPt), num(end-p.x), p.cut.css, track, escape(text))
		}
		b.WriteString(`</text>`)
		w.f("%s", b.String())
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
