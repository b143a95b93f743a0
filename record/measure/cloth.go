package measure

import "fmt"

// gramsPerSquareMetreOunce is one ounce per square yard in g/m²:
// 28.349523125 / 0.83612736, both exact.
const gramsPerSquareMetreOunce = 28.349523125 / 0.83612736

// GramsPerSquareMetre is the mass per area of a cloth of so many ounces per
// square yard, 0.01 to 100. Source: definitions of ounce and yard.
func GramsPerSquareMetre(ouncesPerSquareYard float64) (float64, error) {
	if err := within("mass per area", ouncesPerSquareYard, 0.01, 100, "oz/yd²"); err != nil {
		return 0, err
	}
	return ouncesPerSquareYard * gramsPerSquareMetreOunce, nil
}

// OuncesPerSquareYard is the inverse of [GramsPerSquareMetre], 0.3 to 3400
// g/m².
func OuncesPerSquareYard(gramsPerSquareMetre float64) (float64, error) {
	if err := within("mass per area", gramsPerSquareMetre, 0.3, 3400, "g/m²"); err != nil {
		return 0, err
	}
	return gramsPerSquareMetre / gramsPerSquareMetreOunce, nil
}

// ThreadsPerCentimetre converts a count per inch, 1 to 500. Source: definition
// of the inch.
func ThreadsPerCentimetre(perInch float64) (float64, error) {
	if err := within("threads", perInch, 1, 500, "per inch"); err != nil {
		return 0, err
	}
	return perInch / 2.54, nil
}

// ThreadsPerInch converts a count per centimetre, 0.3 to 200. Source:
// definition of the inch.
func ThreadsPerInch(perCentimetre float64) (float64, error) {
	if err := within("threads", perCentimetre, 0.3, 200, "per cm"); err != nil {
		return 0, err
	}
	return perCentimetre * 2.54, nil
}

// DuckOuncesPerSquareYard is the weight of a numbered cotton duck, No. 1 to
// 12: the number is 19 less the ounces of a piece of 36 by 22 in, so
//
//	(19 - N) * 36/22
//
// Nos. 7, 9 and 11 are no longer made but stand on old bolts. Lists differ on
// No. 1. Source: units reference page and encyclopedia article on cotton duck.
func DuckOuncesPerSquareYard(number int) (float64, error) {
	if number < 1 || number > 12 {
		return 0, fmt.Errorf("numbered duck %d is outside 1 to 12", number)
	}
	return float64(19-number) * 36 / 22, nil
}

func checkYarn(what string, count float64) error { return within(what, count, 0.1, 10000, "") }

// TexFromCottonCount is the mass of a yarn in grams per 1000 m from its
// English cotton count, 590.54/Ne; Ne 0.1 to 10000. Constant from memory of
// yarn numbering tables.
func TexFromCottonCount(ne float64) (float64, error) {
	if err := checkYarn("cotton count", ne); err != nil {
		return 0, err
	}
	return 590.54 / ne, nil
}

// TexFromLinenLea is the mass of a yarn in grams per 1000 m from its linen
// count, 1653.5/lea; lea 0.1 to 10000. Constant from memory of yarn numbering
// tables.
func TexFromLinenLea(lea float64) (float64, error) {
	if err := checkYarn("linen lea", lea); err != nil {
		return 0, err
	}
	return 1653.5 / lea, nil
}

// TexFromDenier is a ninth of the denier, 0.1 to 10000. Source: definition,
// grams per 9000 m.
func TexFromDenier(denier float64) (float64, error) {
	if err := checkYarn("denier", denier); err != nil {
		return 0, err
	}
	return denier / 9, nil
}

// Yarns is one direction of a weave.
type Yarns struct {
	PerCentimetre float64 // 0.3 to 200
	Tex           float64 // 0.1 to 10000
}

func (y Yarns) check(what string) error {
	return first(
		within(what+" threads", y.PerCentimetre, 0.3, 200, "per cm"),
		within(what+" yarn", y.Tex, 0.1, 10000, "tex"),
	)
}

// WovenGramsPerSquareMetre is the mass per area of a cloth from its threads:
//
//	(n*tex of warp + n*tex of weft)/10 * (1 + crimp)
//
// n per cm, crimp as a fraction 0 to 1 of extra yarn. Source: definition of
// tex.
func WovenGramsPerSquareMetre(warp, weft Yarns, crimp float64) (float64, error) {
	if err := first(
		warp.check("warp"),
		weft.check("weft"),
		within("crimp", crimp, 0, 1, "as a fraction"),
	); err != nil {
		return 0, err
	}
	return (warp.PerCentimetre*warp.Tex + weft.PerCentimetre*weft.Tex) / 10 * (1 + crimp), nil
}
