package book

import (
	"context"

	"github.com/go-json-experiment/json"

	"backleaf/record"
)

// Taken is what alike acts took of one lot.
type Taken struct {
	Acts int // how many; of cloth panels
	// What was laid on: parts and thinner. Amounts are of all of them together,
	// in all; nothing where it is not known.
	Mix                     record.Coating
	Milligrams, Microliters float64
	SquareMillimeters       float64 // of board, likewise
	// Of cloth the size of the panel, and how far it went beyond each edge.
	Cloth             bool
	Panel             record.Size
	BeyondMicrometers int64
}

// takes writes what an event took of each lot for its panels, the given part of
// all that its entry says of them.
func (d *Draft) takes(w *record.Workshop, e record.Event, part int) error {
	add := func(lot record.Key, mix string, mg, ul, mm2 float64, beyond any) error {
		if lot == "" {
			return nil
		}
		var panels any
		if w != nil {
			panels = jsonList(e.Panels)
		}
		return d.s.write("taken", "INSERT OR IGNORE INTO taken (seq, part, lot, mix, mg, ul, mm2, beyond, panels) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
			e.Seq, part, string(lot), mix, mg, ul, mm2, beyond, panels)
	}
	if c, _, _ := (record.Entry{Body: e.Body}).Wet(); c != nil {
		mix := record.Coating{Mix: make([]record.Part, len(c.Mix)), Thinned: c.Thinned, Thinner: c.Thinner}
		for i, p := range c.Mix {
			p.As = nil
			mix.Mix[i] = p
		}
		text, err := json.Marshal(mix)
		mg, ul := w.Laid(e)
		for _, p := range c.Mix {
			if err == nil {
				err = add(p.Lot, string(text), mg, ul, 0, nil)
			}
		}
		if err != nil {
			return err
		}
	}
	switch b := e.Body.(type) {
	case record.Cut:
		mm2, _ := b.Size.AreaSquareMillimeters()
		return add(b.Lot, "", 0, 0, float64(mm2)*float64(len(e.Panels)), nil)
	case record.ClothLaid:
		if over, _ := b.Oversize.Micrometers(); b.AgainOf == 0 {
			return add(b.ClothLot, "", 0, 0, 0, over)
		}
	}
	return nil
}

// correctedStock writes it anew, as corrections leave the act on each of its
// panels.
func (d *Draft) correctedStock(e record.Entry) error {
	if !e.Kind().Traits().Layer && e.Kind() != "cut" {
		return nil
	}
	es, err := d.s.entries(corrected(`SELECT ?1 UNION SELECT seq FROM json_each(?2) JOIN mention ON panel = value JOIN about USING (seq) WHERE kind IN ('cut', 'resized')
		UNION SELECT seq FROM described WHERE kind = 'material'`), e.Seq, jsonList(e.Panels))
	if err != nil {
		return err
	}
	w, err := record.Fold(es)
	if err != nil {
		return err
	}
	if err := d.s.write("taken", "DELETE FROM taken WHERE seq = ?", e.Seq); err != nil {
		return err
	}
	for i, now := range w.Alike(e.Seq, e.Panels) {
		if err := d.takes(w, now, i); err != nil {
			return err
		}
	}
	return nil
}

// resizedStock writes anew what corrected acts took of these panels: an amount
// is shared by size.
func (d *Draft) resizedStock(e record.Entry) error {
	if e.Kind() != "cut" && e.Kind() != "resized" {
		return nil
	}
	var seqs []int64
	err := d.s.each("SELECT DISTINCT of FROM correction JOIN mention ON mention.seq = of WHERE of <> ? AND panel IN (SELECT value FROM json_each(?))",
		[]any{e.Seq, jsonList(e.Panels)}, func(scan func(...any) error) error {
			seqs = append(seqs, 0)
			return scan(&seqs[len(seqs)-1])
		})
	for _, seq := range seqs {
		var x record.Entry
		var there bool
		if err == nil {
			x, _, there, err = d.History(seq)
		}
		if err == nil && there {
			err = d.correctedStock(x)
		}
	}
	return err
}

// Taken returns what the record says was taken of a lot.
func (b *Book) Taken(ctx context.Context, lot record.Key) (out []Taken, err error) {
	err = b.view(ctx, func(s *session) error {
		cloth := 0
		err := s.each("SELECT mix, count(*), count(beyond), sum(mg > 0), total(mg), sum(ul > 0), total(ul), sum(mm2 > 0), total(mm2) FROM taken WHERE lot = ? GROUP BY mix",
			[]any{string(lot)}, func(scan func(...any) error) error {
				var mixed string
				var open, laid int
				var mass, volume, area Taken // no act has two of them
				err := scan(&mixed, &open, &laid, &mass.Acts, &mass.Milligrams, &volume.Acts, &volume.Microliters, &area.Acts, &area.SquareMillimeters)
				var mix record.Coating
				if err == nil && mixed != "" {
					err = json.Unmarshal([]byte(mixed), &mix)
				}
				cloth += laid
				for _, t := range []Taken{{Acts: open - laid - mass.Acts - volume.Acts - area.Acts}, mass, volume, area} {
					if t.Mix = mix; t.Acts > 0 {
						out = append(out, t)
					}
				}
				return err
			})
		if err != nil || cloth == 0 {
			return err
		}
		return s.each(`SELECT count(*), beyond, size FROM taken JOIN entry USING (seq), json_each(coalesce(panels, json_extract(CAST(bytes AS TEXT), '$.panels'))) JOIN panel ON number = value
			WHERE lot = ? AND beyond IS NOT NULL GROUP BY beyond, size`, []any{string(lot)}, func(scan func(...any) error) error {
			t, size := Taken{Cloth: true}, ""
			err := scan(&t.Acts, &t.BeyondMicrometers, &size)
			t.Panel, _ = record.ParseSize(size) // what a later program wrote is not known
			out = append(out, t)
			return err
		})
	})
	return out, err
}

// TookMost returns the entry that took most of a lot; 0 where none says how much.
func (b *Book) TookMost(ctx context.Context, lot record.Key) (seq int64, err error) {
	return seq, b.view(ctx, func(s *session) error {
		return s.each(`SELECT seq FROM taken WHERE lot = ? GROUP BY seq HAVING total(mg) + total(ul) + total(mm2) > 0
			ORDER BY total(mg) + total(ul) + total(mm2) DESC, seq LIMIT 1`, []any{string(lot)}, func(scan func(...any) error) error { return scan(&seq) })
	})
}
