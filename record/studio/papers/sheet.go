package papers

import (
	"strings"

	"backleaf/label"
	"backleaf/record"
	"backleaf/record/studio/refuse"
)

// Usual is the order of labels as a studio usually prints them: on its own
// sheets, or else on its paper.
func Usual(s record.Studio) (o LabelOrder, err error) {
	if o.Options.Paper, err = label.PaperNamed(s.Paper); err != nil {
		return o, err
	}
	o.Options.From = 1
	o.Options.Sheet, err = Sheet(s, "", record.LabelSheet{}, o.Options.Paper, 1)
	return o, err
}

// Sheet finds what is in the printer, by the name of a sheet ("studio", "a4",
// "letter", "single", or empty), unless described says it for once; nil for
// single pages. from is the first free place of it.
func Sheet(s record.Studio, name string, described record.LabelSheet, plain label.Area, from int) (*label.Sheet, error) {
	if from < 1 {
		return nil, refuse.Input("from", "places-from-one", "places are counted from 1")
	}
	sheet, err := sheetIn(s, strings.ToLower(strings.TrimSpace(name)), described, plain)
	if err == nil && sheet == nil && from > 1 {
		err = refuse.Input("from", "one-place", "single pages have one place")
	}
	return sheet, err
}

func sheetIn(s record.Studio, name string, described record.LabelSheet, page label.Area) (*label.Sheet, error) {
	bought := described != record.LabelSheet{}
	var err error
	switch name {
	case "single":
		if bought {
			return nil, refuse.Unclearly("single-sheet", "--sheet single has one place, and no rows or columns")
		}
		return nil, nil
	case "studio", "":
		if bought {
			break
		}
		if s.Sheet.Rows > 0 {
			sheet, err := label.SheetOf(s.Sheet)
			return &sheet, refuse.Because("studio-sheet", err)
		}
		if name == "studio" {
			return nil, refuse.Cannot("no-studio-sheet", "the studio's settings hold no label sheet with its rows and columns")
		}
	case "a4", "letter":
		if page, err = label.PaperNamed(name); err != nil {
			return nil, err
		}
	}
	var sheet label.Sheet
	if described.Page.IsZero() {
		sheet, err = label.SheetOn(page, described)
	} else {
		sheet, err = label.SheetOf(described)
	}
	if err != nil {
		return nil, refuse.Unclearly("sheet", "%w", err)
	}
	return &sheet, nil
}
