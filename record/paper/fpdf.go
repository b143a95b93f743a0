package paper

// This is the one file that imports the PDF library. All it must do is page
// content, fonts and images; see finish.go for everything else.

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"math"
	"time"

	"github.com/go-pdf/fpdf"
)

// A surface paints shapes on pages. The first error stays.
type surface struct {
	file *fpdf.Fpdf
	// pdf is the page that is painted: a drawing of its own, with the fonts of
	// the file, so that its content can be packed while the next is painted.
	pdf   *fpdf.Fpdf
	err   error
	fonts map[string]bool
	font  piece // of the last text, as long as it holds
	// at maps the innermost group to the page, for what the library does not
	// transform itself.
	at matrix
}

// newSurface starts a file. The library would write the hour of the day where
// no date is given; the dates that count are written by the finishing pass.
func newSurface() *surface {
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: 210, Ht: 297}})
	pdf.SetCatalogSort(true)
	pdf.SetCompression(false)
	pdf.SetCreationDate(time.Unix(0, 0).UTC())
	pdf.SetModificationDate(time.Unix(0, 0).UTC())
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	return &surface{file: pdf, fonts: map[string]bool{}}
}

// page adds a page to the file, and returns what is to stand on it, which was
// made ready before.
func (s *surface) page(p *Page, shapes []Shape) []byte {
	size := fpdf.SizeType{Wd: p.WidthMM, Ht: p.HeightMM}
	s.file.AddPageFormat("P", size)
	s.at, s.font = identity, piece{}
	return s.file.CreateTemplateCustom(fpdf.PointType{}, size, func(t *fpdf.Tpl) {
		s.pdf = &t.Fpdf
		if s.all(shapes); t.Err() {
			s.fail(t.Error())
		}
	}).Bytes()
}

func (s *surface) bytes() ([]byte, error) {
	if s.err != nil {
		return nil, s.err
	}
	var b bytes.Buffer
	if err := s.file.Output(&b); err != nil {
		return nil, fmt.Errorf("cannot write page content: %w", err)
	}
	return b.Bytes(), nil
}

func (s *surface) fail(err error) {
	if s.err == nil {
		s.err = err
	}
}

func (s *surface) all(shapes []Shape) {
	for _, shape := range shapes {
		shape.paint(s)
	}
}

// style sets weight and fill and returns the library's word for painting so.
func (s *surface) style(weight float64, fill Fill) string {
	mode := ""
	if weight > 0 {
		s.pdf.SetLineWidth(weight)
		mode = "D"
	}
	switch fill {
	case Black:
		s.pdf.SetFillColor(0, 0, 0)
		mode = "F" + mode
	case White:
		s.pdf.SetFillColor(255, 255, 255)
		mode = "F" + mode
	}
	return mode
}

func (l Line) paint(s *surface) {
	s.style(l.WeightMM, open)
	if len(l.Dash) > 0 {
		s.pdf.SetDashPattern(l.Dash, 0)
		defer s.pdf.SetDashPattern(nil, 0)
	}
	s.pdf.Line(l.X1, l.Y1, l.X2, l.Y2)
}

// black undoes a white fill. The end of a group or clip takes the file back to
// the colour before it, of which the library knows nothing: text after it would
// be set in white. So the colour is black but while something white is drawn.
func (s *surface) black(after Fill) {
	if after == White {
		s.pdf.SetFillColor(0, 0, 0)
	}
}

func (r Rect) paint(s *surface) {
	defer s.black(r.Fill)
	if mode := s.style(r.WeightMM, r.Fill); mode != "" {
		s.pdf.Rect(r.X, r.Y, r.W, r.H, mode)
	}
}

func (s *surface) trace(points []Point) {
	for i, p := range points {
		if i == 0 {
			s.pdf.MoveTo(p.X, p.Y)
		} else {
			s.pdf.LineTo(p.X, p.Y)
		}
	}
}

func (p Polygon) paint(s *surface) {
	defer s.black(p.Fill)
	mode := s.style(p.WeightMM, p.Fill)
	if mode == "" || len(p.Points) < 3 {
		return
	}
	s.trace(p.Points)
	s.pdf.ClosePath()
	s.pdf.DrawPath(mode)
}

func (l Strokes) paint(s *surface) {
	if len(l.Lines) == 0 {
		return
	}
	s.style(l.WeightMM, open)
	for _, points := range l.Lines {
		s.trace(points)
	}
	s.pdf.DrawPath("D")
}

func (r Rects) paint(s *surface) {
	if len(r.Areas) == 0 {
		return
	}
	mode := s.style(0, Black)
	for _, a := range r.Areas {
		s.trace([]Point{{a.X, a.Y}, {a.X + a.W, a.Y}, {a.X + a.W, a.Y + a.H}, {a.X, a.Y + a.H}})
		s.pdf.ClosePath()
	}
	s.pdf.DrawPath(mode)
}

func (p placed) paint(s *surface) { p.ready().paint(s) }

// drawn is a symbol with its path, in whole modules from its corner.
type drawn struct {
	placed
	path []byte
}

// paint writes the path itself, whose corners are whole modules in a space of
// their own: the library would write ten times as much.
func (d drawn) paint(s *surface) {
	s.style(0, Black)
	k := s.pdf.GetConversionRatio()
	_, height := s.pdf.GetPageSize()
	s.pdf.TransformBegin()
	s.pdf.RawWriteStr(fmt.Sprintf("%.5f 0 0 %.5f %.5f %.5f cm", d.module*k, -d.module*k, d.x*k, (height-d.y)*k))
	s.pdf.RawWriteBuf(bytes.NewReader(d.path))
	s.pdf.TransformEnd()
}

func (t Text) paint(s *surface) {
	t.eachLine(func(x, y float64, l line) {
		for _, p := range l.pieces {
			s.piece(p, x+p.x, y-p.risePt*mmPerPt)
		}
	})
}

func (s *surface) piece(p piece, x, y float64) {
	if !s.fonts[p.cut.key] {
		s.file.AddUTF8FontFromBytes(p.cut.key, "", p.cut.file)
		s.fonts[p.cut.key] = true
	}
	if p.cut != s.font.cut || p.sizePt != s.font.sizePt {
		s.pdf.SetFont(p.cut.key, "", p.sizePt)
		s.font = p
	}
	if p.trackPt != 0 {
		s.pdf.RawWriteStr(fmt.Sprintf("%.3f Tc\n", p.trackPt))
		defer s.pdf.RawWriteStr("0 Tc\n")
	}
	s.pdf.Text(x, y, p.text)
}

func (p Picture) paint(s *surface) {
	data, err := encodePicture(p.Image)
	if err != nil {
		s.fail(err)
		return
	}
	name := fmt.Sprintf("%x", sha256.Sum256(data))
	opt := fpdf.ImageOptions{ImageType: "JPEG", AllowNegativePosition: true}
	for _, f := range []*fpdf.Fpdf{s.file, s.pdf} {
		f.RegisterImageOptionsReader(name, opt, bytes.NewReader(data))
	}
	s.pdf.ImageOptions(name, p.X, p.Y, p.W, p.H, false, opt, 0, "")
}

func (l Link) paint(s *surface) {
	if err := checkLink(l.URL); err != nil {
		s.fail(err)
		return
	}
	box := s.at.bounds(l.X, l.Y, l.W, l.H)
	s.file.LinkString(box.X, box.Y, box.W, box.H, l.URL)
}

func (c Clip) paint(s *surface) {
	s.pdf.ClipRect(c.X, c.Y, c.W, c.H, false)
	s.all(c.Shapes)
	s.pdf.ClipEnd()
	s.font = piece{} // what was set inside has ended
}

func (g Group) paint(s *surface) {
	outer := s.at
	s.at = outer.times(turned(g.X, g.Y, g.Degrees))
	s.pdf.TransformBegin()
	s.pdf.TransformTranslate(g.X, g.Y)
	s.pdf.TransformRotate(-g.Degrees, 0, 0)
	s.all(g.Shapes)
	s.pdf.TransformEnd()
	s.font = piece{}
	s.at = outer
}

// A matrix maps (x, y) to (a·x + c·y + e, b·x + d·y + f).
type matrix struct{ a, b, c, d, e, f float64 }

var identity = matrix{a: 1, d: 1}

// turned moves the origin and then turns clockwise, y growing downwards.
func turned(x, y, degrees float64) matrix {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return matrix{cos, sin, -sin, cos, x, y}
}

func (m matrix) times(n matrix) matrix {
	return matrix{
		m.a*n.a + m.c*n.b, m.b*n.a + m.d*n.b,
		m.a*n.c + m.c*n.d, m.b*n.c + m.d*n.d,
		m.a*n.e + m.c*n.f + m.e, m.b*n.e + m.d*n.f + m.f,
	}
}

// bounds returns the upright rectangle around the mapped one.
func (m matrix) bounds(x, y, w, h float64) Rect {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, p := range []Point{{x, y}, {x + w, y}, {x, y + h}, {x + w, y + h}} {
		px, py := m.a*p.X+m.c*p.Y+m.e, m.b*p.X+m.d*p.Y+m.f
		x0, y0, x1, y1 = min(x0, px), min(y0, py), max(x1, px), max(y1, py)
	}
	return Rect{X: x0, Y: y0, W: x1 - x0, H: y1 - y0}
}
