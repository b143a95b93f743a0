package main

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
)

func newAmend(a *app) *cobra.Command {
	var why string
	var set, unset, only []string
	var when moment
	c := &cobra.Command{
		Use: "amend ENTRY --set FIELD=VALUE", Short: "put right what was written down wrong",
		Long: `Put an earlier entry right. The earlier entry stays readable as it was; papers and
checks go by the amended one. With --panel the change holds for those panels only.
"backleaf journal ENTRY" shows the fields of an entry.`,
		Example: `  backleaf amend 27 --set faces=front,back,edges --because "the edges were done too"
  backleaf amend E27 --panel 0150 --set wet_total="240 g" --set at="yesterday 16:30" --because "misread the scale"`,
		Args: wanted(1, 1, "one entry"),
		RunE: func(c *cobra.Command, args []string) error {
			if len(set)+len(unset)+len(when.described) == 0 {
				return usage("\"backleaf journal "+args[0]+"\" shows the fields", "what is to change? say --set FIELD=VALUE or --unset FIELD")
			}
			return a.correct(c.Context(), &when, args[0], why, only, func(r *typed.Reader, old record.Entry) (record.Body, error) {
				sets, err := fieldsSet(set)
				if err != nil {
					return nil, err
				}
				change := r.Change(old, sets, unset)
				err = r.Err()
				if f, ok := err.(*refuse.Error); ok && f.Field != "" {
					f.Field = "set " + f.Field
				}
				return record.Amended{Entry: old.Seq, Because: why, Change: change}, err
			})
		},
	}
	c.Flags().StringArrayVar(&set, "set", nil, "FIELD=VALUE; a field in a field is named with a point: board.thickness=\"3 mm\"")
	c.Flags().StringArrayVar(&unset, "unset", nil, "FIELD to take away: it was not recorded")
	c.Flags().StringSliceVar(&only, "panel", nil, "for these panels of the entry only")
	c.Flags().StringVar(&why, "because", "", "the reason")
	when.describedFlag(c)
	return c
}

// fieldsSet splits FIELD=VALUE.
func fieldsSet(set []string) (out []typed.Set, err error) {
	for _, one := range set {
		field, text, ok := strings.Cut(one, "=")
		if !ok {
			return nil, usage("", "--set %q: expected FIELD=VALUE", one)
		}
		out = append(out, typed.Set{Field: field, Typed: text})
	}
	return out, nil
}

// correct writes an entry that corrects an earlier one, and says when a
// certificate has gone out on the strength of it.
func (a *app) correct(ctx context.Context, when *moment, entry, why string, only []string, make func(*typed.Reader, record.Entry) (record.Body, error)) error {
	seq, err := typed.Entry(entry)
	if err != nil {
		return err
	}
	if err := needs(why, "", "say --because: a reader will ask"); err != nil {
		return err
	}
	var old record.Entry
	var outdated []bench.Outdated
	err = a.atBench(ctx, when, only, func(ctx context.Context, v *studio.View, r *typed.Reader, at record.When) (w studio.Written, err error) {
		if old, err = bench.Entry(ctx, v.Book, seq); err != nil {
			return w, err
		}
		body, err := make(r, old)
		if err != nil {
			return w, err
		}
		w, outdated, err = bench.Correct(ctx, v, at, old, body)
		return w, err
	})
	for _, o := range outdated {
		a.told("certificate-outdated", record.With("panel", o.Panel), record.With("entry", record.EntryRef(o.Certificate)))
	}
	return err
}
