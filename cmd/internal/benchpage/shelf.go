package benchpage

import (
	"net/url"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio/shelf"
	"backleaf/record/studio/stock"
	"backleaf/record/tell"
)

// lotLine is a lot on the shelf.
type lotLine struct {
	Key, Name, Words, Expires string
	Left                      string
	Expired                   bool
	Used                      int // panels
	Next                      string
}

// shelf shows materials and lots, what went where, and what expires.
func (d *desk) shelf() error {
	var body struct {
		Lots []lotLine
		Bare []string // materials of which there is no lot
		New  string
	}
	have := map[record.Key]bool{}
	for _, l := range slices.Backward(d.shop.Lots) {
		b := l.Body
		m, _ := d.shop.MaterialNow(b.Material)
		have[b.Material] = true
		x := lotLine{Key: string(b.Key), Name: m.Name, Words: d.lotWords(b),
			Expires: tell.Say(d.c, record.Say("lot-expires", record.With("expires", b.Expires)))}
		if t, ok := b.Expires.Latest(); ok {
			x.Expired = t.Before(d.now)
		}
		s, err := stock.Of(d.ctx, d.Studio.Book, d.shop, b)
		if err != nil {
			return err
		}
		x.Left = d.say("page-"+s.Code, s.Values...)
		if err := d.Studio.Book.Panels(d.ctx, book.Narrow{Used: [][]string{{book.Lot(b.Key)}}}, func(book.Present) error { x.Used++; return nil }); err != nil {
			return err
		}
		if !d.ReadOnly {
			x.Next = "/act/lot?" + url.Values{"material": {string(b.Material)}, "quantity": {b.Quantity.String()}, "supplier": {b.Supplier}, "sheet": {b.Sheet.String()},
				"key": {string(shelf.NextKey(d.shop, b.Key))}, "back": {"/shelf"}}.Encode()
		}
		body.Lots = append(body.Lots, x)
	}
	for _, m := range d.shop.Materials {
		if !have[m.Body.Key] {
			body.Bare = append(body.Bare, m.Body.Name)
		}
	}
	if !d.ReadOnly {
		body.New = "/act/lot?back=/shelf"
	}
	return d.show("shelf", d.say("page-shelf"), body)
}

// lotWords are the maker's number, how much there was, and since when it is open.
func (d *desk) lotWords(l record.Lot) string {
	var parts []string
	if l.MakerLot != "" {
		parts = append(parts, d.say("page-lot-number", record.With("number", l.MakerLot)))
	}
	if !l.Quantity.IsZero() {
		parts = append(parts, d.say("page-lot-quantity", record.With("quantity", l.Quantity)))
	}
	if !l.Opened.IsZero() {
		parts = append(parts, d.say("page-lot-opened", record.With("opened", l.Opened)))
	}
	return strings.Join(parts, " · ")
}
