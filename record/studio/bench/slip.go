package bench

import (
	"strings"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
)

// What no panel can have is refused; what is only odd is doubted (common
// practice: millimetres and centimetres, grams and kilograms).
const (
	tenfold   = 10.0
	mostCoat  = 50_000.0  // g or mL per m²: five centimetres of it
	mostFilm  = 50 * 1000 // µm
	sheetOver = 1.05      // sheets are sold by round figures
)

// otherUnit is the unit that is most often meant instead.
var otherUnit = strings.NewReplacer(" cm", " mm", " in", " mm", " kg", " g", " L", " mL")

// slip refuses what was typed, with the other reading.
func slip(field, typed, why string, values ...any) error {
	e := refuse.Input(field, "slip-of-unit", "%s: "+why, append([]any{typed}, values...)...)
	if meant := otherUnit.Replace(typed); meant != typed {
		return e.With(record.With("meant", meant))
	}
	return e
}

// apart reports that two lengths differ tenfold.
func apart(a, b record.Length) bool {
	x, ok := a.Micrometers()
	y, ok2 := b.Micrometers()
	return ok && ok2 && x > 0 && y > 0 && max(float64(x)/float64(y), float64(y)/float64(x)) >= tenfold
}

// noSuchBoard refuses a panel that cannot be of its board.
func noSuchBoard(w *record.Workshop, c record.Cut) error {
	m, _ := w.MaterialNow(c.Board)
	if of := m.Board.Thickness; apart(c.Size.Depth, of) {
		return slip("size", c.Size.Depth.String(), "%s is recorded as %s thick", m.Key, of)
	}
	l, _ := w.Lot(c.Lot)
	long, short, ok := sides(c.Size)
	if most, least, ok2 := sides(l.Sheet); ok && ok2 && (long > most*sheetOver || short > least*sheetOver) {
		return slip("size", c.Size.String(), "a sheet of %s measures %s", c.Lot, l.Sheet)
	}
	return nil
}

// sides are the longer and the shorter one of a size, in µm.
func sides(s record.Size) (long, short float64, ok bool) {
	h, ok := s.Height.Micrometers()
	w, ok2 := s.Width.Micrometers()
	return float64(max(h, w)), float64(min(h, w)), ok && ok2
}

// noSuchCoat refuses an amount that lies on no panel, and a film as thick.
func noSuchCoat(v *studio.View, body record.Body) error {
	c, _, _ := record.Entry{Body: body}.Wet()
	for _, f := range []struct {
		field string
		film  record.Length
	}{{"wet-film", c.WetFilm}, {"dry-film", c.DryFilm}} {
		if um, ok := f.film.Micrometers(); ok && um > mostFilm {
			return slip(f.field, f.film.String(), "no coat is as thick")
		}
	}
	s, ok := spreadOf(v, body)
	if !ok || s.spread <= mostCoat {
		return nil
	}
	field, amount := "amount", c.WetTotal
	if amount.IsZero() {
		field, amount = "amount-each", c.WetEach
	}
	return slip(field, amount.String(), "no panel holds %.0f %s a square metre", s.spread/1000, map[string]string{"g": "kg", "mL": "L"}[s.unit])
}
