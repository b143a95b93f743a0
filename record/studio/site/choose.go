package site

import (
	"backleaf/certificate/page"
	"backleaf/record"
)

// published says whether a panel has a page, whether it ever had one, and since
// when.
func published(p *record.Panel) (shown, ever bool, since record.When) {
	l, ever := record.Latest[record.Published](p)
	since = l.At
	if !since.Known() {
		since = l.Written
	}
	return ever && l.Body.Shown == record.Yes, ever, since
}

// photograph says whether the photograph of the front may be shown: as the
// maker last said; unless they said so, not that of a work that was sold or
// given away. asked is false where that is still to be asked.
func photograph(p *record.Panel) (show, asked bool) {
	if _, ok := page.Front(p); !ok {
		return false, true
	}
	var said record.Answer
	for _, l := range record.Each[record.Published](p) {
		if l.Body.Photograph != "" {
			said = l.Body.Photograph
		}
	}
	h, away := p.Away()
	gone := away && (h.Body.How == "sale" || h.Body.How == "gift")
	return said == record.Yes || said == "" && !gone, said != "" || !gone
}
