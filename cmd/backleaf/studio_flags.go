package main

import (
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

// studioFlags are what a studio says of itself.
type studioFlags struct {
	s     record.Studio
	units string
	sheet [6]string
	rows  int64
	cols  int64
}

func (o *studioFlags) flags(c *cobra.Command) {
	f := c.Flags()
	f.StringVar(&o.s.Maker, "maker", "", "name of the maker as it is to be printed")
	f.StringVar(&o.s.Place, "place", "", "town and country")
	f.StringVar(&o.s.Contact, "contact", "", "durable contact, printed where there is no link")
	f.StringVar(&o.s.LinkBase, "link", "", "web address to which the number is appended, like https://example.org/P/")
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
	s.Paper, s.Currency = strings.ToLower(s.Paper), strings.ToUpper(s.Currency)
	var r typed.Reader
	if given("units") {
		s.Units = ""
		typed.Word(&r, "units", o.units, &s.Units)
	}
	if given("sheet-rows") {
		s.Sheet.Rows = o.rows
	}
	if given("sheet-columns") {
		s.Sheet.Cols = o.cols
	}
	r.Units = s.Units
	o.texts(&r, &s.Sheet)
	return s, r.Err()
}

// texts reads the measures of a label sheet.
func (o *studioFlags) texts(r *typed.Reader, s *record.LabelSheet) {
	r.Text("sheet-page", o.sheet[0], &s.Page)
	r.Text("sheet-label", o.sheet[1], &s.Label)
	r.Text("sheet-top", o.sheet[2], &s.Top)
	r.Text("sheet-left", o.sheet[3], &s.Left)
	r.Text("sheet-down", o.sheet[4], &s.PitchV)
	r.Text("sheet-across", o.sheet[5], &s.PitchH)
}
