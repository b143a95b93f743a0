package label

import (
	"backleaf/record/paper"
)

// ending sets the foot from the bottom up: where the record is, in words and
// letters, which record that is, and its fingerprint.
func (a *arranger) ending() error {
	if a.part > 1 {
		return nil
	}
	var texts []Field
	for _, f := range []Field{Fingerprint, Issue, Where} {
		if f == Where || a.keep[f] {
			texts = append(texts, f)
		}
	}
	below := paper.Block{}
	for i, f := range texts {
		text := a.in.Where
		if f != Where {
			text = a.in.text(f)
		}
		b, err := a.fit(a.foot, 0, true, paper.Span{Style: a.small(), Text: text, Field: string(f)})
		if err != nil {
			return err
		}
		// Two short lines stand side by side.
		if i > 0 && b.Lines() == 1 && below.Lines() == 1 {
			const gap = 4
			width := a.beside(a.foot, a.foot+below.HeightMM())
			if at := a.boxes[len(a.boxes)-1]; at.X == a.left() && b.WidthMM()+gap+at.W <= width {
				a.boxes = a.boxes[:len(a.boxes)-1]
				a.text(f, a.left(), a.foot, b)
				a.text(at.Field, a.left()+width-at.W, a.foot, below)
				below = paper.Block{}
				continue
			}
		}
		a.foot -= b.HeightMM()
		a.text(f, a.left(), a.foot, b)
		below = b
	}
	a.foot -= 0.8
	return nil
}

// A hand needs lines this far apart; there are so many for remarks at most.
const (
	rowMM       = 6.0
	moreLines   = 5
	hairMM      = 0.12
	leastLineMM = 25.0
	signatureMM = 70.0
)

// lines gives the room that is left to signature and remarks.
func (a *arranger) lines() error {
	if a.foot < a.y {
		return errNoRoom
	}
	var captions []Field
	for _, f := range []Field{Signature, Remarks} {
		if a.keep[f] {
			captions = append(captions, f)
		}
	}
	if len(captions) == 0 {
		return nil
	}
	count := min(int((a.foot-a.y)/rowMM), moreLines)
	if !a.keep[Remarks] {
		count = min(count, 1)
	}
	if count < len(captions) {
		return errNoRoom
	}
	words := map[Field]string{Signature: string(a.words.T("signature")), Remarks: string(a.words.T("remarks"))}
	if a.in.Blank {
		words[Signature] = string(a.words.T("painted-by"))
	}
	names, indent := map[Field]paper.Block{}, 0.0
	for _, f := range captions {
		b, err := a.compose(0, paper.Span{Style: a.small(), Text: words[f]})
		if err != nil {
			return err
		}
		names[f], indent = b, max(indent, b.WidthMM()+1.2)
	}
	y := a.foot - float64(count)*rowMM
	for i := range count {
		top, from := y+float64(i)*rowMM, a.left()
		to := from + a.beside(top, top+rowMM)
		f := captions[min(i, len(captions)-1)]
		if i < len(captions) {
			a.text(f, from, top+rowMM-1-names[f].BaselineMM(), names[f])
			from += indent
		}
		if f == Signature {
			to = min(to, from+signatureMM)
		}
		if to-from < leastLineMM {
			return errNoRoom
		}
		a.line(f, from, top, to-from)
	}
	return nil
}

// line is a line to write on.
func (a *arranger) line(f Field, x, top, w float64) {
	base := top + rowMM - 1
	a.add(f, x, top, w, rowMM-0.9, paper.Line{X1: x, Y1: base, X2: x + w, Y2: base, WeightMM: hairMM})
}
