package trade

import "backleaf/record"

// FilmMargin is how much warmer than its lowest film-forming temperature a
// dispersion is usually laid, air and board both (common practice): below the
// temperature itself clear films turn white and crack, filled ones look sound
// and stay weak, and later warmth repairs nothing (ASTM D2354; Sewell 1998).
var FilmMargin = struct{ FromCelsius, ToCelsius int64 }{2, 4}

// Frozen says what a material is good for after frost.
type Frozen string

// States after frost.
const (
	UseIfSmooth   Frozen = "use-if-smooth"   // thaw slowly and stir: grains, strings or curd mean throw it away
	ThrowAway     Frozen = "throw-away"      //
	RedoFilm      Frozen = "redo-film"       // a wet film that froze forms no film
	BrittleInCold Frozen = "brittle-in-cold" // the dried film is not harmed, and is brittle
)

// FrozenLiquid says what a liquid material is good for after it froze some
// times. Frost harms dispersions, and glue, casein and egg are refrigerated and
// never frozen; of others nothing is known here. Common practice, and a
// maker's letter.
func FrozenLiquid(b record.Binder, times int) (Frozen, bool) {
	row, ok := binders[b]
	switch {
	case !ok || times < 1 || row.water == no:
		return "", false
	case row.fuses == no || times > 1:
		return ThrowAway, true
	}
	return UseIfSmooth, true
}
