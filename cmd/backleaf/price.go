package main

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/go-json-experiment/json"

	"backleaf/record/book"
)

// price is an amount of money: hundredths of a unit of an ISO 4217 currency.
type price struct {
	Minor    int64  `json:"minor"`
	Currency string `json:"currency"`
}

// privatePart is what stands outside the journal: it can be erased.
type privatePart struct {
	Price price  `json:"price,omitzero"`
	To    string `json:"to,omitzero"`
	Note  string `json:"note,omitzero"`
}

// seal makes a private part ready to be kept, with its digest for the entry.
func (a *app) seal(p privatePart) (book.Private, string) {
	b, err := json.Marshal(p, json.Deterministic(true))
	if err != nil {
		panic("backleaf: a private part is plain data: " + err.Error())
	}
	if a.salt == nil {
		return book.Seal(b)
	}
	s := book.Private{Salt: a.salt(), Data: b}
	return s, s.Digest()
}

var priceText = regexp.MustCompile(`^([0-9]{1,9})(?:[.,]([0-9]{1,2}))?\s*([A-Za-z]{3})?$`)

// parsePrice reads "38.50 EUR"; the currency may be left out where the studio
// has one.
func parsePrice(s, currency string) (price, error) {
	m := priceText.FindStringSubmatch(strings.TrimSpace(s))
	if m == nil {
		return price{}, fmt.Errorf("%q: expected an amount and a currency, like \"38.50 EUR\"", s)
	}
	c := strings.ToUpper(orElse(m[3], currency))
	if c == "" {
		return price{}, fmt.Errorf("%q has no currency, and the studio has none set", s)
	}
	whole, _ := strconv.ParseInt(m[1], 10, 64)
	frac, _ := strconv.ParseInt((m[2] + "00")[:2], 10, 64)
	return price{whole*100 + frac, c}, nil
}

func (p price) String() string {
	return fmt.Sprintf("%d.%02d %s", p.Minor/100, p.Minor%100, p.Currency)
}
