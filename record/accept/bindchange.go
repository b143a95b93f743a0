package accept

import (
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/form"
)

// bindChange lets the change of an amendment name the entries that describe
// the materials it puts in, by the date of the act that it amends. What it
// does not touch stays bound as it was.
func bindChange(change jsontext.Value, seq int64, k Known) (jsontext.Value, error) {
	old, _, ok, err := k.History(seq)
	if err != nil || !ok {
		return change, err
	}
	now, err := old.Patched(change)
	if err != nil {
		return change, nil // it is refused when it is checked
	}
	var m map[string]jsontext.Value
	if json.Unmarshal(change, &m) != nil {
		return change, nil
	}
	touched := map[string]bool{}
	now.Body = record.Bind(now.Body, func(x record.Mention) []int64 {
		top, rest, _ := strings.Cut(x.Place, "/")
		_, said := m[top+"_as"]
		if v := m[top]; v == nil || v.Kind() == 'n' || said || rest != "" && x.As != nil || x.Material == record.Unknown {
			return x.As
		}
		touched[top] = true
		var vs []Version
		if err == nil {
			vs, err = k.Versions("material", x.Material)
		}
		return InForce(vs, now.At)
	})
	if err != nil || len(touched) == 0 {
		return change, err
	}
	text, err := form.Write(now)
	if err != nil {
		return change, nil
	}
	var whole map[string]jsontext.Value
	if err := json.Unmarshal(text, &whole); err != nil {
		return change, err
	}
	for top := range touched {
		m[top] = whole[top]
		if as := whole[top+"_as"]; as != nil {
			m[top+"_as"] = as
		}
	}
	return json.Marshal(m, json.Deterministic(true))
}
