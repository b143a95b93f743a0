package main

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
)

// parseEntry reads "27" or "E27".
func parseEntry(s string) (int64, error) {
	n, err := strconv.ParseInt(strings.TrimPrefix(strings.ToUpper(s), "E"), 10, 64)
	if err != nil || n < 1 {
		return 0, usage("\"backleaf journal\" lists them", "%q is not the number of an entry", s)
	}
	return n, nil
}

func newAmend(a *app) *cobra.Command {
	var why string
	var set, unset, only []string
	c := &cobra.Command{
		Use: "amend ENTRY --set FIELD=VALUE", Short: "put right what was written down wrong",
		Long: `Put an earlier entry right. The earlier entry stays readable as it was; papers and
checks go by the amended one. With --panel the change holds for those panels only.
"backleaf journal ENTRY" shows the fields of an entry.`,
		Example: `  backleaf amend 27 --set faces=front,back,edges --because "the edges were done too"
  backleaf amend E27 --panel 0150 --set wet_total="240 g" --set at="yesterday 16:30" --because "misread the scale"`,
		Args: wanted(1, 1, "one entry"),
		RunE: func(c *cobra.Command, args []string) error {
			seq, err := parseEntry(args[0])
			if err != nil {
				return err
			}
			if why == "" {
				return usage("", "say --because: a reader will ask")
			}
			if len(set)+len(unset) == 0 {
				return usage(fmt.Sprintf("\"backleaf journal %d\" shows the fields", seq), "what is to change? say --set FIELD=VALUE or --unset FIELD")
			}
			return a.write(c.Context(), func(b *book.Book) error {
				s, err := a.look(c.Context(), b, &bench{}, only)
				if err != nil {
					return err
				}
				old, ok, err := entryOf(c, b, seq)
				if err != nil || !ok {
					return orError(err, hinted(fmt.Errorf("there is no entry %d", seq), "\"backleaf journal\" lists the entries"))
				}
				patch, err := s.patch(old, set, unset)
				if err != nil {
					return err
				}
				if err := a.append(c.Context(), s, fmt.Sprintf("amends E%d (%s)", seq, old.Kind()),
					record.Entry{At: s.at, Panels: s.panels, Body: record.Amended{Entry: seq, Because: why, Change: patch}}); err != nil {
					return err
				}
				return a.offerReplacement(c.Context(), b, old, s.panels)
			})
		},
	}
	c.Flags().StringArrayVar(&set, "set", nil, "FIELD=VALUE; a field in a field is named with a point: board.thickness=\"3 mm\"")
	c.Flags().StringArrayVar(&unset, "unset", nil, "FIELD to take away: it was not recorded")
	c.Flags().StringSliceVar(&only, "panel", nil, "for these panels of the entry only")
	c.Flags().StringVar(&why, "because", "", "the reason")
	return c
}

func orError(err, other error) error {
	if err != nil {
		return err
	}
	return other
}

// entryOf reads one entry of the journal.
func entryOf(c *cobra.Command, b *book.Book, seq int64) (record.Entry, bool, error) {
	es, err := b.Entries(c.Context(), book.Filter{From: seq, To: seq})
	if err != nil || len(es) == 0 {
		return record.Entry{}, false, err
	}
	return es[0].Entry, true, nil
}

// patch turns --set and --unset into a merge patch for an entry.
func (s *benchState) patch(old record.Entry, set, unset []string) (jsontext.Value, error) {
	change := map[string]any{}
	put := func(field string, v any) {
		at := change
		names := strings.Split(field, ".")
		for _, n := range names[:len(names)-1] {
			next, ok := at[n].(map[string]any)
			if !ok {
				next = map[string]any{}
				at[n] = next
			}
			at = next
		}
		at[names[len(names)-1]] = v
	}
	for _, f := range unset {
		put(f, nil)
	}
	for _, one := range set {
		field, typed, ok := strings.Cut(one, "=")
		if !ok {
			return nil, usage("", "--set %q: expected FIELD=VALUE", one)
		}
		v, err := s.value(old.Body, field, typed)
		if err != nil {
			return nil, err
		}
		put(field, v)
	}
	b, err := json.Marshal(change, json.Deterministic(true))
	return b, err
}

// value reads a typed value as the kind of thing its field holds.
func (s *benchState) value(body record.Body, field, typed string) (any, error) {
	switch field {
	case "at":
		w, err := parseAt(typed, s.now, s.zone)
		return w.String(), err
	case "mix":
		return s.mix(typed)
	}
	t, ok := fieldType(reflect.TypeOf(body), strings.Split(field, "."))
	if !ok {
		return nil, usage("\"backleaf journal ENTRY\" shows the fields of an entry", "an entry of kind %s has no field %q", body.Kind(), field)
	}
	switch t.Kind() {
	case reflect.Int64:
		n, err := strconv.ParseInt(typed, 10, 64)
		if err != nil {
			return nil, usage("", "--set %s: %q is not a whole number", field, typed)
		}
		return n, nil
	case reflect.Bool:
		return typed == "yes" || typed == "true", nil
	case reflect.Slice:
		if t.Elem().Kind() == reflect.String {
			return strings.Split(typed, ","), nil
		}
		var v any
		if err := json.Unmarshal([]byte(typed), &v); err != nil {
			return nil, usage("", "--set %s: expected a JSON list", field)
		}
		return v, nil
	}
	// A measured value gets its one spelling here, so that what is typed
	// loosely is stored strictly.
	p := reflect.New(t)
	if u, ok := p.Interface().(interface {
		UnmarshalText([]byte) error
		MarshalText() ([]byte, error)
	}); ok {
		if err := u.UnmarshalText([]byte(typed)); err != nil {
			return nil, usage("", "--set %s: %v", field, err)
		}
		b, err := u.MarshalText()
		return string(b), err
	}
	return typed, nil
}

// fieldType finds the type of a field by its JSON names.
func fieldType(t reflect.Type, path []string) (reflect.Type, bool) {
	if t.Kind() != reflect.Struct {
		return nil, false
	}
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous { // its fields are the entry's own
			if ft, ok := fieldType(f.Type, path); ok {
				return ft, true
			}
		}
		if name == path[0] && name != "" {
			if len(path) == 1 {
				return f.Type, true
			}
			return fieldType(f.Type, path[1:])
		}
	}
	return nil, false
}

func newWithdraw(a *app) *cobra.Command {
	var why string
	var only []string
	c := &cobra.Command{
		Use: "withdraw ENTRY", Short: "take back an entry that should not have been written",
		Long: `Take an earlier entry out of effect. It stays readable. With --panel it is taken
back for those panels only. A withdrawal can itself be withdrawn.`,
		Example: `  backleaf withdraw 27 --because "wrong batch"
  backleaf withdraw E27 --panel 0150 --because "this one was not coated"`,
		Args: wanted(1, 1, "one entry"),
		RunE: func(c *cobra.Command, args []string) error {
			seq, err := parseEntry(args[0])
			if err != nil {
				return err
			}
			if why == "" {
				return usage("", "say --because: a reader will ask")
			}
			return a.write(c.Context(), func(b *book.Book) error {
				s, err := a.look(c.Context(), b, &bench{}, only)
				if err != nil {
					return err
				}
				old, ok, err := entryOf(c, b, seq)
				if err != nil || !ok {
					return orError(err, hinted(fmt.Errorf("there is no entry %d", seq), "\"backleaf journal\" lists the entries"))
				}
				if err := a.append(c.Context(), s, fmt.Sprintf("withdraws E%d (%s)", seq, old.Kind()),
					record.Entry{At: s.at, Panels: s.panels, Body: record.Withdrawn{Entry: seq, Because: why}}); err != nil {
					return err
				}
				return a.offerReplacement(c.Context(), b, old, s.panels)
			})
		},
	}
	c.Flags().StringSliceVar(&only, "panel", nil, "for these panels of the entry only")
	c.Flags().StringVar(&why, "because", "", "the reason")
	return c
}
