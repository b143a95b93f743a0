// Package planning makes the plan of a day from what is wished and what stands
// on the shelf: it turns shelf and record into what package plan reckons with,
// and what that says into panels. TestCarriedOut carries a plan out and holds
// it against what is then due and what it then cost.
package planning

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/pattern"
	"backleaf/record/plan"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
)

// Wish is what a plan is asked for. Lengths that are not given are zero.
type Wish struct {
	Panels []Panels
	Board  record.Key // lot or material
	Cloth  record.Key // lot or material; empty: none
	Sheet  record.Size
	// SheetGrain is the side of a sheet along which its grain runs, as its size
	// is written: height is the first. Empty: of plywood and solid wood the first.
	SheetGrain record.Grain
	Recipe     []Step

	Kerf, Trim         record.Length
	Turns              plan.Turns
	Bolt               record.Length // width, where the shelf has none
	Oversize, Selvedge record.Length
	Squaring           record.Length
	ShrinkWarp         record.Percent
	ShrinkWeft         record.Percent
	TrayLoss           record.Percent
	Bench              int // panels that go through together; 0: all
	Start              time.Time
	Hours              plan.Hours
	Temperature        record.Temperature
	Humidity           record.Percent
}

// Panels is a number of equal panels.
type Panels = bench.Panels

var asked = pattern.Of(`(?i)(?:^|,|;|\band\b|\s)\s*([0-9]{1,6})\s+of\s+`)

var withoutCloth = pattern.Of(`(?i)\s+(?:no|without)\s+cloth\s*$`)

var alongSide = pattern.Of(`(?i)\s+grain\s+(\S+)\s*$`)

// ParsePanels reads "14 of 30x40 cm, 6 of 8x10 in grain height, 2 of 20x20 cm no
// cloth". Equal panels are put together.
func ParsePanels(r *typed.Reader, s string) []Panels {
	at := asked().FindAllStringSubmatchIndex(s, -1)
	if len(s) > 5000 || len(at) == 0 || strings.TrimSpace(s[:at[0][0]]) != "" {
		r.Fail(refuse.Unclearly("panels-not-read", "%.60q says of no panels how many and how large", s).With(record.With("units", r.Units)))
		return nil
	}
	var out []Panels
	for i, m := range at {
		end := len(s)
		if i+1 < len(at) {
			end = at[i+1][0]
		}
		text := s[m[1]:end]
		var p Panels
		p.Count, _ = strconv.Atoi(s[m[2]:m[3]])
		if c := withoutCloth().FindString(text); c != "" {
			p.NoCloth, text = true, strings.TrimSuffix(text, c)
		}
		if g := alongSide().FindStringSubmatch(text); g != nil {
			typed.Word(r, "grain", g[1], &p.Grain)
			text = strings.TrimSuffix(text, g[0])
		}
		r.Text("", strings.TrimSpace(text), &p.Size)
		if r.Err() != nil {
			return nil
		}
		out = gather(out, p)
	}
	return out
}

// ParseHours reads the hours of work in a day: "9:00-20:00".
func ParseHours(r *typed.Reader, text string) plan.Hours {
	var h [4]int
	if n, err := fmt.Sscanf(text, "%d:%d-%d:%d", &h[0], &h[1], &h[2], &h[3]); err != nil || n != 4 {
		r.Fail(refuse.Input("hours", "no-hours", "%q are no hours of work", text))
	}
	of := func(h, min int) time.Duration { return time.Duration(h)*time.Hour + time.Duration(min)*time.Minute }
	return plan.Hours{From: of(h[0], h[1]), To: of(h[2], h[3])}
}

// gather adds panels to those of the same size and grain.
func gather(all []Panels, p Panels) []Panels {
	for i, q := range all {
		if q.Size == p.Size && q.Grain == p.Grain && q.NoCloth == p.NoCloth {
			all[i].Count += p.Count
			return all
		}
	}
	return append(all, p)
}

// Like are the panels of a batch as they would be asked for.
func Like(w *record.Workshop, ns []record.Number) []Panels {
	var out []Panels
	for _, n := range ns {
		p := w.Panel(n)
		out = gather(out, Panels{Count: 1, Size: p.Size(), Grain: p.Cut().Grain})
	}
	return out
}

func micrometers(l record.Length) int64 { um, _ := l.Micrometers(); return um }

func grain(g record.Grain) plan.Grain {
	switch g {
	case "height":
		return plan.First
	case "width":
		return plan.Second
	}
	return plan.Free
}

// What is taken where nobody says it, µm: in a plan in millimetres and in one in
// inches, round in each (common practice).
var (
	usualTrim     = [2]int64{5_000, 4_762}     // 3/16 in
	usualSelvedge = [2]int64{15_000, 15_875}   // 5/8 in
	usualSquaring = [2]int64{50_000, 50_800}   // 2 in
	usualOversize = [2]int64{30_000, 30_000}   // as it is counted where nobody recorded it
	usualStep     = [2]int64{100_000, 114_300} // an eighth of a yard
)

// or is a length, or the usual one.
func (wish Wish) or(l record.Length, usual [2]int64) int64 {
	um, ok := l.Micrometers()
	switch {
	case ok:
		return um
	case wish.inches():
		return usual[1]
	}
	return usual[0]
}
