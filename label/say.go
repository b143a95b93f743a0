package label

import (
	"fmt"
	"strconv"
	"unicode/utf8"

	"backleaf/record"
	"backleaf/record/paper"
	"backleaf/record/seal"
	"backleaf/record/tell"
)

// A Stage says at which moment of a panel's life a label is printed, and by
// that what stands on it.
type Stage string

// The stages. StageAuto chooses: Changed after a treatment, Finished for what
// is painted or has a title, Blank for all else.
const (
	StageAuto     Stage = "auto"
	StageBlank    Stage = "blank"    // a panel for sale or for stock; its painter can sign
	StageFinished Stage = "finished" // a finished painting
	StageChanged  Stage = "changed"  // a new label after a treatment or a change
)

// ParseStage reads the name of a stage.
func ParseStage(name string) (Stage, error) {
	switch s := Stage(name); s {
	case StageAuto, StageBlank, StageFinished, StageChanged:
		return s, nil
	}
	return "", fmt.Errorf("there is no stage %q: expected auto, blank, finished or changed", name)
}

// longestTreatment is the number of characters up to which a label repeats
// what was done; for more it names the day and leaves the rest to the record.
const longestTreatment = 120

// StageOf is the stage that StageAuto chooses.
func StageOf(p *record.Panel) Stage {
	_, treated := record.Latest[record.Treatment](p)
	switch stage := p.Stage(); {
	case treated:
		return StageChanged
	case stage == record.StagePainted, stage == record.StageVarnished, p.Description().Title != "":
		return StageFinished
	}
	return StageBlank
}

// Say puts the record of a panel into the words of a label. sha256 is the
// digest of the record in lower-case hexadecimal, or empty if there is none.
func Say(c *tell.Catalogue, w *record.Workshop, p *record.Panel, stage Stage, sha256 string) (Input, error) {
	t, words := tell.New(c, w, p), c.Label
	if stage == StageAuto {
		stage = StageOf(p)
	}
	in := Input{
		Number: t.Number(), Back: back(p.Size()), Blank: stage == StageBlank,
		Title: t.PrintTitle(), Maker: t.Maker(), Place: t.MakerPlace(),
		Medium: c.Capital(t.MediumLine()), Dimensions: c.Capital(t.MeasuredSize()), OtherUnits: c.Capital(t.Dimensions()),
		Hazards: t.Warnings(), BuildUp: t.BuildUp(), BuildUpShort: t.BuildUpShort(), Sealed: t.SealedFaces(), Care: t.CareLine(), Link: t.Link(), Plain: t.PlainText(),
	}
	if w.Studio.Demo {
		in.Notice = string(words.T("demo"))
	}
	switch made := p.Description().Made; {
	case in.Blank:
		in.Title, in.Medium = string(c.Lines.T("blank")), c.Capital(t.SupportLine())
		in.Made = words.T("made").With("dates", t.MadeBetween())
	case made.Known():
		in.Date = t.DateOfWork()
	default:
		in.Made = c.Capital(t.DateOfWork())
	}
	if !in.Blank {
		in.Varnish = t.VarnishLine()
	}
	if stage == StageChanged {
		in.Changed = changed(t, p)
	}
	switch s := w.Studio; {
	case in.Link != "":
		in.Where = words.T("where").With("link", t.LinkInLetters())
	case s.Contact != "":
		in.Where = words.T("where-kept").With("contact", s.Contact)
	default:
		in.Where = string(words.T("where-maker"))
	}
	before := ""
	if last, printed := record.Latest[record.LabelPrinted](p); printed && stage == StageChanged {
		before = paper.Held(t.Day(last.Written))
		if last.Body.AsOf > 0 {
			before = words.T("as-of").With("entry", strconv.FormatInt(last.Body.AsOf, 10))
		}
	}
	in.Issue = words.T("issue").With("date", t.Day(w.Written), "entry", strconv.FormatInt(w.Last, 10), "before", before)
	if size := p.Size(); in.OtherUnits == in.Dimensions {
		in.OtherUnits = ""
	} else if !size.Height.IsZero() && !size.Height.IsUnknown() {
		in.OtherUnits = words.T("sides").With("size", in.OtherUnits)
	}
	if sha256 != "" {
		d, err := seal.ParseDigest(sha256)
		if err != nil {
			return Input{}, fmt.Errorf("label of %s: %w", p.Number, err)
		}
		in.Fingerprint = words.T("fingerprint").With("groups", d.Short())
	}
	return in, nil
}

// changed tells the treatments since the last label.
func changed(t *tell.Teller, p *record.Panel) string {
	words := t.Catalogue().Label
	last, printed := record.Latest[record.LabelPrinted](p)
	s := ""
	add := func(part string) {
		if s != "" {
			s += string(words.T("also"))
		}
		s += part
	}
	for _, e := range record.Each[record.Treatment](p) {
		if printed && e.Seq < last.Seq && e.At.Before(last.At) {
			continue
		}
		if what := e.Body.Text; utf8.RuneCountInString(what) <= longestTreatment {
			add(words.T("treated").With("date", t.Day(e.At), "what", what))
		} else {
			add(words.T("treated-long").With("date", t.Day(e.At)))
		}
	}
	return t.Catalogue().Capital(s)
}

// back is the area of the board.
func back(s record.Size) Area {
	h, ok := s.Height.Micrometers()
	w, too := s.Width.Micrometers()
	if !ok || !too {
		return Area{}
	}
	return Area{float64(w) / 1000, float64(h) / 1000}
}
