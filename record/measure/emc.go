package measure

import "fmt"

// The humidity and temperature over which the moisture equation is used.
const (
	emcMaxRH      = 95
	emcMinCelsius = -2
	emcMaxCelsius = 60
)

// EMC is the moisture content, in percent of dry mass, at which solid wood
// comes to rest in air of the given temperature and relative humidity: the
// two-hydrate Hailwood-Horrobin equation,
//
//	a = K*h, h = RH/100
//	M = 1800/W * (a/(1-a) + (K1*a + 2*K1*K2*a²)/(1 + K1*a + K1*K2*a²))
//
// with the SI coefficients of FPL-RN-0268 (Wood Handbook eq. 4-5). Range -2 to
// 60 °C and 0 to 95 % RH, where the printed table stops. The fit strays from
// the tabulated data by 0.13 % on average. For hot-pressed boards see
// [IsSolidWoodEstimate].
func EMC(celsius, rhPercent float64) (float64, error) {
	if err := first(
		within("temperature", celsius, emcMinCelsius, emcMaxCelsius, "°C"),
		within("relative humidity", rhPercent, 0, emcMaxRH, "%"),
	); err != nil {
		return 0, err
	}
	t := celsius
	return hailwoodHorrobin(rhPercent/100,
		349+1.29*t+0.0135*t*t,
		0.805+0.000736*t-0.00000273*t*t,
		6.27-0.00938*t-0.000303*t*t,
		1.91+0.0407*t-0.000293*t*t), nil
}

// EMCFahrenheit is [EMC] with the US coefficients of FPL-190 and a temperature
// of 28.4 to 140 °F. The two sets agree within 0.014 % from -1 to 38 °C.
func EMCFahrenheit(fahrenheit, rhPercent float64) (float64, error) {
	if err := first(
		within("temperature", fahrenheit, emcMinCelsius*1.8+32, emcMaxCelsius*1.8+32, "°F"),
		within("relative humidity", rhPercent, 0, emcMaxRH, "%"),
	); err != nil {
		return 0, err
	}
	t := fahrenheit
	return hailwoodHorrobin(rhPercent/100,
		330+0.452*t+0.00415*t*t,
		0.791+0.000463*t-0.000000844*t*t,
		6.34+0.000775*t-0.0000935*t*t,
		1.09+0.0284*t-0.0000904*t*t), nil
}

// hailwoodHorrobin never divides by zero in the permitted range: K*h stays
// below 0.85 and the other terms are positive.
func hailwoodHorrobin(h, w, k, k1, k2 float64) float64 {
	a := k * h
	return 1800 / w * (a/(1-a) + (k1*a+2*k1*k2*a*a)/(1+k1*a+k1*k2*a*a))
}

// RHForEMC is the inverse of [EMC]: the relative humidity in percent at which
// solid wood holds the given moisture content. A content that needs more than
// 95 % RH at that temperature is refused.
func RHForEMC(celsius, moisturePercent float64) (float64, error) {
	top, err := EMC(celsius, emcMaxRH)
	if err != nil {
		return 0, err
	}
	if err := within("moisture content", moisturePercent, 0, top, "%"); err != nil {
		return 0, fmt.Errorf("%w (0 to 95 %% RH at %.6g °C)", err, celsius)
	}
	// The equation rises strictly with humidity, so halving finds the place;
	// 60 halvings are beyond the precision of a float64.
	lo, hi := 0.0, float64(emcMaxRH)
	for range 60 {
		mid := (lo + hi) / 2
		m, err := EMC(celsius, mid)
		if err != nil {
			return 0, err
		}
		if m < moisturePercent {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2, nil
}

// IsSolidWoodEstimate reports whether [EMC] is only a solid-wood estimate for
// the board. Hot-pressed fibreboards sit some 1 to 3 points lower (common
// practice), and the trade table for particleboard and MDF (Facts about
// Particleboard and MDF, p. 37) falls below the equation from about 60 % RH.
func IsSolidWoodEstimate(board Board) bool {
	return board == MDF || board == Hardboard
}
