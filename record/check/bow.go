package check

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/measure"
)

// BowEstimate is how far layers could pull a panel hollow, elastic and without
// relaxation: print it as "estimate, upper bound". Positive is hollow at the
// front.
type BowEstimate struct {
	LowMicrons, HighMicrons float64 // Low <= High, with sign
	SpanMicrons             float64 // the longer side
	Grade                   measure.BowGrade
	Missing                 []string // what the figures leave out, in words; none when they are whole
	Notes                   []string // what stands in for a figure nobody recorded
	Entries                 []int64  // the layers that pull
}

// ErrNoBow means that the record does not say enough of the board for any
// estimate.
var ErrNoBow = errors.New("the bow cannot be estimated")

// Bow estimates the bow of a panel as it stands, from all its layers.
func Bow(w *record.Workshop, p *record.Panel) (BowEstimate, error) {
	return BowOf(w, p, func(record.Layer) bool { return true })
}

// BowOf estimates the bow that some of the layers cause by themselves.
func BowOf(w *record.Workshop, p *record.Panel, which func(record.Layer) bool) (BowEstimate, error) {
	s := newSubject(w, p, time.Time{})
	return s.bow(func(f Film) bool { return which(f.Layer) })
}

// bow weighs the pull of the films and cloths of the two faces against each
// other. Films of one binder cancel by thickness; what cancels needs no
// figure for its stress.
func (s *subject) bow(which func(Film) bool) (BowEstimate, error) {
	sheet, span, notes, err := s.sheet()
	if err != nil {
		return BowEstimate{}, err
	}
	b := BowEstimate{SpanMicrons: span, Notes: notes}
	var order []record.Binder
	sum := map[record.Binder]*measure.Pull{}
	cloth := measure.Pull{PerUnit: measure.ClothTension()}
	miss := func(what string) {
		if !slices.Contains(b.Missing, what) {
			b.Missing = append(b.Missing, what)
		}
	}
	for _, f := range s.films {
		if f.Layer.Face == record.Edges || !which(f) {
			continue
		}
		amount := f.DryMicrons
		var pull *measure.Pull
		if isCloth(f) {
			pull, amount = &cloth, 1
		} else {
			binder := binderOf(s, f)
			switch {
			case f.Dry == Unknown:
				miss(fmt.Sprintf("the %s of entry %d", f.Layer.Name(), f.Layer.Seq))
				continue
			case binder == "":
				miss(fmt.Sprintf("the %s of entry %d (its binder is not recorded)", f.Layer.Name(), f.Layer.Seq))
				continue
			}
			if sum[binder] == nil {
				sum[binder] = &measure.Pull{}
				order = append(order, binder)
			}
			pull = sum[binder]
		}
		if !slices.Contains(b.Entries, f.Layer.Seq) {
			b.Entries = append(b.Entries, f.Layer.Seq)
		}
		if f.Layer.Face == record.Front {
			pull.Front += amount
		} else {
			pull.Back += amount
		}
	}
	var pulls []measure.Pull
	if cloth.Front != cloth.Back {
		pulls = append(pulls, cloth)
	}
	for _, binder := range order {
		pull := *sum[binder]
		if math.Abs(pull.Front-pull.Back) < 0.01 {
			continue
		}
		stress, err := measure.FilmStress(binder)
		if err != nil {
			miss(fmt.Sprintf("the films of %s (no figure for their pull is known)", words(string(binder))))
			continue
		}
		pull.PerUnit = stress
		pulls = append(pulls, pull)
	}
	r, err := measure.BowEstimate(sheet, span, pulls)
	if err != nil {
		return BowEstimate{}, fmt.Errorf("%w: %w", ErrNoBow, err)
	}
	b.LowMicrons, b.HighMicrons = r.Low, r.High
	b.Grade, err = measure.GradeBow(b.most(), span)
	return b, err
}

// words turns a hyphenated word of the record into words for a reader.
func words(s string) string { return strings.ReplaceAll(s, "-", " ") }

// most is the larger of the two figures, without sign.
func (b BowEstimate) most() float64 { return max(math.Abs(b.LowMicrons), math.Abs(b.HighMicrons)) }

func (b BowEstimate) least() float64 {
	if b.LowMicrons <= 0 && b.HighMicrons >= 0 {
		return 0
	}
	return min(math.Abs(b.LowMicrons), math.Abs(b.HighMicrons))
}

// Percent returns the low and the high figure as a share of the span, without
// sign.
func (b BowEstimate) Percent() (low, high float64) {
	return b.least() / b.SpanMicrons * 100, b.most() / b.SpanMicrons * 100
}

// HollowTo says which face goes hollow: front, back, flat, or unknown where
// the range reaches both ways.
func (b BowEstimate) HollowTo() record.Toward {
	switch {
	case b.LowMicrons == 0 && b.HighMicrons == 0:
		return "flat"
	case b.LowMicrons >= 0:
		return "front"
	case b.HighMicrons <= 0:
		return "back"
	}
	return record.Unknown
}

func binderOf(s *subject, f Film) record.Binder {
	bs, known := s.binders(f)
	switch {
	case !known:
		return ""
	case len(bs) > 1:
		return "mixed"
	}
	return bs[0]
}

// sheet returns the board as a plate over its longer side.
func (s *subject) sheet() (measure.Sheet, float64, []string, error) {
	fail := func(why string) (measure.Sheet, float64, []string, error) {
		return measure.Sheet{}, 0, nil, fmt.Errorf("%w: %s", ErrNoBow, why)
	}
	long, _, ok := s.sides()
	if !ok {
		return fail("the size is not recorded")
	}
	t, ok := s.thickness()
	if !ok {
		return fail("the thickness of the board is not recorded")
	}
	var stiff measure.Stiffness
	var notes []string
	var err error
	switch board := s.board(); board.Kind {
	case "":
		return fail("the kind of board is not recorded")
	case record.MDF:
		stiff, err = measure.FibreboardStiffness(record.MDF, t)
	case record.Hardboard, record.TemperedHardboard:
		stiff, err = measure.FibreboardStiffness(record.Hardboard, t)
	case record.Plywood:
		if board.Species != "" && !strings.Contains(strings.ToLower(board.Species), "birch") {
			return fail("no stiffness is known for plywood of " + board.Species)
		}
		stiff, err = plywood(board, t)
	default:
		return fail("no stiffness is known for " + words(string(board.Kind)))
	}
	if err != nil {
		return fail(err.Error())
	}
	if stiff.LowConfidence {
		notes = append(notes, "stiffness of the board: "+stiff.Source.String())
	}
	mpa := min(stiff.AlongMPa, stiff.AcrossMPa)
	if stiff.AlongMPa != stiff.AcrossMPa {
		h, _ := s.p.Size().Height.Micrometers()
		w, _ := s.p.Size().Width.Micrometers()
		switch g := s.cut.Body.Grain; {
		case g == "height" && h > w || g == "width" && w > h:
			mpa = stiff.AlongMPa
		case g != "height" && g != "width":
			notes = append(notes, "the run of the grain is not recorded: reckoned across it, where the board is softest")
		}
	}
	return measure.Sheet{ThicknessMicrons: t, ModulusMPa: mpa, Poisson: stiff.Poisson}, long, notes, nil
}

func plywood(b record.Board, thicknessMicrons float64) (measure.Stiffness, error) {
	plies := int(b.Plies)
	if plies == 0 {
		var err error
		if plies, err = measure.BirchPlies(thicknessMicrons); err != nil {
			return measure.Stiffness{}, err
		}
	}
	veneers, err := measure.EqualVeneers(plies, thicknessMicrons)
	if err != nil {
		return measure.Stiffness{}, err
	}
	return measure.PlywoodStiffness(veneers)
}
