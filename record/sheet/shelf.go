package sheet

import (
	"fmt"
	"slices"
	"strings"

	"backleaf/record"
)

// onShelf finds what a sheet calls a thing: a lot or a material, by its key
// or by the name that the mapping gives. "unknown" is itself.
func (r *reader) onShelf(name string) (material, lot record.Key, err error) {
	is := r.alias(name)
	k := record.Key(strings.ToLower(is))
	if k == record.Unknown {
		return record.Unknown, "", nil
	}
	if l, ok := r.Shop.Lot(k); ok {
		return l.Material, k, nil
	}
	if _, ok := r.Shop.MaterialNow(k); ok {
		return k, "", nil
	}
	if is != strings.TrimSpace(name) {
		return "", "", fmt.Errorf("the mapping puts %q for %q, and there is neither a lot nor a material of that name on the shelf%s", clip(is), clip(name), r.near(is))
	}
	return "", "", fmt.Errorf("there is neither a lot nor a material %q on the shelf%s", clip(name), r.near(name))
}

// alias returns what the mapping says a name of the sheet stands for.
func (r *reader) alias(name string) string {
	for k, v := range r.mapping.Shelf {
		if sameName(k, name) {
			return strings.TrimSpace(v)
		}
	}
	return strings.TrimSpace(name)
}

// near offers what is on the shelf, by key or by the name on the tin.
func (r *reader) near(name string) string {
	var keys, inName []string
	for _, m := range r.Shop.Materials {
		keys = append(keys, string(m.Body.Key))
		if strings.Contains(strings.ToLower(m.Body.Name), strings.ToLower(strings.TrimSpace(name))) {
			inName = append(inName, string(m.Body.Key))
		}
	}
	for _, l := range r.Shop.Lots {
		keys = append(keys, string(l.Body.Key))
	}
	if s := nearest(name, keys); s != "" || len(inName) == 0 {
		return s
	}
	return "; nearest: " + strings.Join(inName[:min(3, len(inName))], ", ")
}

// mix reads "3 primer + 1 sealer", or one name that may have spaces if the
// mapping knows it.
func (r *reader) mix(typed string) ([]record.Part, error) {
	parts := []record.MixPart{{Parts: 1, Name: record.Key(typed)}}
	if _, _, err := r.onShelf(typed); err != nil {
		read, mixErr := record.ParseMix(typed)
		if mixErr != nil {
			return nil, err
		}
		parts = read
	}
	var out []record.Part
	for _, p := range parts {
		m, l, err := r.onShelf(string(p.Name))
		if err != nil {
			return nil, err
		}
		out = append(out, record.Part{Parts: p.Parts, Material: m, Lot: l})
	}
	return out, nil
}

// nearest offers up to three names within two slips of the finger, or that
// hold what was typed.
func nearest(typed string, names []string) string {
	typed = strings.ToLower(strings.TrimSpace(typed))
	if typed == "" || len(typed) > 60 {
		return ""
	}
	var out []string
	for limit := range 3 {
		for _, n := range names {
			l := strings.ToLower(n)
			holds := limit == 2 && min(len(typed), len(l)) > 2 && (strings.Contains(l, typed) || strings.Contains(typed, l))
			if (holds || record.Slips(typed, l) == limit) && !slices.Contains(out, n) && len(out) < 3 {
				out = append(out, n)
			}
		}
	}
	if out == nil {
		return ""
	}
	return "; nearest: " + strings.Join(out, ", ")
}
