package worksheet

import (
	"slices"
	"strconv"
	"strings"

	"backleaf/record"
	"backleaf/record/plan"
	"backleaf/record/tell"
)

// Sections are all parts of the job in words, sheets that are alike as one.
func (j Job) Sections() []Section {
	out := []Section{j.first()}
	for i, next := 0, 0; i < len(j.Plan.Sheets); i = next {
		for next = i + 1; next < len(j.Plan.Sheets) && alike(j.Plan.Sheets[i], j.Plan.Sheets[next]); {
			next++
		}
		out = append(out, j.sheets(i, next))
	}
	return append(out, j.rest()...)
}

func (j Job) first() Section {
	w := j.Words.Plan
	return Section{string(w.T("titles-plan")), append([]string{j.fill(w.T("units"))}, j.summary()...)}
}

// sheets are those from i to before next, which are alike.
func (j Job) sheets(i, next int) Section {
	return Section{j.sheetTitle(i, next), slices.Concat(j.grained(j.Words.Plan.T("grain-side"), i), j.warnings(i), j.steps(j.Plan, i, nil))}
}

func (j Job) sheetTitle(i, next int) string {
	return j.fill(j.Words.Plan.T("sheet"), record.With("n", i+1), record.With("last", next), record.With("alike", next-i), record.With("all", len(j.Plan.Sheets)), tell.Told("sheet", j.sheetName(i)))
}

// rest is what follows the sheets: the cloth first, the cautions last.
func (j Job) rest() (out []Section) {
	w := j.Words.Plan
	if j.Cloth != nil {
		out = append(out, Section{string(w.T("titles-cloth")), append(j.cloth(), j.steps(j.Cloth.Plan, 0, w.ClothSteps)...)})
	}
	out = append(out, j.more()...)
	if j.Plan.Order.Kerf > 0 {
		out = append(out, Section{string(w.T("titles-cautions")), j.texts(w.Cautions)})
	}
	return out
}

func (j Job) texts(ms []tell.Message) (out []string) {
	for _, m := range ms {
		out = append(out, j.fill(m))
	}
	return out
}

// ask says what pieces are wanted.
func (j Job) ask(p plan.Piece) string {
	m := j.Words.Plan.T("ask")
	switch p.Grain {
	case plan.First:
		m = j.Words.Plan.AskGrain["height"]
	case plan.Second:
		m = j.Words.Plan.AskGrain["width"]
	default:
		if j.Plan.Order.Sheets[j.Plan.Sheets[0].Sheet].Grain != plan.Free {
			m = j.Words.Plan.AskGrain["free"]
		}
	}
	return m.With("n", strconv.Itoa(p.Count), "size", j.size(p.Height, p.Width))
}

func (j Job) summary() []string {
	w, p := j.Words.Plan, j.Plan
	var ask []string
	var area int64
	for _, piece := range p.Order.Pieces {
		ask = append(ask, j.ask(piece))
		area += piece.Height * piece.Width * int64(piece.Count)
	}
	out := []string{j.Words.Clauses(ask)}
	var sheets []string
	for i, n := range j.counts() {
		if s := p.Order.Sheets[i]; n > 0 {
			sheets = append(sheets, j.fill(w.T("sheets"), record.With("n", n), tell.Told("sheet", w.T("from").With("sheet", s.Name, "size", j.size(s.Length, s.Width)))))
		}
	}
	out = append(out, j.Words.List(sheets))
	if p.Proof.Sheets {
		out[len(out)-1] += ". " + string(w.T("least"))
	} else {
		out[len(out)-1] += ". " + string(w.T("not-least"))
	}
	for _, b := range j.ToBuy() {
		out = append(out, j.fill(w.T("sheets-buy"), tell.Told("sheet", b.Sheet), record.With("whole", b.Left), record.With("buy", b.Buy)))
	}
	if j.Assume {
		out = append(out, j.grained(w.T("grained"), 0)...)
	}
	out = append(out, w.T("used").With("used", j.area(p.Used), "percent", j.Words.Measure(strconv.FormatInt(area*100/p.Used, 10), "%")))
	if p.Proof.UsedLeast >= p.Used {
		out = append(out, string(w.T("used-best")))
	} else {
		out = append(out, w.T("used-near").With("least", j.area(p.Proof.UsedLeast), "percent", j.percent(p.Used-p.Proof.UsedLeast, p.Proof.UsedLeast)))
	}
	switch {
	case p.Third.Sheet:
		out = append(out, string(w.T("third")))
	case p.Third.Area > 0:
		out = append(out, w.T("earned").With("area", j.area(p.Third.Area)))
	}
	effort := w.T("effort")
	if p.Order.Kerf == 0 {
		effort = w.T("knife")
	}
	return append(out, j.fill(effort, record.With("settings", p.Settings), record.With("cuts", p.Cuts), tell.Told("kerf", j.withUnit(p.Order.Kerf))))
}

// counts are how many sheets of each kind are cut.
func (j Job) counts() []int {
	out := make([]int, len(j.Plan.Order.Sheets))
	for _, c := range j.Plan.Sheets {
		out[c.Sheet]++
	}
	return out
}

// Buy is how many whole sheets of a kind should be left at most, and how many
// more it takes.
type Buy struct {
	Sheet string `json:"sheet"`
	Left  int    `json:"whole_sheets_left"`
	Buy   int    `json:"buy"`
}

// ToBuy lists the sheets that have to be bought, as far as is known.
func (j Job) ToBuy() (out []Buy) {
	for i, n := range j.counts() {
		if i < len(j.Whole) && j.Whole[i] >= 0 && n > j.Whole[i] {
			out = append(out, Buy{j.Plan.Order.Sheets[i].Name, j.Whole[i], n - j.Whole[i]})
		}
	}
	return out
}

// grained says how the grain of a sheet is taken to run: all depends on it.
func (j Job) grained(said tell.Message, sheet int) []string {
	s := j.Plan.Order.Sheets[j.Plan.Sheets[sheet].Sheet]
	side := s.Length
	switch s.Grain {
	case plan.Free:
		return nil
	case plan.Second:
		side = s.Width
	}
	return []string{said.With("side", j.length(side))}
}

// marks gives each second and further step its letter.
func marks(steps []plan.Step) map[int]string {
	out := map[int]string{}
	for i, s := range steps {
		switch s.Do {
		case plan.SecondCuts, plan.ThirdCuts, plan.TrimCuts:
			out[i] = letter(len(out))
		}
	}
	return out
}

// steps lists how a sheet is cut. Words of special go before the usual ones.
func (j Job) steps(p plan.Plan, sheet int, special map[string]tell.Message) []string {
	w := j.Words.Plan
	steps := p.Steps(sheet)
	letters := marks(steps)
	c := p.Sheets[sheet]
	rest, keep := j.keeps(p, sheet)
	var out []string
	for i, s := range steps {
		m, ok := special[string(s.Do)]
		if !ok {
			m = w.Steps[string(s.Do)]
		}
		if s.Do == plan.TrueEdges && s.Set == 0 && special == nil {
			m = w.T("untrimmed")
		}
		size := j.size(s.Length, s.Width)
		if s.Do == plan.FirstCuts {
			size = j.size(s.Set, s.Length)
		}
		var lines, pieces []string
		for _, at := range s.At {
			lines = append(lines, j.length(at))
		}
		for _, n := range s.Pieces {
			piece := p.Order.Pieces[n.Piece]
			pieces = append(pieces, w.T("one-size").With("n", strconv.Itoa(n.Times), "size", j.size(piece.Height, piece.Width)))
		}
		selvedge := ""
		if j.Cloth != nil {
			selvedge = j.withUnit(j.Cloth.Cloth.Selvedge)
		}
		text := j.fill(m, record.With("n", s.Times), tell.Told("set", j.length(s.Set)), tell.Told("size", size), tell.Told("lines", j.Words.List(lines)),
			tell.Told("from", j.from(c, s)), tell.Told("pieces", j.Words.List(pieces)), tell.Told("write", string(w.T("write"))), tell.Told("selvedge", selvedge), tell.Told("letter", rest))
		mark := strconv.Itoa(i+1) + "."
		if l := letters[i]; l != "" {
			text = w.T("letter").With("letter", l, "step", text)
		}
		out = append(out, mark+" "+text)
	}
	if len(keep) > 0 && special == nil {
		out = append(out, strconv.Itoa(len(steps)+1)+". "+w.T("keep-too").With("pieces", j.Words.List(keep)))
	}
	return out
}

// keeps names the offcuts of a sheet: the rest of it, and those of its strips.
func (j Job) keeps(p plan.Plan, sheet int) (rest string, others []string) {
	letters := keepLetters(p)
	for i, part := range p.Parts(sheet) {
		switch l := letters[[2]int{sheet, i}]; {
		case l == "":
		case part.Strip == 0:
			rest = l
		default:
			others = append(others, j.Words.Plan.T("kept").With("letter", l, "size", j.size(part.Length, part.Width)))
		}
	}
	return rest, others
}

// from says which strips, and which of their parts, are cut.
func (j Job) from(c plan.Cut, s plan.Step) string {
	var out []string
	for _, f := range s.From {
		m := j.Words.Plan.T("from-strip")
		if f.Block > 0 && len(c.Strips[f.Strip-1].Blocks) > 1 {
			m = j.Words.Plan.T("from-block")
		}
		out = append(out, m.With("n", strconv.Itoa(f.Times), "strip", strconv.Itoa(f.Strip), "block", strconv.Itoa(f.Block)))
	}
	return strings.Join(out, string(j.Words.Join.Clauses))
}

func (j Job) warnings(sheet int) []string {
	var out []string
	for _, w := range j.Plan.Warnings() {
		if w.Sheet == sheet {
			out = append(out, "! "+j.fill(j.Words.Plan.Warnings[string(w.What)], record.With("n", w.Times), tell.Told("size", j.withUnit(w.Size))))
		}
	}
	return out
}

func (j Job) cloth() []string {
	w, b := j.Words.Plan, j.Cloth
	out := []string{w.T("cloth").With("bolt", j.ClothName, "usable", j.withUnit(b.Usable)), w.T("cloth-cut").With("length", j.withUnit(b.Length))}
	if b.Least >= b.Length {
		out[1] += " " + string(w.T("cloth-best"))
	} else {
		out[1] += " " + w.T("cloth-near").With("least", j.withUnit(b.Least), "percent", j.percent(b.Length-b.Least, b.Least))
	}
	thousandths := func(n int64) string {
		return j.Words.Measure(strconv.FormatFloat(float64(n)/1000, 'f', -1, 64), "%")
	}
	shrunk := ""
	if b.Cloth.ShrinkWarp+b.Cloth.ShrinkWeft > 0 {
		shrunk = thousandths(b.Cloth.ShrinkWarp)
	}
	out = append(out, j.fill(w.T("cloth-need"), tell.Told("need", j.withUnit(b.Need)), tell.Told("squaring", j.withUnit(b.Cloth.Squaring)), tell.Told("shrunk", shrunk),
		tell.Told("warp", thousandths(b.Cloth.ShrinkWarp)), tell.Told("weft", thousandths(b.Cloth.ShrinkWeft))))
	if j.ClothLeft.Code != "" {
		out = append(out, tell.Say(j.Words, j.ClothLeft)+".")
	}
	if b.Buy > 0 {
		out = append(out, w.T("cloth-buy").With("buy", j.withUnit(b.Buy), "step", j.withUnit(b.Cloth.Step)))
	} else {
		out = append(out, string(w.T("wet-enough")))
	}
	return append(append(out, string(w.T("cloth-warp"))), j.texts(w.ClothNotes)...)
}
