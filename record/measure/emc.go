package measure

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
// the tabulated data by 0.13 % on average. Hot-pressed fibreboards sit some 1 to
// 3 points lower (common practice); the trade table for particleboard and MDF
// (Facts about Particleboard and MDF, p. 37) falls below the equation from about
// 60 % RH.
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

// hailwoodHorrobin never divides by zero in the permitted range: K*h stays
// below 0.85 and the other terms are positive.
func hailwoodHorrobin(h, w, k, k1, k2 float64) float64 {
	a := k * h
	return 1800 / w * (a/(1-a) + (k1*a+2*k1*k2*a*a)/(1+k1*a+k1*k2*a*a))
}
