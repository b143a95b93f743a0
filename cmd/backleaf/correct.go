package main

import (
	"fmt"
	"strconv"
	"strings"

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

// correct writes an entry that corrects an earlier one, and says when a
// certificate has gone out on the strength of it.
func (a *app) correct(c *cobra.Command, typed, why string, only []string, does string, make func(*benchState, record.Entry) (record.Body, error)) error {
	seq, err := parseEntry(typed)
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
		body, err := make(s, old)
		if err != nil {
			return err
		}
		if err := a.append(c.Context(), s, fmt.Sprintf("%s E%d (%s)", does, seq, old.Kind()), record.Entry{At: s.at, Panels: s.panels, Body: body}); err != nil {
			return err
		}
		return a.offerReplacement(c.Context(), b, old, s.panels)
	})
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
			if len(set)+len(unset) == 0 {
				return usage("\"backleaf journal "+args[0]+"\" shows the fields", "what is to change? say --set FIELD=VALUE or --unset FIELD")
			}
			return a.correct(c, args[0], why, only, "amends", func(s *benchState, old record.Entry) (record.Body, error) {
				patch, err := s.patch(old, set, unset)
				return record.Amended{Entry: old.Seq, Because: why, Change: patch}, err
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
			return a.correct(c, args[0], why, only, "withdraws", func(_ *benchState, old record.Entry) (record.Body, error) {
				return record.Withdrawn{Entry: old.Seq, Because: why}, nil
			})
		},
	}
	c.Flags().StringSliceVar(&only, "panel", nil, "for these panels of the entry only")
	c.Flags().StringVar(&why, "because", "", "the reason")
	return c
}
