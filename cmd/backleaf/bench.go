package main

import (
	"context"
	"fmt"
	"regexp"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
)

// bench is what every command at the bench shares: which panels, when.
type bench struct {
	at     string
	except []string
}

func (o *bench) flags(c *cobra.Command) {
	o.timeFlag(c)
	c.Flags().StringSliceVar(&o.except, "except", nil, "panels to leave out")
}

func (o *bench) timeFlag(c *cobra.Command) {
	c.Flags().StringVar(&o.at, "at", "", "when it happened: 14:05, \"yesterday 16:30\", \"2026-05-02 14:05\", 1998~, unknown (default now)")
}

// benchState is the book as a bench command sees it.
type benchState struct {
	book   *book.Book
	roll   record.Roll
	shop   *record.Workshop // the studio and the shelf; of panels only those named
	panels []record.Number
	at     record.When
	now    time.Time
	zone   *time.Location
	talk   func(format string, args ...any) // says a remark
}

// atBench opens the book, finds the panels and the time, lets make say what
// happened, writes it as one transaction and says what was written.
func (a *app) atBench(ctx context.Context, o *bench, terms []string, make func(*benchState) ([]record.Body, string, error)) error {
	return a.write(ctx, func(b *book.Book) error {
		s, err := a.look(ctx, b, o, terms)
		if err != nil {
			return err
		}
		bodies, what, err := make(s)
		if err != nil {
			return err
		}
		var es []record.Entry
		for _, body := range bodies {
			es = append(es, record.Entry{At: s.at, Panels: s.panels, Body: body})
		}
		return a.append(ctx, s, what, es...)
	})
}

// look reads what a bench command needs to know. Without terms no panels are
// looked up.
func (a *app) look(ctx context.Context, b *book.Book, o *bench, terms []string) (*benchState, error) {
	s := &benchState{book: b, now: a.now(), talk: a.talk}
	var err error
	if s.roll, err = b.Roll(ctx); err != nil {
		return nil, err
	}
	if len(terms) > 0 {
		if s.panels, err = s.roll.Select(terms, o.except); err != nil {
			return nil, hinted(err, "\"backleaf list\" shows the panels of this book")
		}
	}
	if s.shop, err = b.WorkshopOf(ctx, s.panels...); err != nil {
		return nil, err
	}
	s.zone = zone(s.shop.Studio)
	s.at, err = parseAt(o.at, s.now, s.zone)
	return s, err
}

// append writes entries and says so in one or two lines.
func (a *app) append(ctx context.Context, s *benchState, what string, es ...record.Entry) error {
	return a.appendWith(ctx, s, what, nil, es...)
}

// appendWith is append for entries of which the first has a private part.
func (a *app) appendWith(ctx context.Context, s *benchState, what string, secret *book.Private, es ...record.Entry) error {
	private := map[int]book.Private{}
	if secret != nil {
		private[0] = *secret
	}
	return a.compose(ctx, s, what, func(*book.Draft) ([]record.Entry, map[int]book.Private, error) { return es, private, nil })
}

// compose writes entries that depend on what the book holds at that moment,
// such as the next free number, and says so.
func (a *app) compose(ctx context.Context, s *benchState, what string, make func(*book.Draft) ([]record.Entry, map[int]book.Private, error)) error {
	if t, ok := s.shop.Written.Exact(); ok && s.now.Before(t.Add(-time.Minute)) {
		a.talk("note: this computer's clock (%s) is behind the last entry in the book (%s): set it right",
			s.now.In(s.zone).Format("2 Jan 15:04"), t.In(s.zone).Format("2 Jan 15:04"))
	}
	done, err := s.book.Compose(ctx, s.now.In(s.zone), make)
	if err != nil {
		return fieldHint(err)
	}
	first, last := done[0], done[len(done)-1]
	name := fmt.Sprintf("E%d", first.Seq)
	if last.Seq != first.Seq {
		name = fmt.Sprintf("E%d to E%d", first.Seq, last.Seq)
	}
	line := name + "  " + what
	if n := sayPanels(first.Panels); n != "" {
		line += ": " + n
	}
	if !first.At.IsZero() {
		line += ", " + sayWhen(first.At, s.now, s.zone)
	}
	a.say("%s", line)
	switch first.Kind() {
	case "studio", "material", "lot":
	case "cut":
		a.say("to take it back: backleaf panel discard %s --because \"…\"", sayTerm(first.Panels))
	default:
		a.say("to take it back: backleaf withdraw %d --because \"…\"", first.Seq)
	}
	a.remindBackup(ctx, s, last.Seq)
	return nil
}

// which names the panels of which something is true; empty if of none.
func (s *benchState) which(is func(*record.Panel) bool) string {
	var ns []record.Number
	for _, n := range s.panels {
		if is(s.shop.Panel(n)) {
			ns = append(ns, n)
		}
	}
	return sayPanels(ns)
}

// fieldHint says that a refused entry left nothing behind.
func fieldHint(err error) error { return hinted(err, "nothing was written") }

// sayPanels names panels briefly: one, a run, or a count with both ends.
func sayPanels(ns []record.Number) string {
	switch len(ns) {
	case 0:
		return ""
	case 1:
		return string(ns[0])
	case 2:
		return fmt.Sprintf("%s and %s", ns[0], ns[1])
	}
	between := " to "
	if int(len(ns)) != ns[len(ns)-1].Serial()-ns[0].Serial()+1 {
		between = " … "
	}
	return fmt.Sprintf("%d panels, %s%s%s", len(ns), ns[0], between, ns[len(ns)-1])
}

// sayTerm names panels as they could be typed again.
func sayTerm(ns []record.Number) string {
	if len(ns) > 1 && len(ns) == ns[len(ns)-1].Serial()-ns[0].Serial()+1 {
		return fmt.Sprintf("%s..%s", ns[0], ns[len(ns)-1])
	}
	var s []string
	for i, n := range ns {
		if i == 6 {
			s = append(s, "…")
			break
		}
		s = append(s, string(n))
	}
	return strings.Join(s, " ")
}

// mix reads a typed mix against the shelf: each name is a lot, or a material
// of which there is at most one lot.
func (s *benchState) mix(typed string) ([]record.Part, error) {
	if typed == "" {
		return nil, nil
	}
	parts, err := record.ParseMix(typed)
	if err != nil {
		return nil, &failure{err, "", exitUsage}
	}
	var out []record.Part
	for _, p := range parts {
		m, l, err := s.onShelf(p.Name)
		if err != nil {
			return nil, err
		}
		out = append(out, record.Part{Parts: p.Parts, Material: m, Lot: l})
	}
	return out, nil
}

// onShelf finds a lot, or a material and its only lot.
func (s *benchState) onShelf(k record.Key) (material, lot record.Key, err error) {
	if l, ok := s.shop.Lot(k); ok {
		return l.Material, k, nil
	}
	if _, ok := s.shop.Material(k); !ok {
		return "", "", hinted(fmt.Errorf("there is neither a lot nor a material %q on the shelf", k), "\"backleaf material list\" and \"backleaf lot list\" show the shelf")
	}
	var lots []string
	for _, l := range s.shop.Lots {
		if l.Body.Material == k {
			lots = append(lots, string(l.Body.Key))
		}
	}
	switch len(lots) {
	case 0:
		return k, "", nil
	case 1:
		return k, record.Key(lots[0]), nil
	}
	return "", "", hinted(fmt.Errorf("there are %d lots of %s", len(lots), k), "name the one you used: "+strings.Join(lots, ", "))
}

// coating is the flags of a wet application.
type coating struct {
	with, thinned, thinner, tool, total, each, wetFilm, dryFilm, temp, rh, note string
}

func (o *coating) flags(c *cobra.Command) {
	f := c.Flags()
	f.StringVar(&o.with, "with", "", "lot or material, or a mix: \"3 primer + 1 sealer\"")
	f.StringVar(&o.thinned, "thinned", "", "water added, as a share of the volume: 10%")
	f.StringVar(&o.thinner, "thinner", "", "what it was thinned with, if not water")
	f.StringVar(&o.tool, "tool", "", "brush, roller, knife …")
	f.StringVar(&o.total, "amount", "", "wet amount for all panels together: \"220 g\" or \"150 mL\"")
	f.StringVar(&o.each, "amount-each", "", "wet amount for each panel")
	f.StringVar(&o.wetFilm, "wet-film", "", "wet thickness measured with a gauge: \"100 µm\"")
	f.StringVar(&o.dryFilm, "dry-film", "", "dry thickness measured")
	f.StringVar(&o.temp, "temp", "", "temperature of the room: \"21 °C\" or \"70 F\"")
	f.StringVar(&o.rh, "rh", "", "relative humidity of the room: 55%")
	f.StringVar(&o.note, "note", "", "remark")
}

func (o *coating) read(s *benchState) (record.Coating, error) {
	c := record.Coating{Thinner: o.thinner, Tool: o.tool, Note: o.note}
	var err error
	if c.Mix, err = s.mix(o.with); err != nil {
		return c, err
	}
	err = s.texts(
		text{"--thinned", o.thinned, &c.Thinned}, text{"--amount", o.total, &c.WetTotal}, text{"--amount-each", o.each, &c.WetEach},
		text{"--temp", o.temp, &c.Temperature}, text{"--rh", o.rh, &c.Humidity})
	if err != nil {
		return c, err
	}
	for _, w := range []struct {
		flag string
		a    record.Amount
	}{{"--amount", c.WetTotal}, {"--amount-each", c.WetEach}} {
		mg, mass := w.a.Milligrams()
		ul, volume := w.a.Microliters()
		if (mass || volume) && mg+ul == 0 {
			return c, usage("leave it out if it was not measured", "%s: a coat of nothing", w.flag)
		}
	}
	if err := roomTemperature(c.Temperature); err != nil {
		return c, err
	}
	// A film is measured with a gauge: the unit of panels is not its unit.
	return c, texts("", text{"--wet-film", o.wetFilm, &c.WetFilm}, text{"--dry-film", o.dryFilm, &c.DryFilm})
}

// text is one typed value on its way into a field.
type text struct {
	flag, typed string
	into        interface{ UnmarshalText([]byte) error }
}

// texts reads typed values; a length without a unit is in that of the studio.
// Ounces may be meant as a volume.
func (s *benchState) texts(ts ...text) error {
	if err := texts(s.shop.Studio.Units, ts...); err != nil {
		return err
	}
	for _, t := range ts {
		if n, ok := t.into.(*record.Amount); ok && n.Unit() == "oz" {
			s.talk("note: oz is taken as weight; for fluid ounces write \"%s fl oz\"", n.Number())
			break
		}
	}
	return nil
}

// figures is a length or size that names no unit at all.
var figures = regexp.MustCompile(`^[0-9.,/+\-xX×*\s\x{2044}\x{a0}\x{202f}½¼¾⅛⅜⅝⅞]*[0-9½¼¾⅛⅜⅝⅞]$`)

// inUnit adds the unit to a length or size that names none.
func inUnit(unit record.LengthUnit, typed string, into any) string {
	switch into.(type) {
	case *record.Length, *record.Size:
		if unit != "" && unit != record.Unknown && figures.MatchString(strings.TrimSpace(typed)) {
			return typed + " " + string(unit)
		}
	}
	return typed
}

// texts reads typed values; the error names the flag. A length or size without
// any unit takes the one given, if there is one.
func texts(unit record.LengthUnit, ts ...text) error {
	for _, t := range ts {
		if t.typed == "" {
			continue
		}
		if err := t.into.UnmarshalText([]byte(inUnit(unit, t.typed, t.into))); err != nil {
			return usage("", "%s: %v", t.flag, err)
		}
	}
	return nil
}

// roomTemperature refuses what no workroom has: most often a slip of the unit.
func roomTemperature(t record.Temperature) error {
	if mc, ok := t.Millicelsius(); ok && (mc < -30_000 || mc > 60_000) {
		return usage("was it measured in °F?", "--temp: %s is not the temperature of a room", t)
	}
	return nil
}

// word checks that a typed word is in a closed list and returns it.
func word[T ~string](flag, typed, list string) (T, error) {
	typed = strings.ToLower(strings.TrimSpace(typed))
	if list == "GritScale" {
		typed = strings.ToUpper(typed)
	}
	if typed == "" || typed == record.Unknown {
		return T(typed), nil
	}
	for _, w := range record.Words(list) {
		if w == typed {
			return T(w), nil
		}
	}
	return "", usage("", "%s: %q is not one of %s, unknown", flag, typed, strings.Join(record.Words(list), ", "))
}

// answer reads yes, no or unknown.
func answer(flag, typed string) (record.Answer, error) {
	return word[record.Answer](flag, typed, "Answer")
}

// faces reads "front,back,edges" or "all".
func faces(flag string, typed []string) ([]record.Face, error) {
	var out []record.Face
	for _, t := range typed {
		t = strings.ToLower(strings.TrimSpace(t))
		if t == "all" {
			return append([]record.Face{}, record.Faces...), nil
		}
		if t == "edge" {
			t = "edges"
		}
		f, err := word[record.Face](flag, t, "Face")
		if err != nil || f == record.Unknown {
			return nil, usage("", "%s: %q is not one of front, back, edges, all", flag, t)
		}
		out = append(out, f)
	}
	return out, nil
}

// sayFaces says faces as a person would.
func sayFaces(fs []record.Face) string {
	if len(fs) == 3 {
		return "front, back and edges"
	}
	var s []string
	for _, f := range fs {
		s = append(s, string(f))
	}
	return strings.Join(s, " and ")
}

// sayMix says a mix as it would be typed.
func sayMix(ps []record.Part) string {
	var s []string
	for _, p := range ps {
		name := string(p.Material)
		if p.Lot != "" && p.Lot != record.Unknown {
			name = string(p.Lot)
		}
		if len(ps) > 1 {
			name = fmt.Sprintf("%d %s", p.Parts, name)
		}
		s = append(s, name)
	}
	return strings.Join(s, " + ")
}
