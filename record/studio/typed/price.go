package typed

import (
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
)

// Price reads an amount of money; without a currency it is in the studio's.
func (r *Reader) Price(field, typed string) (p private.Price) {
	if typed == "" || r.err != nil {
		return p
	}
	p, err := private.ParsePrice(typed, r.Shop.Studio.Currency)
	if err != nil {
		r.Fail(refuse.Input(field, "not-read", "%w", err))
	}
	return p
}
