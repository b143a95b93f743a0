package main

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
)

func newStudio(a *app) *cobra.Command {
	return folder("studio", "the studio: who makes the panels, and how its papers look",
		studioNew(a), studioShow(a), studioChange(a), newKey(a))
}

// studioFlags are what a studio says of itself.
type studioFlags struct {
	s     record.Studio
	units string
	sheet [7]string
	rows  int64
	cols  int64
}

func (o *studioFlags) flags(c *cobra.Command) {
	f := c.Flags()
	f.StringVar(&o.s.Maker, "maker", "", "name of the maker as it is to be printed")
	f.StringVar(&o.s.Place, "place", "", "town and country")
	f.StringVar(&o.s.Contact, "contact", "", "durable contact, printed where there is no link")
	f.StringVar(&o.s.LinkBase, "link", "", "web address to which the number is appended, like HTTPS://EXAMPLE.ORG/P/")
	f.StringVar(&o.s.Zone, "zone", "", "time zone, like Europe/Riga (default: this computer's)")
	f.StringVar(&o.units, "units", "", "unit of lengths typed without one: mm, cm, in")
	f.StringVar(&o.s.Paper, "paper", "", "a4 or letter")
	f.StringVar(&o.s.Currency, "currency", "", "three letters, like EUR")
	f.StringVar(&o.sheet[0], "sheet-page", "", "label sheet: page, height x width, \"297 x 210 mm\"")
	f.StringVar(&o.sheet[1], "sheet-label", "", "label sheet: one label, height x width")
	f.Int64Var(&o.rows, "sheet-rows", 0, "label sheet: rows")
	f.Int64Var(&o.cols, "sheet-columns", 0, "label sheet: columns")
	f.StringVar(&o.sheet[2], "sheet-top", "", "label sheet: from the top of the page to the first label")
	f.StringVar(&o.sheet[3], "sheet-left", "", "label sheet: from the left of the page to the first label")
	f.StringVar(&o.sheet[4], "sheet-down", "", "label sheet: from the top of one label to the next below")
	f.StringVar(&o.sheet[5], "sheet-across", "", "label sheet: from the left of one label to the next")
}

// onto lays the flags that were given over a studio.
func (o *studioFlags) onto(c *cobra.Command, s record.Studio) (record.Studio, error) {
	given := c.Flags().Changed
	for flag, f := range map[string]struct{ to, from *string }{
		"maker": {&s.Maker, &o.s.Maker}, "place": {&s.Place, &o.s.Place}, "contact": {&s.Contact, &o.s.Contact},
		"link": {&s.LinkBase, &o.s.LinkBase}, "zone": {&s.Zone, &o.s.Zone}, "paper": {&s.Paper, &o.s.Paper}, "currency": {&s.Currency, &o.s.Currency},
	} {
		if given(flag) {
			*f.to = strings.TrimSpace(*f.from)
		}
	}
	s.LinkBase = strings.ToUpper(s.LinkBase)
	s.Paper, s.Currency = strings.ToLower(s.Paper), strings.ToUpper(s.Currency)
	if given("units") {
		u, err := word[record.LengthUnit]("--units", o.units, "LengthUnit")
		if err != nil {
			return s, err
		}
		s.Units = u
	}
	if given("sheet-rows") {
		s.Sheet.Rows = o.rows
	}
	if given("sheet-columns") {
		s.Sheet.Cols = o.cols
	}
	return s, texts(s.Units,
		text{"--sheet-page", o.sheet[0], &s.Sheet.Page}, text{"--sheet-label", o.sheet[1], &s.Sheet.Label},
		text{"--sheet-top", o.sheet[2], &s.Sheet.Top}, text{"--sheet-left", o.sheet[3], &s.Sheet.Left},
		text{"--sheet-down", o.sheet[4], &s.Sheet.PitchV}, text{"--sheet-across", o.sheet[5], &s.Sheet.PitchH})
}

func studioNew(a *app) *cobra.Command {
	var o studioFlags
	var empty, demo bool
	c := &cobra.Command{
		Use: "new", Short: "make a new book for a studio",
		Long: `Make a new book. The mark is the first part of every panel number and stays for
good: one to four consonants without L and Y, for example KB.`,
		Example: `  backleaf studio new --maker "Kersti Brand" --mark KB --place "Riga, Latvia" --link HTTPS://EXAMPLE.ORG/P/
  backleaf --book panels.sqlite studio new --maker "North Shed" --mark NS --units in --paper letter`,
		Args: wanted(0, 0, "no words, only flags"),
		RunE: func(c *cobra.Command, _ []string) error {
			if empty {
				if err := createBook(c.Context(), a.path(), a.now()); err != nil {
					return err
				}
				a.say("%s  an empty book; next: backleaf import FILE", a.path())
				return nil
			}
			if o.s.Maker == "" || o.s.Mark == "" {
				return usage("for example --maker \"Your Name\" --mark KB", "a studio needs its maker's name and its mark")
			}
			s, err := o.onto(c, record.Studio{Mark: strings.ToUpper(o.s.Mark), NAAN: o.s.NAAN, Demo: demo})
			if err != nil {
				return err
			}
			e := record.Entry{At: record.Moment(a.now().In(zone(s))), Body: s}
			if _, err := record.Encode(e); err != nil {
				return usage("", "%v", err)
			}
			if err := createBook(c.Context(), a.path(), a.now().In(zone(s)), e); err != nil {
				return err
			}
			a.say("%s  the book of %s, mark %s", a.path(), s.Maker, s.Mark)
			a.warnUnprintable(s.Maker, s.Place, s.Contact)
			a.say("next: backleaf material starter, then backleaf panel add")
			return nil
		},
	}
	o.flags(c)
	c.Flags().StringVar(&o.s.Mark, "mark", "", "the studio's mark, first part of every number")
	c.Flags().BoolVar(&demo, "demonstration", false, "every paper says that it is a demonstration")
	c.Flags().MarkHidden("demonstration")
	c.Flags().BoolVar(&empty, "empty", false, "an empty book, to be filled by \"backleaf import\"")
	c.Flags().StringVar(&o.s.NAAN, "naan", "", "ARK prefix of the studio, if it has one")
	return c
}

// createBook makes a book with its first entries.
func createBook(ctx context.Context, path string, now time.Time, es ...record.Entry) error {
	b, err := book.Create(ctx, path)
	if err != nil {
		return err
	}
	if len(es) > 0 {
		_, err = b.Append(ctx, now, es...)
	}
	return errors.Join(err, b.Close())
}

func studioChange(a *app) *cobra.Command {
	var o studioFlags
	c := &cobra.Command{
		Use: "change", Short: "change what the studio says of itself (not its mark)",
		Example: `  backleaf studio change --contact "studio@example.org"
  backleaf studio change --sheet-page "297 x 210 mm" --sheet-label "67 x 99 mm" --sheet-rows 4 --sheet-columns 2`,
		Args: wanted(0, 0, "no words, only flags"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.atBench(c.Context(), &bench{}, nil, func(s *benchState) ([]record.Body, string, error) {
				n, err := o.onto(c, s.shop.Studio)
				if err == nil && n == s.shop.Studio {
					err = usage("see \"backleaf studio change --help\"", "nothing to change")
				}
				return []record.Body{n}, "the studio, as changed", err
			})
		},
	}
	o.flags(c)
	return c
}

func studioShow(a *app) *cobra.Command {
	return a.jsonFlag(&cobra.Command{
		Use: "show", Short: "show the studio and its book",
		Example: `  backleaf studio show
  backleaf studio show --json`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.read(c.Context(), func(b *book.Book) error {
				w, err := b.Workshop(c.Context())
				if err != nil {
					return err
				}
				s := w.Studio
				if a.asJSON {
					return a.sayJSON(struct {
						Studio  record.Studio `json:"studio"`
						Entries int64         `json:"entries"`
						Panels  int           `json:"panels"`
					}{s, w.Last, len(w.Panels)})
				}
				t := a.table()
				t.pair("maker", s.Maker)
				t.pair("mark", s.Mark)
				t.pair("place", s.Place)
				t.pair("contact", s.Contact)
				t.pair("link", s.LinkBase)
				t.pair("ARK prefix", s.NAAN)
				t.pair("time zone", orElse(s.Zone, "this computer's"))
				t.pair("units", string(s.Units))
				t.pair("paper", s.Paper)
				if s.Sheet.Rows > 0 {
					t.pair("label sheet", fmt.Sprintf("%d x %d labels of %s", s.Sheet.Rows, s.Sheet.Cols, s.Sheet.Label))
				}
				t.pair("book", fmt.Sprintf("%s: entries %d, panels %d, materials %d, lots %d", a.path(), w.Last, len(w.Panels), len(w.Materials), len(w.Lots)))
				return t.done()
			})
		},
	})
}
