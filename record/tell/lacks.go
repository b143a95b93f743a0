package tell

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"backleaf/record"
)

// Lacks says what the catalogue lacks to tell something said in full: the code,
// a value for a place of its message, a form of a word that the message asks
// for, a choice for a plural category. Tests run it over all that a program
// says.
func (c *Catalogue) Lacks(s record.Said) error {
	m, ok := c.Codes[s.Code]
	if !ok {
		return fmt.Errorf("no message for the code %q", s.Code)
	}
	return c.lacksIn(m, s)
}

func (c *Catalogue) lacksIn(m Message, s record.Said) error {
	ps, err := m.pieces()
	if err != nil {
		return err
	}
	return errors.Join(c.lacksPieces(ps, s)...)
}

func (c *Catalogue) lacksPieces(ps []piece, s record.Said) []error {
	var errs []error
	for _, p := range ps {
		if p.name == "" {
			continue
		}
		v := s.Value(p.name)
		if v.Name == "" {
			errs = append(errs, fmt.Errorf("%s: the message has a place {%s}, the value is not said", s.Code, p.name))
			continue
		}
		if err := c.lacksForm(p, v); err != nil {
			errs = append(errs, fmt.Errorf("%s: {%s}: %w", s.Code, p.name, err))
		}
		for _, w := range p.when {
			errs = append(errs, c.lacksPieces(w.then, s)...)
		}
	}
	return errs
}

// forms that are no forms of words or roles of dates, by type.
var plainForms = map[string][]string{"When": {"moment", "exact", "near", "hour"}, "figure": {"range"}, "Length": {"range"}, "Percent": {"range"}, "Amount": {"range"}, "Duration": {"range"}, "Size": {"both"}, "Number": {"typed"}, "text": {"typed"}}

func (c *Catalogue) lacksForm(p piece, v record.Value) error {
	list, isWord := c.Words[v.Type]
	switch {
	case p.by == "plural":
		return c.lacksPlurals(p)
	case p.by == "kind" && v.Type != "When":
		return fmt.Errorf("a %s has no kind of date", v.Type)
	case (p.by == "gender" || p.by == "number" && len(v.Texts) < 2) && !isWord:
		return fmt.Errorf("a %s has no gender or number", v.Type)
	case p.form == "" || p.form == "short" || slices.Contains(plainForms[v.Type], p.form):
		return nil
	case v.Type == "When":
		if _, ok := c.Dates.Roles[p.form]; !ok {
			return fmt.Errorf("dates have no role %q", p.form)
		}
		return nil
	case !isWord:
		return fmt.Errorf("a %s has no form %q", v.Type, p.form)
	}
	for word, w := range list {
		if _, ok := w.Forms[p.form]; !ok {
			return fmt.Errorf("%s %q has no form %q", v.Type, word, p.form)
		}
	}
	return nil
}

// lacksPlurals reports categories of the language that a message would leave
// to "other" without saying so; numbers to 200 and tenths meet all of them.
func (c *Catalogue) lacksPlurals(p piece) error {
	has := func(category string) bool {
		return slices.ContainsFunc(p.when, func(v variant) bool { return v.choice == category })
	}
	var missing []string
	for n := range 201 {
		if f := c.plural(fmt.Sprint(n)); !has(f) && !slices.Contains(missing, f) {
			missing = append(missing, f)
		}
	}
	if missing != nil {
		return fmt.Errorf("no text for the plural %s", strings.Join(missing, ", "))
	}
	return nil
}
