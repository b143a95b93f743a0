package private

import "testing"

func TestPlainPrice(t *testing.T) {
	for typed, want := range map[string]string{
		"1.200,00 €": "1200.00 EUR", "850,-": "850", "850,– €": "850 EUR", "€ 1,200.50": "1200.50 EUR", "1'200.00 CHF": "1200.00 CHF", "1 200 Euro": "1200 EUR", "£95": "95 GBP",
		"1200 EUR": "1200 EUR", "38.50 EUR": "38.50 EUR", "1.200": "1200", "1200": "1200", "850.5": "850.5",
		"12.34.56": "12.34.56", "1.20.300": "1.20.300", "1200,-- EUR": "1200 EUR", "eur 850": "850 EUR", "850,00 euros": "850.00 EUR", "1.200,5": "1200.5", "850.–": "850", "$900": "$900", "ca. 850": "ca. 850", "850 / 900": "850 / 900", "by arrangement": "by arrangement", "": "",
	} {
		if got := plainPrice(typed); got != want {
			t.Errorf("%q: %q, want %q", typed, got, want)
		}
	}
}
