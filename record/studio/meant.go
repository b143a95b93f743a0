package studio

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/studio/refuse"
)

// Meant says which description an act means where its date leaves several.
type Meant struct {
	Asks    bool    // while that is open, nothing is written
	As      []int64 // the entries that describe what is meant
	Unknown bool    // nobody knows: all that the date leaves are named
}

// choice is how the descriptions that acts mean are found, and what of them
// stays open.
type choice struct {
	*View
	used []int64       // of those that were named
	open []record.Said // things of several descriptions
	why  []string
}

// Named returns the entries among versions by which it was told what is meant.
func (m Meant) Named(vs []accept.Version) (as []int64) {
	for _, v := range vs {
		if slices.Contains(m.As, v.Seq) {
			as = append(as, v.Seq)
		}
	}
	return as
}

func (c *choice) choose(m record.Meant, vs []accept.Version, of []int64) []int64 {
	if as := c.Meant.Named(vs); as != nil {
		c.used = append(c.used, as...)
		return as
	}
	if len(of) > 1 && !c.alike(of) {
		s := record.Say("described-open", record.With("kind", m.Kind), record.With("key", m.Key), record.With("entries", refs(of)))
		if !slices.ContainsFunc(c.open, func(o record.Said) bool { return reflect.DeepEqual(o, s) }) {
			c.open, c.why = append(c.open, s), append(c.why, c.which(m, of))
		}
	}
	return of
}

// done refuses what is open, and what was named in vain.
func (c *choice) done() error {
	for _, seq := range c.Meant.As {
		if !slices.Contains(c.used, seq) {
			return refuse.Input("described-by", "describes-nothing", "E%d describes nothing of what is meant here", seq)
		}
	}
	if c.why != nil && c.Meant.Asks && !c.Meant.Unknown {
		return refuse.Unclearly("described-open", "the date leaves open %s", strings.Join(c.why, "; and ")).With(c.open[0].Value("entries"))
	}
	return nil
}

// alike reports that descriptions tell the same. Of the studio it counts who
// made a panel and where: its paper and its sheets are of today.
func (v *View) alike(seqs []int64) bool {
	tells := func(seq int64) record.Body {
		e, _ := v.Shop.Standing(seq)
		if s, ok := e.Body.(record.Studio); ok {
			return record.Studio{Maker: s.Maker, Voice: s.Voice, Place: s.Place}
		}
		return e.Body
	}
	return !slices.ContainsFunc(seqs, func(seq int64) bool { return !reflect.DeepEqual(tells(seq), tells(seqs[0])) })
}

// which asks for the description that is meant.
func (v *View) which(m record.Meant, of []int64) string {
	var each []string
	first := v.Versions(m)[0].Seq // it held whenever it was written down
	for _, seq := range of {
		e, _ := v.Shop.Standing(seq)
		says := ""
		switch b := e.Body.(type) {
		case record.Material:
			says = b.Name
		case record.Maker:
			says = strings.Trim(b.Name+", "+b.Place, ", ")
		case record.Studio:
			says = strings.Trim(b.Maker+", "+b.Place, ", ")
		}
		if seq == first {
			each = append(each, fmt.Sprintf("E%d (%q)", seq, says))
		} else {
			each = append(each, fmt.Sprintf("E%d (%q, from %s)", seq, says, e.At))
		}
	}
	thing := "the studio"
	if m.Key != "" {
		thing = fmt.Sprintf("%s %s", m.Kind, m.Key)
	}
	return fmt.Sprintf("which description of %s is meant: %s", thing, strings.Join(each, " or "))
}

// Versions returns the entries that describe a thing.
func (v *View) Versions(m record.Meant) (vs []accept.Version) {
	for _, d := range v.Shop.Versions(m.Kind, m.Key) {
		vs = append(vs, accept.Version{Seq: d.Seq, From: d.At, Written: d.Written})
	}
	return vs
}

// Moved warns of what an entry means by a description that does not hold at
// its date: it stays bound as it was when the date was another.
func (v *View) Moved(e record.Entry) (ws []record.Said) {
	e.Bind(func(m record.Meant) []int64 {
		by := accept.InForce(v.Versions(m), e.At)
		if len(m.As) > 0 && !v.alike(slices.Concat(m.As, by)) && slices.ContainsFunc(m.As, func(s int64) bool { return !slices.Contains(by, s) }) {
			ws = append(ws, record.Say("date-moved", record.With("kind", m.Kind), record.With("key", m.Key),
				record.With("as", refs(m.As)), record.With("by", refs(by))))
		}
		return m.As
	})
	return ws
}

func refs(seqs []int64) (out []record.EntryRef) {
	for _, seq := range seqs {
		out = append(out, record.EntryRef(seq))
	}
	return out
}
