// Package private is what stands outside the journal: to whom, for how much,
// a note for the owner of the book. The journal holds its salted digest alone;
// it can be erased.
package private

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"github.com/go-json-experiment/json"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/pattern"
)

// Price is an amount of money: hundredths of a unit of an ISO 4217 currency.
type Price struct {
	Minor    int64  `json:"minor"`
	Currency string `json:"currency"`
}

func (p Price) String() string {
	return fmt.Sprintf("%d.%02d %s", p.Minor/100, p.Minor%100, p.Currency)
}

// Part is the private part of an entry.
type Part struct {
	Price Price  `json:"price,omitzero"`
	To    string `json:"to,omitzero"`
	Note  string `json:"note,omitzero"`
}

// Named reports that a text holds the name of whom it went to, or a word of it
// with its capital.
func (p Part) Named(text string) bool {
	low := strings.ToLower(text)
	return p.To != "" && strings.Contains(low, strings.ToLower(p.To)) || slices.ContainsFunc(capitals().FindAllString(p.To, -1), func(w string) bool {
		return slices.Contains(capitals().FindAllString(text, -1), w)
	})
}

// Whole reports that a text holds the whole of that name, where it is a name: one
// with a capital, and not "the gallery". An address that follows it is no part of it.
func (p Part) Whole(text string) bool {
	words := func(s string) []string { return word().FindAllString(strings.ToLower(s), -1) }
	name := words(p.To)
	if first, _, _ := strings.Cut(p.To, ","); len(words(first)) > 1 {
		name = words(first)
	}
	within := func(words []string) string { return " " + strings.Join(words, " ") + " " }
	return strings.ContainsFunc(p.To, unicode.IsUpper) && strings.Contains(within(words(text)), within(name))
}

// ToldBy reports that the free texts of an entry tell to whom its panels went: it
// stands outside the journal, where it can be erased. Of its own private part a
// word of the name is too much.
func ToldBy(body record.Body, own Part, others []Part) bool {
	texts := record.FreeText(body)
	if a, ok := body.(record.Amended); ok {
		texts = append(texts, string(a.Change))
	}
	return slices.ContainsFunc(texts, func(t string) bool {
		return own.Named(t) || slices.ContainsFunc(others, func(p Part) bool { return p.Whole(t) })
	})
}

var word = pattern.Of(`[\pL\pM\pN]+`)

var capitals = pattern.Of(`\p{Lu}\pL{2,}`)

// The length of a salt: nobody can try all of them.
const saltBytes, leastSaltBytes = 32, 16

// Seal makes a private part ready to be kept, with its digest for the entry.
// Nothing private gives nothing to keep and no digest.
func (p Part) Seal(chance io.Reader) (sealed *book.Private, digest string, err error) {
	if p == (Part{}) {
		return nil, "", nil
	}
	b, err := json.Marshal(p, json.Deterministic(true))
	if err != nil {
		return nil, "", err
	}
	salt := make([]byte, saltBytes)
	n, err := io.ReadAtLeast(chance, salt, leastSaltBytes)
	if err != nil {
		return nil, "", fmt.Errorf("cannot salt the private part: %w", err)
	}
	s := book.Private{Salt: salt[:n], Data: b}
	return &s, s.Digest(), nil
}

// Of reads the private part of an entry; false if there is none here.
func Of(ctx context.Context, b *book.Book, seq int64) (p Part, here bool, err error) {
	sealed, here, err := b.Private(ctx, seq)
	if err != nil || !here {
		return p, false, err
	}
	if p, err = Read(sealed); err != nil {
		return p, false, fmt.Errorf("the private part of E%d cannot be read: %w", seq, err)
	}
	return p, true, nil
}

// Read reads a private part as it is kept.
func Read(sealed book.Private) (p Part, err error) {
	err = json.Unmarshal(sealed.Data, &p)
	return p, err
}

var priceText = pattern.Of(`^([0-9]{1,9})(?:[.,]([0-9]{1,2}))?\s*([A-Za-z]{3})?$`)

// ParsePrice reads "38.50 EUR", and prices as people write them into a sheet; the
// currency may be left out where the studio has one.
func ParsePrice(s, currency string) (Price, error) {
	m := priceText().FindStringSubmatch(plainPrice(s))
	if m == nil {
		return Price{}, fmt.Errorf("%q: expected an amount and a currency, like \"38.50 %s\"", s, cmp.Or(currency, "EUR"))
	}
	c := strings.ToUpper(cmp.Or(m[3], currency))
	if c == "" {
		return Price{}, fmt.Errorf("%q has no currency, and the studio has none set", s)
	}
	whole, _ := strconv.ParseInt(m[1], 10, 64)
	frac, _ := strconv.ParseInt((m[2] + "00")[:2], 10, 64)
	return Price{whole*100 + frac, c}, nil
}
