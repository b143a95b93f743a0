package main

import (
	"cmp"
	"strings"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/questions"
	"backleaf/record/studio/typed"
)

// studioFlags are what a studio says of itself.
func studioFlags(s *record.Studio) flags {
	f := sheetOf(&s.Sheet)
	f["maker"], f["place"], f["contact"], f["link"], f["zone"] = &s.Maker, &s.Place, &s.Contact, &s.LinkBase, &s.Zone
	f["units"], f["paper"], f["currency"], f["sheet-page"], f["mark"], f["naan"] = &s.Units, &s.Paper, &s.Currency, &s.Sheet.Page, &s.Mark, &s.NAAN
	return f
}

// sheetOf are the flags that describe a bought sheet of labels.
func sheetOf(s *record.LabelSheet) flags {
	return flags{"sheet-label": &s.Label, "sheet-rows": &s.Rows, "sheet-columns": &s.Cols, "sheet-top": &s.Top, "sheet-left": &s.Left,
		"sheet-down": &s.PitchV, "sheet-across": &s.PitchH}
}

// tidy is a studio as its flags were meant.
func tidy(s record.Studio) record.Studio {
	for _, t := range []*string{&s.Maker, &s.Place, &s.Contact, &s.LinkBase, &s.Zone, &s.Paper, &s.Currency} {
		*t = strings.TrimSpace(*t)
	}
	s.Paper, s.Currency, s.Mark = strings.ToLower(s.Paper), strings.ToUpper(s.Currency), strings.ToUpper(s.Mark)
	return s
}

func studioNew(a *app) {
	var s record.Studio
	var empty bool
	a.command("studio new", merged([]flags{studioFlags(&s), {"empty": &empty, "demonstration": &s.Demo}}), func(r *run) error {
		if !empty && (s.Maker == "" || s.Mark == "") {
			return usage("for example --maker \"Your Name\" --mark KB", "a studio needs its maker's name and its mark")
		}
		if empty {
			s = record.Studio{}
		} else {
			var read typed.Reader
			read.Into("units", &s.Units, r.form.Flag("units").Value.String())
			read.Units = s.Units // of what is said of the sheet, too
			if r.form.read(&read); read.Err() != nil {
				return read.Err()
			}
			s = tidy(s)
		}
		if err := studio.Create(r.ctx, a.path(), a.now, a.random, s); err != nil {
			return err
		}
		if empty {
			a.told("book-empty", record.With("file", a.path()))
			return nil
		}
		a.told("book-made", record.With("file", a.path()), record.With("maker", s.Maker), record.With("mark", s.Mark))
		a.warn(nil, bench.Unprintable(s.Maker, s.Place, s.Contact))
		a.sayLink(s)
		a.told("next-materials")
		return nil
	})
}

// sayLink shows where the symbols will lead.
func (a *app) sayLink(s record.Studio) {
	if n, err := record.NewNumber(s.Mark, a.now().Year(), 1, s.NAAN); err == nil && s.LinkBase != "" {
		a.told("sample-link", record.With("link", s.LinkBase+n.Bare()))
	}
}

func studioShow(a *app) {
	a.reads("studio show", flags{"json": &a.asJSON}, func(r *run) error {
		w, entries, panels, err := questions.Extent(r.ctx, r.Book)
		if err != nil {
			return err
		}
		s := w.Studio
		if a.asJSON {
			return a.sayJSON(struct {
				Studio  record.Studio `json:"studio"`
				Entries int64         `json:"entry_count"`
				Panels  int           `json:"panel_count"`
			}{s, entries, panels})
		}
		t := a.table()
		s.Zone = cmp.Or(s.Zone, a.line("studio-zone"))
		for _, f := range a.catalogue().Rows(s) {
			t.Pair(f.Name, f.Value)
		}
		t.Pair(a.line("name-book"), a.line("studio-book", record.With("file", a.path()), record.With("entries", entries), record.With("panels", panels),
			record.With("materials", len(w.Materials)), record.With("lots", len(w.Lots))))
		return t.Done()
	})
}
