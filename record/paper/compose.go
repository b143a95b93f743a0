package paper

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

const mmPerPt = 25.4 / 72

func itoa(n int) string { return strconv.Itoa(n) }

// A glyph is one character cluster on its way to a line.
type glyph struct {
	text    string
	first   rune
	cut     *cut
	sizePt  float64
	risePt  float64
	advance float64 // mm, tracking included
	kern    float64 // mm before it, when it does not start a line
	leadPt  float64
	bodyPt  float64 // size of its style, which gives the line its baseline
	trackPt float64 // space after each character
	link    bool    // part of a web or mail address
	held    bool    // a space that holds together what it stands between
}

// lineBreak marks a forced end of line among the glyphs.
func (g glyph) lineBreak() bool { return g.first == '\n' }

// breaks reports whether a line may end at this space, which is then dropped.
// Thin and no-break spaces hold together what they stand between.
func (g glyph) breaks() bool { return !g.held && isBlank(g.text) }

func isBlank(text string) bool {
	switch text { // a space that carries a mark is not one
	case " ", "\u2002", "\u2003", "\u3000":
		return true
	}
	return false
}

// workings are glyphs of texts that were set; a block holds none of them.
var workings sync.Pool

// Compose sets text in lines of at most widthMM. Lines break at spaces and
// after hyphens and dashes between letters, but not between a number and its
// unit or a number and a number. An address longer than a line breaks after "/"
// and "."; any other word that long breaks where it must, without a hyphen,
// since a hyphen could be taken for part of a number or link, and
// [Block.Broken] says so. A "\n" ends a line. A width of 0 or less
// sets no limit. Digits around U+2044 (fraction slash) become a fraction.
//
// The error is a [GlyphError] if a character cannot be printed.
func Compose(widthMM float64, spans ...Span) (Block, error) {
	work, _ := workings.Get().(*[]glyph)
	if work == nil {
		work = &[]glyph{}
	}
	defer workings.Put(work)
	glyphs := (*work)[:0]
	for _, s := range spans {
		var err error
		if glyphs, err = shape(glyphs, s); err != nil {
			return Block{}, err
		}
	}
	*work = glyphs
	kernPairs(glyphs)
	hold(glyphs)
	return breakLines(glyphs, widthMM), nil
}

// shape adds the glyphs of a span.
func shape(out []glyph, s Span) ([]glyph, error) {
	if !(s.Style.SizePt > 0 && s.Style.LeadPt > 0) {
		return nil, fmt.Errorf("cannot set text: style of %g pt on %g pt", s.Style.SizePt, s.Style.LeadPt)
	}
	text := Clean(s.Text)
	if s.Style.Caps {
		text = strings.ToUpper(text)
	}
	runes := []rune(text)
	parts := fractions(runes)
	out = slices.Grow(out, len(runes))
	for i := 0; i < len(runes); {
		if runes[i] == '\n' {
			out = append(out, glyph{first: '\n', leadPt: s.Style.LeadPt, bodyPt: s.Style.SizePt})
			i, text = i+1, text[1:]
			continue
		}
		n, bytes := 1, utf8.RuneLen(runes[i])
		for i+n < len(runes) && runes[i+n] > unicode.MaxLatin1 && unicode.In(runes[i+n], unicode.Mn, unicode.Me) {
			bytes += utf8.RuneLen(runes[i+n])
			n++
		}
		g, err := s.glyph(text[:bytes], runes[i:i+n], parts[i])
		if err != nil {
			return nil, err
		}
		text = text[bytes:]
		if i += n; g.text == ThinSpace && i < len(runes) && parts[i] == numerator {
			g.advance *= wholeToFraction // the raised figure leaves white of its own
		}
		out = append(out, g)
	}
	return out, nil
}

func (s Span) glyph(text string, cluster []rune, part fractionPart) (glyph, error) {
	for _, r := range cluster {
		if why := unprintable(r); why != "" {
			return glyph{}, &GlyphError{r, s.Field, why}
		}
	}
	c, thousandths, ok := cutFor(s.Style.face, cluster)
	if !ok {
		return glyph{}, &GlyphError{missing(s.Style.face, cluster), s.Field, "no face has it"}
	}
	size, rise := s.Style.SizePt, 0.0
	if part != whole {
		size = min(size, max(size*fractionSize, smallestFigurePt))
	}
	if part == numerator {
		rise = (s.Style.SizePt - size) * capitalHeight
	}
	g := glyph{text: text, first: cluster[0], cut: c, sizePt: size, risePt: rise,
		leadPt: s.Style.LeadPt, bodyPt: s.Style.SizePt, trackPt: s.Style.TrackEm * s.Style.SizePt}
	g.advance = (float64(thousandths)/1000*size + float64(len(cluster))*g.trackPt) * mmPerPt
	return g, nil
}

// missing names the character to complain about: the first that no face of
// the list has at all, or else the first mark that does not go with its letter.
func missing(face face, cluster []rune) rune {
	for _, r := range cluster {
		if _, _, ok := cutFor(face, []rune{r}); !ok {
			return r
		}
	}
	return cluster[len(cluster)-1]
}

type fractionPart int

const (
	whole fractionPart = iota
	numerator
	denominator
)

// Size of fraction figures, and height of capitals and figures, in parts of the
// size of type: the top of the numerator stands level with the capitals.
const (
	fractionSize    = 0.64
	capitalHeight   = 0.72
	wholeToFraction = 0.8 // of the space between a whole number and its fraction; with less, programs that copy text see none
)

// fractions marks the figures on both sides of each fraction slash.
func fractions(runes []rune) []fractionPart {
	parts := make([]fractionPart, len(runes))
	digit := func(i int) bool { return i >= 0 && i < len(runes) && runes[i] >= '0' && runes[i] <= '9' }
	for i, r := range runes {
		if r != '\u2044' || !digit(i-1) || !digit(i+1) {
			continue
		}
		for j := i - 1; digit(j); j-- {
			parts[j] = numerator
		}
		for j := i + 1; digit(j); j++ {
			parts[j] = denominator
		}
	}
	return parts
}

// kernPairs fits neighbours of one font and size to each other.
func kernPairs(glyphs []glyph) {
	for i := 1; i < len(glyphs); i++ {
		a, b := &glyphs[i-1], &glyphs[i]
		if a.cut == nil || a.cut != b.cut || a.sizePt != b.sizePt || a.risePt != b.risePt {
			continue
		}
		last, _ := utf8.DecodeLastRuneInString(a.text)
		b.kern = float64(b.cut.kern(last, b.first)) / 1000 * b.sizePt * mmPerPt
	}
}

// breakLines fills lines greedily.
func breakLines(glyphs []glyph, width float64) Block {
	var b Block
	for len(glyphs) > 0 {
		end, next, broken := lineEnd(glyphs, width)
		b.lines = append(b.lines, newLine(glyphs[:end], glyphs[0]))
		b.broken = b.broken || broken
		if next == len(glyphs) && glyphs[next-1].lineBreak() {
			break // text that ends in a line break has no empty last line
		}
		glyphs = glyphs[next:]
	}
	return b
}

// lineEnd returns where the first line ends, where the next one starts, and
// whether a word was broken between them.
// Every call takes at least one glyph, so that any width comes to an end.
func lineEnd(glyphs []glyph, width float64) (end, next int, broken bool) {
	x, good, goodNext := 0.0, 0, 0
	for i, g := range glyphs {
		if g.lineBreak() {
			return trimSpaces(glyphs, i), i + 1, false
		}
		if i > 0 {
			x += g.kern
		}
		x += g.advance
		if g.breaks() {
			if good = trimSpaces(glyphs, i); good == 0 {
				good = i + 1 // a line of spaces only
			}
			goodNext = i + 1
			continue
		}
		if width > 0 && x > width+1e-6 && i > 0 {
			if goodNext > 0 {
				return good, goodNext, false
			}
			cutAt, broken := longWordEnd(glyphs, i)
			return cutAt, cutAt, broken
		}
		if breaksAfter(glyphs, i) {
			good, goodNext = i+1, i+1
		}
	}
	return trimSpaces(glyphs, len(glyphs)), len(glyphs), false
}

func trimSpaces(glyphs []glyph, end int) int {
	for end > 0 && glyphs[end-1].breaks() {
		end--
	}
	return end
}

// breaksAfter reports whether a line may end after a hyphen or dash; it may
// between letters, never inside numbers such as KB26-0142.
func breaksAfter(glyphs []glyph, i int) bool {
	switch glyphs[i].first {
	case '-', '\u2013', '\u2014':
		return i > 0 && i+1 < len(glyphs) && !glyphs[i].link && unicode.IsLetter(glyphs[i-1].first) && unicode.IsLetter(glyphs[i+1].first)
	}
	return false
}

// longWordEnd chooses where a word of which n glyphs fill the line is broken, and whether
// that is a place where it must not be: an address may go on after "/" and ".",
// anything else only where nothing better is.
func longWordEnd(glyphs []glyph, n int) (end int, broken bool) {
	if glyphs[n].link {
		for i := n - 1; i >= 0; i-- {
			if glyphs[i].parts() && !glyphs[i+1].parts() {
				return i + 1, false
			}
		}
		return n, true
	}
	for i := n - 1; i > n/2; i-- {
		if strings.ContainsRune("/-._@:?&=,;\u2013\u2014", glyphs[i].first) {
			return i + 1, true
		}
	}
	return n, true
}

// parts reports whether an address may go on in the next line after this sign.
func (g glyph) parts() bool { return g.first == '/' || g.first == '.' }
