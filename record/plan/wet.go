package plan

// Tin is a lot of a product, in the order in which lots are to be used.
type Tin struct {
	Name    string
	Product int
	Left    Amount // a mass or a volume; none: not recorded
	Expired bool   // is named, and not used
}

// CoatNeed is what one act takes, tray loss not counted.
type CoatNeed struct {
	Act   int
	Area  float64 // mm², faces given extra counted twice
	Laid  Amount  // of the mix, with its thinner
	Parts []Amount
	Why   Missing
}

// ProductNeed is what all acts take of one product.
type ProductNeed struct {
	Product int
	Laid    Amount
	Taken   Amount // with the tray loss
	From    []Taking
	Buy     Amount
	Expired []int   // tins passed over
	Why     Missing // an act that takes of it has no figure: the others are at the least
}

// Taking is what is taken from a tin, and what is left in it.
type Taking struct {
	Tin         int
	Taken, Left Amount
}

// Missing says why there is no figure; empty where there is one.
type Missing string

// What may be missing.
const (
	NoAmount    Missing = "no-amount"
	NoThickness Missing = "no-thickness"
	NoDensity   Missing = "no-density"
	NoMix       Missing = "no-mix"
)

// Wet is what a recipe takes for panels.
type Wet struct {
	Loss     int64 // share of what is mixed that stays in tray and brush, thousandths of a percent
	Coats    []CoatNeed
	Products []ProductNeed
}

// UsualLoss is how much stays in tray, roller and brush: a tenth. From memory.
const UsualLoss = 10_000

// Wetting reckons what a recipe takes of each product for panels, and from
// which tins. loss is the share of what is mixed that never reaches a panel, in
// thousandths of a percent, below 100 %.
func Wetting(panels []Panel, acts []Act, products []Product, tins []Tin, loss int64) Wet {
	w := Wet{Loss: loss}
	needs := make([]ProductNeed, len(products))
	used := make([]bool, len(products))
	for i, a := range acts {
		if a.Do != Coating && a.Do != LayingCloth {
			continue
		}
		c := coatNeed(panels, a, products)
		c.Act = i
		w.Coats = append(w.Coats, c)
		for k, part := range a.Mix {
			n := &needs[part.Product]
			used[part.Product] = true
			if c.Why != "" {
				n.Why = c.Why
				continue
			}
			n.Laid.Microliters += c.Parts[k].Microliters
			n.Laid.Milligrams += c.Parts[k].Milligrams
		}
	}
	for i, n := range needs {
		if !used[i] {
			continue
		}
		n.Product = i
		share := 1 - float64(loss)/1e5
		n.Taken = products[i].Both(Amount{n.Laid.Milligrams / share, n.Laid.Microliters / share})
		if n.Laid != (Amount{}) {
			n.take(products[i], tins)
		}
		w.Products = append(w.Products, n)
	}
	return w
}

// Both fills in a mass from a volume or a volume from a mass, if the density is
// known.
func (p Product) Both(a Amount) Amount {
	rho := float64(p.Density) / 1000 // mg/µL
	switch {
	case rho == 0:
	case a.Microliters == 0:
		a.Microliters = a.Milligrams / rho
	case a.Milligrams == 0:
		a.Milligrams = a.Microliters * rho
	}
	return a
}

func coatNeed(panels []Panel, a Act, products []Product) CoatNeed {
	var c CoatNeed
	area, ok := Spread(panels, a)
	c.Area = area
	switch {
	case len(a.Mix) == 0:
		c.Why = NoMix
	case a.PerSquare == (Amount{}):
		c.Why = NoAmount
	case !ok:
		c.Why = NoThickness
	default:
		c.Laid, c.Parts, c.Why = a.Split(Amount{a.PerSquare.Milligrams * area / 1e6, a.PerSquare.Microliters * area / 1e6}, products)
	}
	return c
}

// waterDensity at room temperature, mg/µL.
const waterDensity = 0.998

// Split parts an amount of a mix, thinner and all, into what it holds of each
// product, and fills in mass or volume of the whole where densities allow.
func (a Act) Split(laid Amount, products []Product) (Amount, []Amount, Missing) {
	thinned := float64(a.Thinned) / 1e5
	var parts, density float64
	dense := !a.NotWater || thinned == 0
	for _, p := range a.Mix {
		rho := float64(products[p.Product].Density) / 1000
		dense = dense && rho > 0
		parts += float64(p.Parts)
		density += rho * float64(p.Parts)
	}
	density = (density/parts + thinned*waterDensity) / (1 + thinned)
	switch {
	case !dense && len(a.Mix) == 1 && thinned == 0: // mass meets mass, volume meets volume
		return laid, []Amount{laid}, ""
	case !dense && laid.Microliters == 0:
		return laid, nil, NoDensity
	case dense:
		if laid.Microliters == 0 {
			laid.Microliters = laid.Milligrams / density
		}
		laid.Milligrams = laid.Microliters * density
	}
	var out []Amount
	for _, p := range a.Mix {
		out = append(out, products[p.Product].Both(Amount{Microliters: laid.Microliters / (1 + thinned) * float64(p.Parts) / parts}))
	}
	return laid, out, ""
}

// take shares what is wanted out over the tins, in their order.
func (n *ProductNeed) take(p Product, tins []Tin) {
	left := n.Taken
	for i, t := range tins {
		if t.Product != n.Product {
			continue
		}
		if t.Expired {
			n.Expired = append(n.Expired, i)
			continue
		}
		have := p.Both(t.Left)
		byMass := have.Milligrams > 0 && left.Milligrams > 0
		byVolume := have.Microliters > 0 && left.Microliters > 0
		if !byMass && !byVolume {
			continue
		}
		share := 1.0 // of what is still wanted
		if byVolume {
			share = min(1, have.Microliters/left.Microliters)
		} else {
			share = min(1, have.Milligrams/left.Milligrams)
		}
		taken := Amount{left.Milligrams * share, left.Microliters * share}
		n.From = append(n.From, Taking{i, taken, have.less(taken)})
		if left = left.less(taken); share == 1 {
			return
		}
	}
	n.Buy = left
}

func (a Amount) less(b Amount) Amount {
	return Amount{max(0, a.Milligrams-b.Milligrams), max(0, a.Microliters-b.Microliters)}
}
