package shelf

import (
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio/refuse"
)

// Lots finds lots as people name them: by their key, by the maker's number on
// the tin, by the key of the product, or by words, or beginnings of words, that
// all stand in what is said of lot and product. The first of these ways that
// finds any decides.
func Lots(w *record.Workshop, typed string) ([]record.Lot, error) {
	typed = strings.TrimSpace(typed)
	number := strings.Join(words(typed), "")
	for _, fits := range []func(record.Lot) bool{
		func(l record.Lot) bool { return strings.EqualFold(string(l.Key), typed) },
		func(l record.Lot) bool { return number != "" && strings.Join(words(l.MakerLot), "") == number },
		func(l record.Lot) bool { return strings.EqualFold(string(l.Material), typed) },
		func(l record.Lot) bool { return holds(append(ofMaterial(w, l.Material), ofLot(l)...), words(typed)) },
	} {
		var out []record.Lot
		for _, l := range w.Lots {
			if fits(l.Body) {
				out = append(out, l.Body)
			}
		}
		if out != nil {
			return out, nil
		}
	}
	return nil, refuse.Cannot("no-such-lot", "there is no lot %q on the shelf", typed).With(record.With("near", record.Nearest(typed, Words(w))))
}

// Holding names the things on the shelf of which a word, or the beginning of
// one, is said: kind of board, fibre, binder, resin, pigment, product, number.
func Holding(w *record.Workshop, word string) (out []string) {
	typed := words(word)
	for _, m := range w.Materials {
		if t := book.Material(m.Body.Key); holds(ofMaterial(w, m.Body.Key), typed) && !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	for _, l := range w.Lots {
		if holds(ofLot(l.Body), typed) {
			out = append(out, book.Lot(l.Body.Key))
		}
	}
	return out
}

// ofMaterial are the words that were ever said of what a material is.
func ofMaterial(w *record.Workshop, k record.Key) (out []string) {
	for _, d := range w.Materials {
		m := d.Body
		if m.Key != k {
			continue
		}
		for _, text := range []string{string(m.Key), m.Name, m.Maker, string(m.Binder), m.Resin, string(m.Board.Kind), m.Board.Species, string(m.Cloth.Fibre)} {
			out = append(out, words(text)...)
		}
		for _, p := range m.Pigments {
			out = append(out, words(p.Name+" "+p.Index+" "+strings.ReplaceAll(p.Index, " ", ""))...)
		}
	}
	return out
}

func ofLot(l record.Lot) []string { return words(string(l.Key) + " " + l.MakerLot) }

// Words are what lots and materials are called by: keys, numbers on tins, words
// of products.
func Words(w *record.Workshop) (out []string) {
	for _, l := range w.Lots {
		out = append(out, string(l.Body.Key), l.Body.MakerLot)
	}
	return append(out, materialWords(w)...)
}

func materialWords(w *record.Workshop) (out []string) {
	for _, m := range w.Materials {
		out = append(append(out, string(m.Body.Key)), ofMaterial(w, m.Body.Key)...)
	}
	return out
}

// holds reports that all words begin one of others.
func holds(all, typed []string) bool {
	return len(typed) > 0 && !slices.ContainsFunc(typed, func(t string) bool {
		return !slices.ContainsFunc(all, func(x string) bool { return strings.HasPrefix(x, t) })
	})
}

// words are the words of a text in lower case and without accents.
func words(text string) []string {
	plain := strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Mn, r) {
			return -1
		}
		return unicode.ToLower(r)
	}, norm.NFD.String(text))
	return strings.FieldsFunc(plain, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}
