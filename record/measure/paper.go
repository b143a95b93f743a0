package measure

// PaperTearMillinewtons is the least tearing resistance, in mN, that ISO 9706 asks
// of permanent paper of the given mass per area: 350 from 70 g/m² and, from 25
// to 70 g/m²,
//
//	6*w - 70
//
// 25 to 225 g/m². Source: ISO 9706, as in the Library of Congress report on
// permanent paper, appendix 3.
func PaperTearMillinewtons(gramsPerSquareMetre float64) (float64, error) {
	if err := within("mass per area", gramsPerSquareMetre, 25, 225, "g/m²"); err != nil {
		return 0, err
	}
	return min(350, 6*gramsPerSquareMetre-70), nil
}

// calciumCarbonateGramsPerMole is the molar mass of CaCO₃; each mole answers
// two of acid.
const calciumCarbonateGramsPerMole = 100.087

// PaperAlkaliReserveMoles is the acid, in mol per kg of paper, that an alkali
// reserve given as g CaCO₃ per kg can answer:
//
//	2 * g / 100.087
//
// 0 to 500 g/kg. ISO 9706 asks 20 g/kg, which it also words as 0.4 mol/kg.
func PaperAlkaliReserveMoles(calciumCarbonateGramsPerKg float64) (float64, error) {
	if err := within("alkali reserve", calciumCarbonateGramsPerKg, 0, 500, "g/kg"); err != nil {
		return 0, err
	}
	return 2 * calciumCarbonateGramsPerKg / calciumCarbonateGramsPerMole, nil
}
