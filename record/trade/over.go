package trade

import (
	"slices"
	"strings"
	"sync"

	"backleaf/record"
)

// Verdict is what the trade says of one stratum laid directly on another. It
// is advice for making; of a finished painting it says only what to look for.
type Verdict string

// Verdicts. An empty one means that the tables do not speak of the pair: then
// nothing is said.
const (
	Sound      Verdict = "sound"
	Conditions Verdict = "with-conditions"
	Against    Verdict = "advised-against"
)

// Condition is something that must be so for a pair to hold. The record
// answers it or does not.
type Condition string

// Conditions that a record can answer.
const (
	Tooth         Condition = "tooth"          // the lower layer is not glossy, or was dulled after it was laid
	ThinBelow     Condition = "thin-below"     // the lower layer is thin
	ThinAbove     Condition = "thin-above"     // the upper layer is thin
	LeanBelow     Condition = "lean-below"     // the lower layer is lean
	Waited        Condition = "waited"         // the lower layer dried as long as [WaitFor] says at the least
	Keyed         Condition = "keyed"          // the lower surface was abraded before
	Degreased     Condition = "degreased"      //
	Untempered    Condition = "untempered"     // a hardboard that is not tempered with oil
	SealedFirst   Condition = "sealed-first"   // a size or sealer lies between
	GroundBetween Condition = "ground-between" // a ground lies between
	Isolated      Condition = "isolated"       // a thin isolating coat lies between
	FatOverLean   Condition = "fat-over-lean"  // the upper layer is not leaner
	Rigid         Condition = "rigid"          // on a rigid board; of cloth: glued to one
)

// Caution is something to heed that no record answers.
type Caution string

// Reason says why, Cure what can still be done.
type (
	Reason string
	Cure   string
)

// overRow is one row of the tables of what lies on what. Strata stand in the
// letters of short; all other columns are codes.
type overRow struct {
	over, on string
	verdict  Verdict
	when     string // conditions that decide; of an advice against: what lifts it, all together
	heed     string // cautions
	why      string // reasons
	cure     string // cures
	from     string // works, practice, memory
}

// overSaid is such a row as it is read.
type overSaid struct {
	overRow
	asked []Condition // when
	met   Judgement   // where all of them are met
}

// Judgement is what the tables say of an upper layer on a lower one under what
// is known of the conditions.
type Judgement struct {
	// Holds is yes where the pair is sound, or its conditions are met; no where
	// it is advised against, or a condition is known not to be met; unknown
	// where the record does not tell. It is empty where the tables do not speak
	// of the pair.
	Holds    record.Answer
	Verdict  Verdict     // of the tables; empty where the strata leave several
	Unmet    []Condition // known not to be met
	Open     []Condition // not recorded
	Cautions []Caution
	Reasons  []Reason
	Cures    []Cure
	Rests    Standing
}

// Facts answer conditions. Neither yes nor no means that it is not recorded.
type Facts func(Condition) record.Answer

// Over judges an upper layer directly on a lower one. Where the record leaves
// open what a layer is, the judgement is what all the possibilities share:
// what is vaguer is never judged worse.
func Over(upper, lower Strata, known Facts) Judgement {
	var js []Judgement
	for _, u := range upper {
		for _, l := range lower {
			js = append(js, judge(u, l, known))
		}
	}
	if len(js) == 0 {
		return Judgement{Holds: maybe}
	}
	out := js[0]
	for _, j := range js[1:] {
		out = out.shared(j)
	}
	return out
}

func judge(upper, lower Stratum, known Facts) Judgement {
	row := pairs()[[2]Stratum{upper, lower}]
	if row == nil {
		return Judgement{}
	}
	j := row.met
	for _, c := range row.asked {
		switch known(c) {
		case yes:
		case no:
			j.Unmet = append(j.Unmet, c)
		default:
			j.Open = append(j.Open, c)
		}
	}
	switch {
	case j.Unmet != nil, row.verdict == Against && row.asked == nil:
		j.Holds = no
	case j.Open != nil:
		j.Holds = maybe
	}
	return j
}

// shared is what two judgements have in common.
func (j Judgement) shared(k Judgement) Judgement {
	if j.Holds != k.Holds {
		j.Holds = maybe
	}
	if j.Verdict != k.Verdict {
		j.Verdict = ""
	}
	j.Unmet, j.Open = both(j.Unmet, k.Unmet), united(j.Open, k.Open)
	j.Cautions, j.Reasons, j.Cures = both(j.Cautions, k.Cautions), both(j.Reasons, k.Reasons), both(j.Cures, k.Cures)
	j.Rests.Works = united(j.Rests.Works, k.Rests.Works)
	return j
}

func both[C comparable](a, b []C) []C {
	return slices.DeleteFunc(slices.Clone(a), func(x C) bool { return !slices.Contains(b, x) })
}

func united[C comparable](a, b []C) []C {
	out := slices.Clone(a)
	for _, x := range b {
		if !slices.Contains(out, x) {
			out = append(out, x)
		}
	}
	return out
}

func codes[C ~string](list string) []C {
	var out []C
	for s := range strings.FieldsSeq(list) {
		out = append(out, C(s))
	}
	return out
}

// pairs finds the row of a pair.
var pairs = sync.OnceValue(func() map[[2]Stratum]*overSaid {
	m := map[[2]Stratum]*overSaid{}
	tables := [][]overRow{acrylicOver, vinylOver, oilOver, temperaOver, glueOver, waxOver, shellacOver, varnishOver}
	for _, rows := range tables {
		for _, row := range rows {
			said := &overSaid{row, codes[Condition](row.when),
				Judgement{Holds: yes, Verdict: row.verdict, Cautions: codes[Caution](row.heed), Reasons: codes[Reason](row.why), Cures: codes[Cure](row.cure), Rests: standing(row.from)}}
			for _, u := range strataOf(row.over) {
				for _, l := range strataOf(row.on) {
					m[[2]Stratum{u, l}] = said
				}
			}
		}
	}
	return m
})
