package shelf

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
)

// Generic returns a material of the starter shelf.
func Generic(key string) (record.Material, error) {
	starter := Starter()
	i := slices.IndexFunc(starter, func(s record.Material) bool { return string(s.Key) == key })
	if i < 0 {
		return record.Material{}, refuse.Unclearly("no-such-generic", "there is no %q on the starter shelf", key).With(record.With("near", record.Nearest(key, starterKeys())))
	}
	return starter[i], nil
}

// Like fills what a material does not say of itself from the starter shelf. It is
// mixed if it says other figures, or whence its figures are: its basis is
// then not that of all.
func Like(m record.Material, key string) (filled record.Material, mixed bool, err error) {
	g, err := Generic(key)
	mixed = m.Basis != ""
	for to, from := range map[any]any{&m.Board: &g.Board, &m.Cloth: &g.Cloth, &m: &g} {
		t, f := reflect.ValueOf(to).Elem(), reflect.ValueOf(from).Elem()
		for i := range t.NumField() {
			if t.Field(i).IsZero() {
				t.Field(i).Set(f.Field(i))
			} else if _, figure := t.Field(i).Interface().(fmt.Stringer); (figure || t.Field(i).Kind() == reflect.Int64) && !t.Field(i).Equal(f.Field(i)) {
				mixed = true
			}
		}
	}
	return m, mixed, err
}

func starterKeys() (out []string) {
	for _, m := range Starter() {
		out = append(out, string(m.Key))
	}
	return out
}

// Take puts materials of the starter shelf on that of the studio as they are, but
// for those that stand there so.
func Take(ctx context.Context, v *studio.View, at record.When, ms []record.Material) (w studio.Written, err error) {
	var es []record.Entry
	var there []record.Key
	for _, m := range ms {
		if now, ok := v.Shop.MaterialNow(m.Key); ok && reflect.DeepEqual(now, accept.FillWords(m)) {
			there = append(there, m.Key)
			continue
		}
		es = append(es, record.Entry{At: at, Body: m})
	}
	if es != nil {
		w, err = v.Write(ctx, es...)
	}
	if there != nil {
		w.Warn("on-shelf-already", record.With("materials", there))
	}
	return w, err
}

// Material returns a material of the shelf.
func Material(w *record.Workshop, k record.Key) (record.Material, error) {
	m, ok := w.MaterialNow(k)
	if !ok {
		return m, refuse.Cannot("no-such-material", "there is no material %q on the shelf", k).With(near(w, k))
	}
	return m, nil
}

// near is what most likely was meant by a key of no material: another key
// before a word that was only said of one.
func near(w *record.Workshop, k record.Key) record.Value {
	var keys []string
	for _, m := range w.Materials {
		keys = append(keys, string(m.Body.Key))
	}
	return record.With("near", cmp.Or(record.Nearest(string(k), keys), record.Nearest(string(k), materialWords(w))))
}

// AddLot puts a lot on the shelf. Its price stays outside the journal.
func AddLot(ctx context.Context, v *studio.View, at record.When, l record.Lot, price private.Price) (studio.Written, error) {
	if err := free(v.Shop, l); err != nil {
		return studio.Written{}, err
	}
	sealed, digest, err := private.Part{Price: price}.Seal(v.Chance())
	if err != nil {
		return studio.Written{}, err
	}
	secret := map[int]book.Private{}
	if sealed != nil {
		l.Private, secret[0] = digest, *sealed
	}
	w, err := v.Compose(ctx, func(*book.Draft) ([]record.Entry, map[int]book.Private, error) {
		return []record.Entry{{At: at, Body: l}}, secret, nil
	})
	w.Warnings = append(bench.DoubtLot(v.Shop, l), w.Warnings...)
	if price != (private.Price{}) {
		w.Means = append(w.Means, record.Say("private-part", record.With("part", price.String())))
	}
	return w, err
}

// free refuses a lot whose key is taken, or whose material nobody described.
func free(w *record.Workshop, l record.Lot) error {
	for _, there := range w.Lots {
		if there.Body.Key == l.Key {
			return refuse.Cannot("lot-there", "lot %s is on the shelf already", l.Key).With(record.With("entry", record.EntryRef(there.Seq)))
		}
	}
	_, ok := w.MaterialNow(l.Material)
	if _, swapped := w.MaterialNow(l.Key); swapped && !ok {
		return refuse.Cannot("lot-swapped", "%s is a material, and %s is not", l.Key, l.Material).With(record.With("lot", l.Material), record.With("material", l.Key))
	}
	if of, is := w.Lot(l.Material); is && !ok {
		return refuse.Cannot("lot-of-lot", "%s is a lot, of %s", of.Key, of.Material).With(record.With("lot", l.Key), record.With("material", of.Material))
	}
	if !ok {
		starter, near := record.Nearest(string(l.Material), starterKeys()), near(w, l.Material)
		if near.Text() == starter {
			starter = ""
		}
		if slices.Contains(starterKeys(), string(l.Material)) {
			starter, near = string(l.Material), record.With("near", "")
		}
		return refuse.Cannot("lot-without-material", "there is no material %q on the shelf", l.Material).With(record.With("starter", starter), near)
	}
	return nil
}

// Prices reads the private prices of the lots on the shelf. An offcut without
// one costs its share of what it was sawn from.
func Prices(ctx context.Context, b *book.Book, w *record.Workshop) (map[record.Key]private.Price, error) {
	known := map[record.Key]private.Price{}
	for _, l := range w.Lots {
		part, _, err := private.Of(ctx, b, l.Seq)
		if err != nil {
			return nil, err
		}
		if part.Price.Currency != "" {
			known[l.Body.Key] = part.Price
		} else if of, share := offcutOf(w, l.Body); known[of].Currency != "" && share > 0 {
			known[l.Body.Key] = private.Price{Minor: int64(math.Round(share * float64(known[of].Minor))), Currency: known[of].Currency}
		}
	}
	return known, nil
}

// offcutOf is the lot of the sheets that an offcut was sawn from, and its share
// of their area; nothing where that is not recorded.
func offcutOf(w *record.Workshop, l record.Lot) (of record.Key, share float64) {
	sheets, ok := w.Lot(l.Offcut)
	area := func(l record.Lot) float64 {
		mm2, _ := l.Sheet.AreaSquareMillimeters()
		n, _ := l.Quantity.Sheets()
		return float64(mm2) * float64(n)
	}
	if whole := area(sheets); ok && whole > 0 {
		share = area(l) / whole
	}
	return l.Offcut, share
}

// NextKey is a free key for the next lot of the same material: the number that
// a key ends with, counted on.
func NextKey(w *record.Workshop, k record.Key) record.Key {
	stem := strings.TrimRight(string(k), "0123456789")
	n, err := strconv.Atoi(string(k[len(stem):]))
	if err != nil {
		stem, n = string(k)+"-", 1
	}
	for {
		n++
		next := record.Key(stem + strconv.Itoa(n))
		if _, taken := w.Lot(next); !taken {
			return next
		}
	}
}
