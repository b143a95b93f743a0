package private

import (
	"backleaf/record/pattern"
	"cmp"
	"strings"
)

var (
	written = pattern.Of(`(?i)^(?:(€|£|[a-z]{3}) *)?(\d[\d., '’\x{00a0}\x{202f}]*?)(?:[,.] ?[-–—]{1,2})? *(€|£|euros?|[a-z]{3})?$`)
	signs   = map[string]string{"€": "EUR", "EURO": "EUR", "EUROS": "EUR", "£": "GBP"}
	cents   = pattern.Of(`[.,](\d{1,2})$`)
	grouped = pattern.Of(`^\d{1,3}([., '’\x{00a0}\x{202f}]\d{3})*$`)
)

// plainPrice writes a price as people put it into a sheet, "1.200,00 €",
// "850,-", "€ 1,200.50", with a decimal point and the code of the currency. A
// sign before three figures parts thousands: no price has three decimals. What
// is written otherwise is left as it is.
func plainPrice(s string) string {
	m := written().FindStringSubmatch(strings.TrimSpace(s))
	if m == nil {
		return s
	}
	whole, after := m[2], ""
	if c := cents().FindStringSubmatch(whole); c != nil {
		whole, after = strings.TrimSuffix(whole, c[0]), "."+c[1]
	}
	if bare := strings.Trim(whole, "0123456789"); bare != "" && !grouped().MatchString(whole) {
		return s
	}
	whole = strings.Map(func(r rune) rune {
		if r < '0' || r > '9' {
			return -1
		}
		return r
	}, whole)
	out := whole + after
	for _, code := range []string{m[1], m[3]} {
		code = strings.ToUpper(code)
		if code != "" {
			return out + " " + cmp.Or(signs[code], code)
		}
	}
	return out
}
