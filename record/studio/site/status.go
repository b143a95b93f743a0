package site

import (
	"time"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/studio"
)

// writeStatus writes how all papers of the studio stand today, those of panels
// that are not shown too: each is named by a digest that only its holder has.
func (w *writer) writeStatus() error {
	shop := w.journal.shop
	now := w.session.Clock().In(studio.Zone(shop.Studio))
	origin, err := seal.Origin(shop.Studio.Mark, shop.Studio.Journal)
	if err != nil {
		return err
	}
	ring, err := deed.Keys(shop.Keys)
	if err != nil {
		return err
	}
	s := seal.Status{Origin: origin, Date: now.Format(time.DateOnly), Size: w.journal.size, Root: w.journal.root, Papers: map[seal.Standing][]seal.Digest{seal.Shown: w.records}}
	for _, e := range shop.Keys {
		if r, ok := e.Body.(record.KeyRetired); ok {
			s.Successions = append(s.Successions, seal.FromPaper([]byte(r.Statement)))
		}
	}
	for _, k := range ring.Keys {
		switch ring.Standing(k) {
		case deed.Retired:
			s.Papers[seal.KeyRetired] = append(s.Papers[seal.KeyRetired], k.Fingerprint())
		case deed.Lost:
			s.Papers[seal.KeyLost] = append(s.Papers[seal.KeyLost], k.Fingerprint())
		}
	}
	for _, p := range shop.Panels {
		standings(p, s.Papers)
	}
	note, err := s.Sign(*w.Key)
	if err != nil {
		return err
	}
	w.result.Status = now
	_, err = w.putFile(status, note)
	return err
}

// standings adds the certificates of a panel.
func standings(p *record.Panel, to map[seal.Standing][]seal.Digest) {
	of := map[int64]seal.Digest{}
	add := func(as seal.Standing, entry int64) {
		if d, ok := of[entry]; ok {
			to[as] = append(to[as], d)
		}
	}
	for _, c := range record.Each[record.Issued](p) {
		if d, err := seal.ParseDigest(c.Body.Record); err == nil {
			of[c.Seq] = d
			add(seal.Issued, c.Seq)
		}
	}
	for _, c := range record.Each[record.Issued](p) {
		add(seal.Replaced, c.Body.Replaces)
	}
	for _, r := range record.Each[record.Revoked](p) {
		add(seal.Withdrawn, r.Body.Certificate)
	}
	h, away := p.Away()
	if as, ok := map[record.Parting]seal.Standing{"theft": seal.Stolen, "loss": seal.Missing}[h.Body.How]; ok && away {
		for entry := range of {
			add(as, entry)
		}
	}
}
