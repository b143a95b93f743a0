package accept

import (
	"cmp"
	"slices"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/form"
)

// change lets the change of an amendment name the entries that describe what
// it puts in, by the date of the act that it amends. What it does not touch
// stays bound as it was.
func (b *binder) change(change jsontext.Value, seq int64) (jsontext.Value, error) {
	old, _, ok, err := b.k.History(seq)
	if err != nil || !ok {
		return change, err
	}
	now, err := old.Patched(change)
	var m map[string]jsontext.Value
	if err != nil || json.Unmarshal(change, &m) != nil {
		return change, nil // it is refused when it is checked
	}
	change, err = Describe(old, change, func(x record.Meant) []int64 {
		top, rest, _ := strings.Cut(x.Place, "/")
		_, said := m[top+"_as"]
		if v := m[top]; v == nil || v.Kind() == 'n' || said || rest != "" && x.As != nil {
			return x.As
		}
		x.As = nil
		return b.meant(x, now.At)
	})
	return change, cmp.Or(b.err, err)
}

// Describe completes a change of an entry so that all it means is described by
// the entries that as returns for it.
func Describe(old record.Entry, change jsontext.Value, as func(record.Meant) []int64) (jsontext.Value, error) {
	now, err := old.Patched(change)
	if err != nil {
		return change, nil // it is refused when it is checked
	}
	var m, whole map[string]jsontext.Value
	if json.Unmarshal(change, &m) != nil {
		return change, nil
	}
	var fields []string
	now = now.Bind(func(x record.Meant) []int64 {
		to := as(x)
		if !slices.Equal(to, x.As) || m[x.Place] != nil { // an earlier change may have meant another
			top, _, _ := strings.Cut(x.Place, "/")
			fields = append(fields, top, top+"_as")
		}
		return to
	})
	if fields == nil {
		return change, nil
	}
	text, err := form.Write(now)
	if err != nil {
		return change, nil
	}
	if err := json.Unmarshal(text, &whole); err != nil {
		return change, err
	}
	for _, f := range fields {
		if whole[f] != nil {
			m[f] = whole[f]
		}
	}
	return json.Marshal(m, json.Deterministic(true))
}
