package planning

import (
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/studio/refuse"
)

// File is a plan, or a part of one, as it is written.
type File struct {
	Path string
	What record.Code // plan, sheet or calendar
	Kind string      // a text that all of its kind hold
	Data []byte
}

// Files are the plan as a PDF, or a drawing of each sheet as SVG, by the ending
// of a path, and its timetable for a calendar; an empty path asks for nothing.
func (d Day) Files(out, calendar string, stamp time.Time) (files []File, err error) {
	ext := filepath.Ext(out)
	switch {
	case out == "":
	case strings.EqualFold(ext, ".pdf"):
		data, err := d.Job.PDF()
		if err != nil {
			return nil, err
		}
		files = append(files, File{out, "plan", string(d.Job.Words.Plan.T("kind")), data})
	case strings.EqualFold(ext, ".svg"):
		for i := range d.Job.Plan.Sheets {
			drawing, err := d.Job.Drawing(i, 277, 190)
			if err != nil {
				return nil, err
			}
			files = append(files, File{fmt.Sprintf("%s-%d.svg", strings.TrimSuffix(out, ext), i+1), "sheet", "<svg", drawing.SVG()})
		}
	default:
		return nil, refuse.Unclearly("no-form-of-plan", "%q is neither a PDF nor an SVG file", out)
	}
	if calendar == "" {
		return files, nil
	}
	if d.Job.Table == nil {
		return nil, refuse.Input("calendar", "no-timetable", "without a recipe there is no timetable")
	}
	return append(files, File{calendar, "calendar", check.CalendarKind, d.Calendar(stamp)}), nil
}
