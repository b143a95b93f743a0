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
	s := seal.Status{Origin: origin, Date: now.Format(time.DateOnly), Size: w.journal.size, Root: w.journal.root, Papers: w.papers}
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
	note, err := s.Sign(*w.Key)
	if err != nil {
		return err
	}
	w.result.Status = now
	_, err = w.putFile(status, note)
	return err
}

// standings adds the record of a panel's page, its certificates, and what a buyer
// must hear of it to these.
func standings(p *record.Panel, page seal.Digest, to map[seal.Standing][]seal.Digest) {
	of := map[int64]seal.Digest{0: page}
	add := func(as seal.Standing, entry int64) {
		if d := of[entry]; d != (seal.Digest{}) {
			to[as] = append(to[as], d)
		}
	}
	add(seal.Shown, 0)
	issued := record.Each[record.Issued](p)
	again, _ := record.Latest[record.UsedAgain](p)
	for _, c := range issued {
		if d, err := seal.ParseDigest(c.Body.Record); err == nil {
			of[c.Seq] = d
			add(seal.Issued, c.Seq)
			if c.Seq < again.Seq {
				add(seal.Earlier, c.Seq)
			}
		}
	}
	for _, c := range issued {
		if c.Body.Replaces != 0 {
			add(seal.Replaced, c.Body.Replaces)
		}
	}
	for _, r := range record.Each[record.Revoked](p) {
		add(seal.Withdrawn, r.Body.Certificate)
	}
	_, discarded := p.Discarded()
	h, away := p.Away()
	as, reported := map[record.Parting]seal.Standing{"theft": seal.Stolen, "loss": seal.Missing}[h.Body.How]
	for entry := range of {
		if reported && away {
			add(as, entry)
		}
		if discarded {
			add(seal.Discarded, entry)
		}
	}
}
