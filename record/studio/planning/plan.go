package planning

import (
	"context"
	"errors"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/plan"
	"backleaf/record/plan/worksheet"
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/shelf"
	"backleaf/record/studio/stock"
	"backleaf/record/tell"
)

// Day is a plan with what it was made for.
type Day struct {
	Job  worksheet.Job
	Wish Wish
	w    *record.Workshop
}

// Make plans a day. The workshop holds the shelf; what is left in a tin, and which
// offcuts are left, follows from all that was taken.
func Make(ctx context.Context, b *book.Book, w *record.Workshop, c *tell.Catalogue, wish Wish) (Day, error) {
	d := Day{Wish: wish, w: w}
	prices, err := shelf.Prices(ctx, b, w)
	if err != nil {
		return d, err
	}
	order := plan.Order{Kerf: micrometers(wish.Kerf), Turns: wish.Turns}
	var board record.Material
	if order.Sheets, board, err = sheets(ctx, b, w, wish, prices); err != nil {
		return d, err
	}
	for _, p := range wish.Panels {
		if p.Count > plan.MaxPieces {
			return d, refuse.Unclearly("too-many", "%d panels at once; at most %d: plan them in parts", p.Count, plan.MaxPieces)
		}
		if p.NoCloth && wish.Cloth != "" {
			return d, refuse.Unclearly("no-cloth-in-plan", "a plan lays cloth on all its panels or on none")
		}
		order.Pieces = append(order.Pieces, plan.Piece{Height: micrometers(p.Size.Height), Width: micrometers(p.Size.Width), Grain: grain(p.Grain), Count: p.Count})
	}
	name := board.Name
	if !board.Board.Thickness.IsZero() {
		name = c.Fill(c.Plan.T("board"), tell.Told("name", name), record.With("thickness", board.Board.Thickness))
	}
	d.Job = worksheet.Job{Words: c, Maker: w.Studio.Maker, Made: wish.Start, Board: name, Assume: wish.SheetGrain == "", Letter: w.Studio.Paper == "letter", Inches: wish.inches()}
	if d.Job.Plan, err = plan.Sheets(order); err != nil {
		return d, refuse.Because("no-plan", err)
	}
	if d.Job.Whole, err = wholeSheets(ctx, b, w, wish, order.Sheets); err != nil {
		return d, err
	}
	if wish.Cloth != "" {
		if err := d.cloth(ctx, b); err != nil {
			return d, err
		}
	}
	if len(wish.Recipe) > 0 {
		if err := d.recipe(ctx, b); err != nil {
			return d, err
		}
	}
	d.cost(prices)
	if len(wish.Recipe) > 0 {
		err = d.hours()
	}
	return d, err
}

// inches tells whether the panels are asked for in inches.
func (wish Wish) inches() bool {
	for _, p := range wish.Panels {
		if u := p.Size.Height.Unit(); u != "in" && u != "ft" {
			return false
		}
	}
	return true
}

// covered is how many faces of a panel are laid with cloth.
func (wish Wish) covered() (n int) {
	for _, s := range wish.Recipe {
		for _, f := range s.Faces {
			if s.Do == plan.LayingCloth && f != record.Edges {
				n++
			}
		}
	}
	return max(1, n)
}

func (d *Day) cloth(ctx context.Context, b *book.Book) error {
	m, lots, err := onShelf(d.w, "cloth", d.Wish.Cloth)
	if err != nil {
		return err
	}
	width, ok := d.Wish.Bolt.Micrometers()
	if !ok {
		width, ok = m.Cloth.Width.Micrometers()
	}
	if !ok {
		return refuse.Cannot("no-bolt-width", "the width of the bolt of %s is not recorded", m.Key)
	}
	c := plan.Cloth{BoltWidth: width, Selvedge: d.Wish.or(d.Wish.Selvedge, usualSelvedge), Squaring: d.Wish.or(d.Wish.Squaring, usualSquaring),
		Oversize: d.Wish.or(d.Wish.Oversize, usualOversize), Step: d.Wish.or(record.Length{}, usualStep)}
	c.ShrinkWarp, _ = d.Wish.ShrinkWarp.Millipercent()
	c.ShrinkWeft, _ = d.Wish.ShrinkWeft.Millipercent()
	pieces := make([]plan.Piece, len(d.Job.Plan.Order.Pieces))
	for i, p := range d.Job.Plan.Order.Pieces {
		p.Grain = plan.First // the warp upright: all panels of a batch alike
		p.Count *= d.Wish.covered()
		pieces[i] = p
	}
	bolt, err := plan.Bolt(pieces, c)
	if err != nil {
		return refuse.Because("no-plan", err)
	}
	d.Job.Cloth, d.Job.ClothName = &bolt, m.Name
	if len(lots) == 1 {
		d.Job.ClothName = d.Job.Words.Join.Bracket.With("text", string(lots[0].Key), "aside", m.Name)
		if d.Job.ClothLeft, err = stock.Of(ctx, b, d.w, lots[0]); err != nil {
			return err
		}
		var left record.Amount
		_ = left.UnmarshalText([]byte(d.Job.ClothLeft.Value("left").Text())) // nothing, where it says of none
		if um, ok := left.Micrometers(); ok && um >= bolt.Need {
			bolt.Buy = 0
		}
	}
	return nil
}

// panels are the panels of the plan with their thickness.
func (d *Day) panels() []plan.Panel {
	m, _, _ := onShelf(d.w, "board", d.Wish.Board)
	var out []plan.Panel
	for _, p := range d.Wish.Panels {
		out = append(out, plan.Panel{Height: micrometers(p.Size.Height), Width: micrometers(p.Size.Width), Thickness: thickness(d.w, p.Size, m.Key, nil), Count: p.Count})
	}
	return out
}

func (d *Day) recipe(ctx context.Context, b *book.Book) (err error) {
	p := &products{w: d.w}
	d.Job.Acts = p.acts(whole(d.Wish.Recipe), d.Wish, d.Job.Words)
	d.Job.Products = p.list
	if d.Job.Tins, err = p.tins(ctx, b, d.Wish.Start); err != nil {
		return err
	}
	loss, ok := d.Wish.TrayLoss.Millipercent()
	if !ok {
		loss = plan.UsualLoss
	}
	wet := plan.Wetting(d.panels(), d.Job.Acts, p.list, d.Job.Tins, loss)
	d.Job.Wet = &wet
	return nil
}

// cost prices what goes on the panels from the lots it is taken from, as the
// cost of panels that are made is reckoned: of the tray loss it says nothing.
func (d *Day) cost(prices map[record.Key]private.Price) {
	if len(prices) == 0 {
		return
	}
	var uses []plan.Use
	o := d.Job.Plan.Order
	for i, s := range o.Sheets {
		var panels []plan.Panel
		for k, c := range d.Job.Plan.Sheets {
			if c.Sheet != i {
				continue
			}
			for _, part := range d.Job.Plan.Parts(k) {
				if part.Number > 0 {
					p := o.Pieces[part.Piece]
					panels = append(panels, plan.Panel{Height: p.Height, Width: p.Width, Count: 1})
				}
			}
		}
		if len(panels) == 0 {
			continue
		}
		u := plan.Use{What: "board", Lot: s.Name, Part: plan.BoardUse(panels, o.Kerf)}
		if l, ok := d.w.Lot(record.Key(s.Name)); ok {
			if n, ok := l.Quantity.Sheets(); ok {
				u.Whole = float64(n) * float64(s.Length) * float64(s.Width) / 1e6
			}
		}
		uses = append(uses, u)
	}
	if d.Job.Cloth != nil {
		uses = append(uses, d.clothUse())
	}
	if d.Job.Wet != nil {
		uses = append(uses, d.wetUses()...)
	}
	known := map[string]plan.Price{}
	for k, p := range prices {
		known[string(k)] = plan.Price(p)
	}
	d.Job.Costs, d.Job.Sums = plan.Cost(uses, known)
}

func (d *Day) clothUse() plan.Use {
	_, lots, _ := onShelf(d.w, "cloth", d.Wish.Cloth)
	a := plan.Act{Oversize: d.Job.Cloth.Cloth.Oversize}
	for range d.Wish.covered() {
		a.Faces = append(a.Faces, plan.Front)
	}
	u := plan.Use{What: "cloth", Part: plan.ClothUse(d.panels(), a)}
	if len(lots) != 1 {
		return u
	}
	u.Lot = string(lots[0].Key)
	if mm2, ok := lots[0].Quantity.SquareMillimeters(); ok {
		u.Whole = float64(mm2)
	} else if um, ok := lots[0].Quantity.Micrometers(); ok {
		u.Whole = float64(um) * float64(d.Job.Cloth.Cloth.BoltWidth) / 1e6
	}
	return u
}

func (d *Day) wetUses() []plan.Use {
	var uses []plan.Use
	for _, n := range d.Job.Wet.Products {
		name := d.Job.Products[n.Product].Name
		share := 1 - float64(d.Job.Wet.Loss)/1e5
		for _, t := range n.From {
			l, _ := d.w.Lot(record.Key(d.Job.Tins[t.Tin].Name))
			u := plan.Use{What: name, Lot: string(l.Key)}
			if mg, ok := l.Quantity.Milligrams(); ok {
				u.Part, u.Whole = t.Taken.Milligrams*share, float64(mg)
			} else if ul, ok := l.Quantity.Microliters(); ok {
				u.Part, u.Whole = t.Taken.Microliters*share, float64(ul)
			}
			uses = append(uses, u)
		}
		if n.Buy != (plan.Amount{}) {
			uses = append(uses, plan.Use{What: name})
		}
	}
	return uses
}

func (d *Day) hours() error {
	n := 0
	for _, p := range d.Wish.Panels {
		n += p.Count
	}
	bench := d.Wish.Bench
	if bench <= 0 {
		bench = n
	}
	for ; n > 0; n -= bench {
		d.Job.Batches = append(d.Job.Batches, plan.Batch{Panels: min(n, bench), Acts: d.Job.Acts})
	}
	hours := d.Wish.Hours
	if hours == (plan.Hours{}) {
		hours = plan.Hours{From: 9 * time.Hour, To: 20 * time.Hour}
	}
	table, err := plan.Schedule(d.Job.Batches, d.Wish.Start, hours)
	if long, ok := errors.AsType[*plan.TooLong](err); ok {
		return refuse.Because("bench-too-large", err, record.With("panels", long.Most))
	}
	if err != nil {
		return refuse.Because("no-plan", err)
	}
	d.Job.Table = &table
	return nil
}
