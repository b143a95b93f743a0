package measure

import "math"

// The Magnus coefficients of Alduchov and Eskridge 1996, over water.
const (
	magnusHPa     = 6.1094
	magnusFactor  = 17.625
	magnusCelsius = 243.04
)

func checkAir(celsius, rhPercent, lowestRH float64) error {
	return first(
		within("temperature", celsius, -40, 50, "°C"),
		within("relative humidity", rhPercent, lowestRH, 100, "%"),
	)
}

// SaturationHPa is the vapour pressure of saturated air over water:
//
//	6.1094 * exp(17.625*T / (T + 243.04))
//
// -40 to 50 °C. Source: Alduchov and Eskridge 1996.
func SaturationHPa(celsius float64) (float64, error) {
	if err := checkAir(celsius, 100, 0); err != nil {
		return 0, err
	}
	return magnusHPa * math.Exp(magnusFactor*celsius/(celsius+magnusCelsius)), nil
}

// DewPointCelsius is the temperature at which the air would be saturated:
//
//	γ = ln(RH/100) + 17.625*T/(243.04 + T)
//	Td = 243.04*γ/(17.625 - γ)
//
// -40 to 50 °C, 1 to 100 % RH. Source: the Magnus form, solved for T.
func DewPointCelsius(celsius, rhPercent float64) (float64, error) {
	if err := checkAir(celsius, rhPercent, 1); err != nil {
		return 0, err
	}
	g := math.Log(rhPercent/100) + magnusFactor*celsius/(magnusCelsius+celsius)
	return magnusCelsius * g / (magnusFactor - g), nil
}

// DryingDeficitHPa is the vapour pressure that the air still has room for, an
// index of how well a water-borne film dries:
//
//	saturation * (1 - RH/100)
//
// -40 to 50 °C, 0 to 100 % RH. It compares two days in one room; it gives no
// hours, since draught, film and board matter as much. Source: definition.
func DryingDeficitHPa(celsius, rhPercent float64) (float64, error) {
	if err := checkAir(celsius, rhPercent, 0); err != nil {
		return 0, err
	}
	saturated, err := SaturationHPa(celsius)
	if err != nil {
		return 0, err
	}
	return saturated * (1 - rhPercent/100), nil
}
