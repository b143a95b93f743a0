package main

import (
	"strings"

	"backleaf/label"
	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/papers"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
)

// labelFlags are what "label" is told.
type labelFlags struct {
	papers.LabelOrder
	moment
	size, stage, sheet string
	grid               record.LabelSheet // of a sheet described for once
}

func newLabel(a *app) {
	o := labelFlags{size: "auto", stage: "auto"}
	o.File, o.Options.From = "labels.pdf", 1
	a.command("label", merged([]flags{sheetOf(&o.grid), {"output": &o.File, "size": &o.size, "stage": &o.stage, "because": &o.Because, "sheet": &o.sheet,
		"from": &o.Options.From, "crop-marks": &o.Options.CropMarks, "ruler": &o.Options.Ruler, "facts": &o.Facts, "with-note": &o.Options.Note,
		"preview": &o.Preview, "at": &o.at, "except": &o.except}}), func(r *run) error {
		if len(r.args) == 0 && !o.Options.Ruler && !o.Options.Note {
			return usage("for example: backleaf label batch:may -o labels.pdf", "expected the panels to label")
		}
		if o.Preview || len(r.args) == 0 {
			return r.reading(func(r *run) error { return r.label(&o) })
		}
		return r.writing(func(r *run) error { return r.label(&o) })
	})
}

func (r *run) label(o *labelFlags) error {
	v, err := r.LookWhole(r.ctx, r.args, o.except)
	if err != nil {
		return err
	}
	read := typed.For(v)
	r.form.read(read)
	o.options(read, v.Shop.Studio)
	if o.At = read.At(o.at); read.Err() != nil {
		return read.Err()
	}
	o.Progress = r.progress()
	a := r.app
	if o.File == "-" { // then the words go where they do not mix with it
		o.File = ""
		beside := *a
		beside.out, a = a.err, &beside
	}
	made, err := papers.Print(r.ctx, v, o.LabelOrder)
	if err != nil {
		return err
	}
	if o.File == "" {
		if _, err := r.out.Write(made.PDF); err != nil {
			return err
		}
	}
	a.sayLabels(o, v, made)
	return nil
}

// options reads the flags about size, stage and sheet.
func (o *labelFlags) options(r *typed.Reader, s record.Studio) {
	var err error
	if o.Options.Size, err = label.ParseSize(o.size, s.Units); err != nil {
		r.Fail(refuse.Input("size", "not-read", "%w", err))
	}
	if o.Stage, err = label.ParseStage(o.stage); err != nil {
		r.Fail(refuse.Input("stage", "not-read", "%w", err))
	}
	if o.Options.Paper, err = label.PaperNamed(s.Paper); err != nil {
		r.Fail(err)
	}
	switch name := strings.ToLower(strings.TrimSpace(o.sheet)); name {
	case "single", "studio", "", "a4", "letter":
	default:
		if !strings.ContainsAny(name, " x×*") { // a name, and no size of a page
			r.Fail(refuse.Input("sheet", "no-such-sheet", "there is no sheet %q", name))
			break
		}
		r.Text("sheet", o.sheet, &o.grid.Page)
	}
	if r.Err() == nil {
		o.Options.Sheet, err = papers.Sheet(s, o.sheet, o.grid, o.Options.Paper, o.Options.From)
		r.Fail(err)
	}
}

// sayLabels says what was printed.
func (a *app) sayLabels(o *labelFlags, v *studio.View, made papers.Labels) {
	for _, m := range made.Means {
		a.tell(a.catalogue(), m)
	}
	a.warn(v, made.Warnings)
	switch {
	case len(v.Panels) == 0 || o.Options.Note:
	case !made.First:
		a.noted("label-note")
	default:
		for _, note := range a.catalogue().Label.Notes {
			a.talk("%s", strings.TrimRight(string(note), "¹²³⁴"))
		}
	}
}
