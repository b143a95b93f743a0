package edtf

import "time"

// The specification names seasons 21 to 24 but gives no months. Sorting needs
// some, so the meteorological seasons of the northern hemisphere are used
// (common practice): spring is March to May, winter December to February of
// the next year. Print says "spring 2019" and no months.
const firstSpringMonth = 3

// bounds gives the first and last second of a dated point.
func (p point) bounds() (first, last time.Time) {
	switch p.kind {
	case instant:
		return p.at, p.at
	case season:
		m := firstSpringMonth + 3*(p.month-21)
		return start(p.year, m, 1), before(p.year, m+3, 1)
	case day:
		if p.day != 0 {
			return start(p.year, p.month, p.day), before(p.year, p.month, p.day+1)
		}
	}
	if p.month != 0 {
		return start(p.year, p.month, 1), before(p.year, p.month+1, 1)
	}
	return start(p.year, 1, 1), before(p.year+p.years, 1, 1)
}

func (p point) unspecified() bool {
	return p.years > 1 || (p.kind == month && p.month == 0) || (p.kind == day && p.day == 0)
}

func (p point) exactDay() bool {
	return p.kind == instant || (p.kind == day && p.day != 0 && p.qualifier == 0)
}

func start(y, m, d int) time.Time {
	return time.Date(y, time.Month(m), d, 0, 0, 0, 0, time.UTC)
}

func before(y, m, d int) time.Time { return start(y, m, d).Add(-time.Second) }
