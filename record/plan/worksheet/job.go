package worksheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/measure"
	"backleaf/record/plan"
	"backleaf/record/tell"
)

// Job is a plan and what a person must know beside it.
type Job struct {
	Words  *tell.Catalogue
	Title  string
	Maker  string
	Made   time.Time
	Plan   plan.Plan
	Names  []string // of the pieces, by their numbers from 1; empty: the numbers
	Board  string   // what the sheets are
	Assume bool     // the run of the grain is assumed, nobody said it
	Whole  []int    // whole sheets left at most, by the kinds of the plan's sheets; -1: not known
	Inches bool     // lengths in inches, else in millimetres
	Letter bool     // paper

	Cloth     *plan.BoltPlan // nil: none
	ClothName string
	ClothLeft record.Said // what is left of its lot; zero: not known

	Acts     []plan.Act // of the recipe, if there is one
	Products []plan.Product
	Tins     []plan.Tin
	Wet      *plan.Wet
	Costs    []plan.CostLine // nil: nothing is priced
	Sums     []plan.Price
	Batches  []plan.Batch
	Table    *plan.Timetable
}

// Section is a title and lines under it.
type Section struct {
	Title string
	Lines []string
}

// inchParts is the finest part of an inch that is printed: half of a
// sixteenth, since rounded lines are measured from one edge.
const inchParts = 32

// length writes a length without its unit.
func (j Job) length(um int64) string {
	if j.Inches {
		if s, err := measure.InchFraction(um, inchParts); err == nil {
			return j.Words.Number.Number(s)
		}
	}
	return j.Words.Number.Number(strconv.FormatFloat(float64((um+50)/100)/10, 'f', -1, 64))
}

func (j Job) size(a, b int64) string { return j.length(a) + j.Words.Number.Times + j.length(b) }

// unit is the unit of lengths.
func (j Job) unit() record.LengthUnit {
	if j.Inches {
		return "in"
	}
	return "mm"
}

// fill fills in values, and the unit of lengths.
func (j Job) fill(m tell.Message, values ...record.Value) string {
	return j.Words.Fill(m, append(values, record.With("unit", j.unit()))...)
}

// withUnit writes a length with its unit, where it stands alone.
func (j Job) withUnit(um int64) string {
	return j.length(um) + j.Words.Number.Unit + j.Words.Words["unit"][string(j.unit())].Text
}

func (j Job) area(um2 int64) string {
	if j.Inches {
		return j.Words.Measure(strconv.FormatFloat(float64(um2)/(304_800*304_800), 'f', 1, 64), "ft2")
	}
	return j.Words.Measure(strconv.FormatFloat(float64(um2)/1e12, 'f', 3, 64), "m2")
}

// percent writes a share, rounded up: it is never said to be better than it is.
func (j Job) percent(part, whole int64) string {
	tenths := (part*1000 + whole - 1) / whole
	return j.Words.Measure(strconv.FormatFloat(float64(tenths)/10, 'f', -1, 64), "%")
}

func (j Job) name(number int) string {
	if number <= len(j.Names) {
		return j.Names[number-1]
	}
	return strconv.Itoa(number)
}

func letter(n int) string {
	if n < 26 {
		return string(rune('a' + n))
	}
	return letter(n/26-1) + letter(n%26)
}

// keepLetters names the offcuts worth keeping over the sheets of a plan, of each
// its rest first; those of sheets that are alike bear the same letters.
func keepLetters(p plan.Plan) map[[2]int]string {
	out := map[[2]int]string{}
	n := 0
	for i, c := range p.Sheets {
		parts := p.Parts(i)
		for _, rest := range []bool{true, false} {
			for k, part := range parts {
				if part.Number > 0 || !part.Keep || (part.Strip == 0) != rest {
					continue
				}
				if i > 0 && alike(c, p.Sheets[i-1]) {
					out[[2]int{i, k}] = out[[2]int{i - 1, k}]
					continue
				}
				out[[2]int{i, k}] = strings.ToUpper(letter(n))
				n++
			}
		}
	}
	return out
}

// alike reports that two sheets are cut in the same way.
func alike(a, b plan.Cut) bool {
	return a.Sheet == b.Sheet && a.Across == b.Across && slices.EqualFunc(a.Strips, b.Strips, func(a, b plan.Strip) bool {
		return a.Size == b.Size && slices.EqualFunc(a.Blocks, b.Blocks, func(a, b plan.Block) bool {
			return a.Size == b.Size && slices.EqualFunc(a.Pieces, b.Pieces, func(a, b plan.Laid) bool {
				return a.Piece == b.Piece && a.Upright == b.Upright
			})
		})
	})
}

// sheetName says what a sheet is: the name the caller gave it, and its size.
func (j Job) sheetName(sheet int) string {
	s := j.Plan.Order.Sheets[j.Plan.Sheets[sheet].Sheet]
	name := s.Name
	if j.Board != "" {
		name = j.Words.Join.Bracket.With("text", name, "aside", j.Board)
	}
	return j.Words.Plan.T("from").With("sheet", name, "size", j.size(s.Length, s.Width))
}

// Text writes all of it as plain text.
func (j Job) Text() string {
	var b strings.Builder
	for i, s := range j.Sections() {
		if i > 0 {
			b.WriteString("\n")
		}
		fmt.Fprintln(&b, s.Title)
		for _, l := range s.Lines {
			fmt.Fprintln(&b, "  "+l)
		}
	}
	return b.String()
}
