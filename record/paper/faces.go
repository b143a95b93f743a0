package paper

import (
	"fmt"
	"sync"

	"github.com/go-fonts/dejavu/dejavusans"
	"github.com/go-fonts/dejavu/dejavusansbold"
	"github.com/go-fonts/dejavu/dejavusansmono"
	"github.com/go-fonts/dejavu/dejavuserif"
	"github.com/go-fonts/dejavu/dejavuserifbold"
	"github.com/go-fonts/liberation/liberationmonoregular"
	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansitalic"
	"github.com/go-fonts/liberation/liberationsansregular"
	"github.com/go-fonts/liberation/liberationserifbold"
	"github.com/go-fonts/liberation/liberationserifitalic"
	"github.com/go-fonts/liberation/liberationserifregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// A face is one cut of type. Each has fall-backs for characters it lacks.
type face int

// Serif faces are for pages to be read, sans faces for labels, mono for
// digests and keys, where every character must be told from every other.
// Style.cut counts on the order.
const (
	serif face = iota
	serifItalic
	serifBold
	sans
	sansItalic
	sansBold
	mono
)

// A cut is a font file that has been parsed, with what was looked up in it.
type cut struct {
	key  string // name by which the drawing library knows it
	file []byte
	css  string // font properties for SVG

	mu     sync.Mutex
	font   *sfnt.Font
	buf    sfnt.Buffer
	glyphs map[rune]glyphMetric
	kerns  map[[2]rune]int
}

// A glyphMetric holds an advance in thousandths of an em.
type glyphMetric struct {
	index   sfnt.GlyphIndex
	advance int
}

const (
	cssSerif = `font-family="Liberation Serif, DejaVu Serif, serif"`
	cssSans  = `font-family="Liberation Sans, DejaVu Sans, sans-serif"`
	cssMono  = `font-family="Liberation Mono, DejaVu Sans Mono, monospace"`
	cssBold  = ` font-weight="bold"`
	cssSlant = ` font-style="italic"`
)

var (
	cutSerif       = newCut("serif", liberationserifregular.TTF, cssSerif)
	cutSerifItalic = newCut("serifitalic", liberationserifitalic.TTF, cssSerif+cssSlant)
	cutSerifBold   = newCut("serifbold", liberationserifbold.TTF, cssSerif+cssBold)
	cutSans        = newCut("sans", liberationsansregular.TTF, cssSans)
	cutSansItalic  = newCut("sansitalic", liberationsansitalic.TTF, cssSans+cssSlant)
	cutSansBold    = newCut("sansbold", liberationsansbold.TTF, cssSans+cssBold)
	cutMono        = newCut("mono", liberationmonoregular.TTF, cssMono)

	cutWideSerif     = newCut("wideserif", dejavuserif.TTF, cssSerif)
	cutWideSerifBold = newCut("wideserifbold", dejavuserifbold.TTF, cssSerif+cssBold)
	cutWideSans      = newCut("widesans", dejavusans.TTF, cssSans)
	cutWideSansBold  = newCut("widesansbold", dejavusansbold.TTF, cssSans+cssBold)
	cutWideMono      = newCut("widemono", dejavusansmono.TTF, cssMono)
)

// cuts lists for each face where a character is looked for, in order.
var cuts = map[face][]*cut{
	serif:       {cutSerif, cutWideSerif, cutWideSans},
	serifItalic: {cutSerifItalic, cutWideSerif, cutWideSans},
	serifBold:   {cutSerifBold, cutWideSerifBold, cutWideSansBold, cutWideSans},
	sans:        {cutSans, cutWideSans},
	sansItalic:  {cutSansItalic, cutWideSans},
	sansBold:    {cutSansBold, cutWideSansBold, cutWideSans},
	mono:        {cutMono, cutWideMono, cutWideSans},
}

func newCut(key string, file []byte, css string) *cut {
	return &cut{key: key, file: file, css: css, glyphs: map[rune]glyphMetric{}, kerns: map[[2]rune]int{}}
}

// em is the size at which metrics are read, so that they come out in
// thousandths of an em: the unit of the width tables in a PDF font.
var em = fixed.I(1000)

// parsed returns the font; the caller holds the lock. The files are part of
// the program, so one that does not parse is a broken build.
func (c *cut) parsed() *sfnt.Font {
	if c.font == nil {
		f, err := sfnt.Parse(c.file)
		if err != nil {
			panic(fmt.Sprintf("face %s: %v", c.key, err))
		}
		c.font = f
	}
	return c.font
}

// lookUp reads the metric of a character; index 0 means that the cut lacks it.
func (c *cut) lookUp(r rune) glyphMetric {
	if m, ok := c.glyphs[r]; ok {
		return m
	}
	var m glyphMetric
	f := c.parsed()
	if index, err := f.GlyphIndex(&c.buf, r); err == nil && index != 0 {
		if advance, err := f.GlyphAdvance(&c.buf, index, em, font.HintingNone); err == nil {
			m = glyphMetric{index, advance.Round()}
		}
	}
	c.glyphs[r] = m
	return m
}

// kern returns the space to add between two characters, in thousandths of an em.
func (c *cut) kern(a, b rune) int {
	c.mu.Lock()
	defer c.mu.Unlock()
	pair := [2]rune{a, b}
	if k, ok := c.kerns[pair]; ok {
		return k
	}
	k := 0
	if v, err := c.parsed().Kern(&c.buf, c.lookUp(a).index, c.lookUp(b).index, em, font.HintingNone); err == nil {
		k = v.Round()
	}
	c.kerns[pair] = k
	return k
}

// advance is that of the whole cluster, in thousandths of an em, if the cut has
// every character of it.
func (c *cut) advance(cluster []rune) (sum int, ok bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	for _, r := range cluster {
		m := c.lookUp(r)
		if m.index == 0 {
			return 0, false
		}
		sum += m.advance
	}
	return sum, true
}

// cutFor finds the first cut of the face that has the whole cluster, and its
// advance: a letter and its marks come from one font, or they do not fit each
// other.
func cutFor(face face, cluster []rune) (c *cut, thousandths int, ok bool) {
	for _, c := range cuts[face] {
		if sum, ok := c.advance(cluster); ok {
			return c, sum, true
		}
	}
	return nil, 0, false
}
