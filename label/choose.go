package label

import (
	"cmp"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"backleaf/record/paper"
)

// Arrange lays out labels without drawing them: for each label the most that
// its area can hold, and for all labels of one area the same type and the
// same symbols. It works on all cores.
func Arrange(labels []Input, o Options) ([]Layout, error) {
	return o.arrange(labels, o.steps(len(labels)))
}

func (o Options) arrange(labels []Input, step func(n int) error) ([]Layout, error) {
	known, fillers := &texts{}, make([]*filler, len(labels))
	err := each(len(labels), func(i int) (err error) { fillers[i], err = o.filler(labels[i], known); return cmp.Or(err, step(0)) })
	if err != nil {
		return nil, err
	}
	groups := map[Area][]*filler{}
	for _, f := range fillers {
		groups[f.size.area] = append(groups[f.size.area], f)
	}
	for _, group := range groups {
		least := slices.MinFunc(group, func(a, b *filler) int { return cmp.Compare(a.numberPt, b.numberPt) })
		for _, f := range group {
			f.numberPt = least.numberPt
		}
	}
	choose := func(i int) error {
		f, first := fillers[i], fillers[0] // most are like the first
		if f.size == first.size {
			f.guess, f.like = first.guess, first.at
		}
		err := f.choose()
		if err == nil && f == first {
			err = f.advance()
		} else if err == nil {
			_, err = f.fits(f.like)
		}
		if err != nil {
			return fmt.Errorf("label of %s: %w", labels[i].Number, err)
		}
		return step(1)
	}
	if err := each(min(1, len(labels)), choose); err != nil {
		return nil, err
	}
	if err := each(max(0, len(labels)-1), func(i int) error { return choose(i + 1) }); err != nil {
		return nil, err
	}
	for _, group := range groups {
		if err := agree(group, step); err != nil {
			return nil, err
		}
	}
	layouts := make([]Layout, len(labels))
	err = each(len(labels), func(i int) (err error) { layouts[i], err = fillers[i].layout(); return err })
	return layouts, err
}

// steps counts what is done of a total; the work may be stopped at any step.
func (o Options) steps(total int) func(n int) error {
	var mu sync.Mutex
	done := 0
	return func(n int) error {
		mu.Lock()
		defer mu.Unlock()
		if done += n; o.Step == nil {
			return nil
		}
		return o.Step(int64(done), int64(total))
	}
}

// each calls f for the numbers below n on all cores, up to an error, and
// returns that of the first number that has one.
func each(n int, f func(i int) error) error {
	errs := make([]error, n)
	var wait sync.WaitGroup
	var failed atomic.Bool
	next := make(chan int)
	for range min(runtime.GOMAXPROCS(0), n) {
		wait.Go(func() {
			for i := range next {
				if errs[i] = f(i); errs[i] != nil {
					failed.Store(true)
				}
			}
		})
	}
	for i := 0; i < n && !failed.Load(); i++ {
		next <- i
	}
	close(next)
	wait.Wait()
	return cmp.Or(errs...)
}

// A filler fills one label.
type filler struct {
	arranger
	size     Size
	settings []setting
	at       int          // the setting chosen
	keep     []Field      // the fields that find room, in the order of staying
	later    [][]string   // hazards for further labels
	guess    int          // of how many fields find room
	like     int          // a setting that is likely to hold them
	tried    map[int]bool // settings that hold keep, or not
	laid     []Box        // at the last setting that did
	laidAt   int
}

func (o Options) filler(in Input, known *texts) (*filler, error) {
	place := Area{}
	if o.Sheet != nil {
		place = o.Sheet.Place
	}
	size, err := o.Size, error(nil)
	if size == Auto {
		size, err = Fit(in.Back, place, o.Units)
	} else {
		err = size.fits(in.Back, place, o.Units)
	}
	if err != nil {
		return nil, fmt.Errorf("label of %s: %w", in.Number, err)
	}
	f := &filler{size: size, settings: settings(size.area), guess: len(staying), tried: map[int]bool{}}
	f.arranger = arranger{in: in, words: o.Catalogue.Label, area: size.area, texts: known, parts: 1, part: 1}
	if err := f.encode(); err != nil {
		return nil, fmt.Errorf("label of %s: %w", in.Number, err)
	}
	if f.numberPt, err = f.numberRoom(); err != nil {
		return nil, fmt.Errorf("label of %s: %w", in.Number, err)
	}
	return f, nil
}

// holds reports whether the label can be filled with the fields at a setting.
func (f *filler) holds(s setting, fields []Field) (bool, error) {
	_, err := f.arrange(s, fields)
	if errors.Is(err, errNoRoom) {
		return false, nil
	}
	return err == nil, err
}

// anyHolds tries the settings of the smallest type: those that hold most.
func (f *filler) anyHolds(fields []Field, rough bool) (bool, error) {
	for _, s := range slices.Backward(f.settings) {
		if s.bodyPt > smallestPt || s.dots > leastDots || s.rough != rough {
			continue
		}
		if ok, err := f.holds(s, fields); ok || err != nil {
			return ok, err
		}
	}
	return false, nil
}

// choose finds what the label holds, if it must with fewer facts in their symbol.
func (f *filler) choose() error {
	err := f.holdMost()
	if len(f.keep) == 0 && err == nil {
		if err = f.share(); err == nil {
			err = f.holdMost()
		}
	}
	if err != nil || f.in.Facts == "" || slices.Contains(f.keep, Facts) {
		return err
	}
	f.holdFacts(f.in.FactsShort)
	return f.holdMost()
}

// holdMost finds what the label holds, if it must with words that are broken.
func (f *filler) holdMost() error {
	var all []Field
	for _, field := range staying {
		if f.in.says(field) && !(field == QR && f.symbol == nil) && !(field == Facts && f.facts == nil) {
			all = append(all, field)
		}
	}
	whole, err := f.most(all, false)
	if err != nil {
		return err
	}
	if f.keep = whole; len(whole) < len(all) && f.broken {
		broken, err := f.most(all, true)
		if err != nil {
			return err
		}
		if len(broken) > len(whole) {
			f.keep = broken
		}
	}
	return nil
}

// most returns the fields that the label holds: those that stay longest up to
// the first that finds no room. One that would find none even alone is passed
// over.
func (f *filler) most(all []Field, rough bool) (keep []Field, err error) {
	from := f.guess
	for i := 0; len(all) > 0; i++ {
		n, err := f.longest(keep, all, min(from, len(all)), rough)
		if err != nil {
			return nil, err
		}
		if i == 0 {
			f.guess = n
		}
		keep, all, from = append(keep, all[:n]...), all[n:], 0
		if len(all) == 0 {
			break
		}
		if alone, err := f.anyHolds(all[:1], rough); alone || err != nil {
			return keep, err
		}
		all = all[1:]
	}
	return keep, nil
}

// longest is how many of the fields the label holds beside those it keeps. It
// goes up or down from a guess.
func (f *filler) longest(keep, all []Field, n int, rough bool) (int, error) {
	for up, down := false, false; ; {
		fields, ok, err := append(slices.Clone(keep), all[:n]...), false, error(nil)
		if likely := f.settings[f.like]; !up && !down && likely.rough == rough {
			ok, err = f.holds(likely, fields)
		}
		if !ok && err == nil {
			ok, err = f.anyHolds(fields, rough)
		}
		switch {
		case err != nil:
			return 0, err
		case ok && (down || n == len(all)):
			return n, nil
		case ok:
			n, up = n+1, true
		case up || n <= 1: // without any it was tried before
			return max(n-1, 0), nil
		default:
			n, down = n-1, true
		}
	}
}

// advance goes to the first setting from the one chosen on that holds all.
func (f *filler) advance() error {
	for ; f.at < len(f.settings); f.at++ {
		if ok, err := f.fits(f.at); ok || err != nil {
			return err
		}
	}
	return paper.ErrTooLong
}

func (f *filler) fits(at int) (bool, error) {
	if ok, done := f.tried[at]; done {
		return ok, nil
	}
	boxes, err := f.arrange(f.settings[at], f.keep)
	if err != nil && !errors.Is(err, errNoRoom) {
		return false, err
	}
	if f.tried[at] = err == nil; err == nil {
		f.laid, f.laidAt = boxes, at
	}
	return err == nil, nil
}

// agree brings labels of one area to the best setting that holds what each of
// them keeps or, where none does, to settings with the same type and symbols.
func agree(group []*filler, step func(n int) error) error {
	all := group[0].settings
	order := slices.Clone(group)
	for at := range all {
		var without atomic.Int64
		err := each(len(order), func(i int) error {
			ok, err := order[i].fits(at)
			if err == nil && !ok {
				without.Store(int64(i))
				err = errNoRoom
			}
			return cmp.Or(err, step(0))
		})
		if err == nil {
			for _, f := range group {
				f.at = at
			}
			return nil
		}
		if !errors.Is(err, errNoRoom) {
			return err
		}
		order[0], order[without.Load()] = order[without.Load()], order[0] // it is likely to want room again
	}
	for _, s := range all {
		var at []int
		for _, f := range group {
			i, err := f.alike(s)
			if err != nil {
				return fmt.Errorf("label of %s: %w", f.in.Number, err)
			}
			if i < 0 {
				break
			}
			at = append(at, i)
		}
		if len(at) == len(group) {
			for i, f := range group {
				f.at = at[i]
			}
			return nil
		}
	}
	for _, f := range group { // each its own
		f.at = 0
		if err := f.advance(); err != nil {
			return fmt.Errorf("label of %s: %w", f.in.Number, err)
		}
	}
	return nil
}

// alike is the index of the first setting with the same type and symbols as
// another one that holds the label, or -1.
func (f *filler) alike(s setting) (int, error) {
	for i, o := range f.settings {
		if o.bodyPt != s.bodyPt || o.dots != s.dots {
			continue
		}
		if ok, err := f.fits(i); ok || err != nil {
			return i, err
		}
	}
	return -1, nil
}

// share gives hazards that one label cannot hold to further ones.
func (f *filler) share() error {
	all := f.in.Hazards
	n := len(all)
	for ; n >= 0; n-- {
		f.in.Hazards = all[:n]
		if n < len(all) {
			f.parts = 2
		}
		for _, rough := range []bool{false, true} {
			if ok, err := f.anyHolds(nil, rough); err != nil {
				return err
			} else if ok && n == len(all) {
				return nil
			} else if ok {
				return f.carryOn(all[n:])
			}
		}
	}
	return fmt.Errorf("what no label may lack does not fit on %v: %w", f.area, paper.ErrTooLong)
}

// carryOn fills further labels with the hazards that are left.
func (f *filler) carryOn(left []string) error {
	for len(left) > 0 {
		next := f.continuation(left)
		n := len(left)
		for ; n > 0; n-- {
			next.in.Hazards = left[:n]
			ok, err := next.anyHolds(nil, true)
			if err != nil {
				return err
			}
			if ok {
				break
			}
		}
		if n == 0 {
			return fmt.Errorf("a hazard does not fit on %v: %w", f.area, paper.ErrTooLong)
		}
		f.later = append(f.later, left[:n])
		left = left[n:]
	}
	f.parts = 1 + len(f.later)
	return nil
}

// continuation is a label that holds hazards only.
func (f *filler) continuation(hazards []string) *filler {
	c := &filler{size: f.size, settings: f.settings, tried: map[int]bool{}, at: f.at}
	c.arranger = arranger{in: Input{Number: f.in.Number, Notice: f.in.Notice, Maker: f.in.Maker, Hazards: hazards}, words: f.words, area: f.area,
		texts: f.texts, numberPt: f.numberPt, part: 2, parts: max(2, f.parts)}
	return c
}

// layout draws the label as chosen, and the labels that carry it on.
func (f *filler) layout() (Layout, error) {
	l, err := f.one()
	if err != nil {
		return l, err
	}
	for i, hazards := range f.later {
		c := f.continuation(hazards)
		c.part = i + 2
		if err := c.advance(); err != nil {
			c.at = 0 // from the best setting on; the last that holds them was found before
			if err := c.advance(); err != nil {
				return l, fmt.Errorf("label of %s: %w", f.in.Number, err)
			}
		}
		more, err := c.one()
		if err != nil {
			return l, err
		}
		l.More = append(l.More, more)
	}
	return l, nil
}

func (f *filler) one() (Layout, error) {
	s := f.settings[f.at]
	boxes, err := f.laid, error(nil)
	if boxes == nil || f.laidAt != f.at {
		boxes, err = f.arrange(s, f.keep)
	}
	if err != nil {
		return Layout{}, fmt.Errorf("label of %s: %w", f.in.Number, err)
	}
	return Layout{Number: f.in.Number, Size: f.size, Area: f.area, BodyPt: s.bodyPt, ModuleMM: float64(s.dots) * dotMM, Boxes: boxes, LeftOut: f.leftOut()}, nil
}

// leftOut lists the fields that found no room, in the order in which they gave way.
func (f *filler) leftOut() (out []Field) {
	if f.part > 1 {
		return nil
	}
	for _, field := range slices.Backward(staying) {
		if f.in.says(field) && !slices.Contains(f.keep, field) && !(field == BuildUp && slices.Contains(f.keep, BuildUpFull)) {
			out = append(out, field)
		}
	}
	return out
}
