package sheet

import (
	"errors"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/accept"
)

// Mapping says which column of a sheet is which field. The package
// documentation describes its form.
type Mapping struct {
	Backleaf  string                       `json:"backleaf"` // "mapping"
	Version   int64                        `json:"v"`
	Columns   map[string]string            `json:"columns"`             // header: field
	Constants map[string]string            `json:"constants,omitzero"`  // field: text of an empty cell
	Shelf     map[string]string            `json:"shelf,omitzero"`      // name in the sheet: lot or material
	Words     map[string]map[string]string `json:"words,omitzero"`      // field: cell: what it stands for
	Dates     string                       `json:"dates,omitzero"`      // one of [DateForms]; absent: EDTF
	Unit      record.LengthUnit            `json:"unit,omitzero"`       // of figures without a unit
	DepthUnit record.LengthUnit            `json:"depth_unit,omitzero"` // of a thickness without a unit; absent: as unit
	Currency  string                       `json:"currency,omitzero"`   // of prices without one
}

// Field is one thing a column may hold.
type Field struct{ Name, Meaning string }

// Fields lists what a column may hold.
var Fields = []Field{
	{"own_reference", "the studio's own older number; each stands once"},
	{"size", "height x width, or height x width x depth"},
	{"height", "height"},
	{"width", "width"},
	{"depth", "thickness of the board"},
	{"cut", "when the board was cut"},
	{"batch", "name of the batch (default: today's date)"},
	{"board", "lot or material of the board"},
	{"grain", "run of the face grain: height, width, unknown"},
	{"note", "remark about the board"},
	{"coats", "coats from the board outwards"},
	{"coats_date", "when they were laid"},
	{"cloth", "lot or material of the cloth on the front, none, unknown"},
	{"adhesive", "what the cloth was laid in: lot, material or mix"},
	{"threads", "run of the warp: along-grain, across-grain, bias, unknown"},
	{"cloth_date", "when it was laid"},
	{"paint", "paint medium, none, unknown"},
	{"technique", "how it was painted"},
	{"paint_date", "when it was painted"},
	{"varnish", "lot, material or mix of the varnish, none, unknown"},
	{"resin", "resin class of the varnish"},
	{"removable", "whether the varnish can be taken off: yes, no, unknown"},
	{"gloss", "matt, satin, gloss, unknown"},
	{"varnish_date", "when it was varnished"},
	{"title", "title of the work"},
	{"made", "date of the work"},
	{"subject", "what it shows"},
	{"inscription", "what is written on it and where"},
	{"signed", "where and how it is signed"},
	{"features", "marks by which it can be told from another"},
	{"type", "type of object (default painting)"},
	{"medium_line", "medium and support in the maker's words"},
	{"remarks", "a note about the panel"},
	{"handover", "how it left: sale, gift, loan, consignment, return, theft, loss, unknown, none"},
	{"handover_date", "when it left"},
	{"handover_to", "to whom; private"},
	{"handover_price", "for how much; private"},
	{"handover_private_note", "address or the like; private"},
	{"handover_note", "remark, for every reader"},
	{"discarded", "why it was given up"},
	{"discarded_date", "when it was given up"},
}

func isField(name string) bool {
	return slices.ContainsFunc(Fields, func(f Field) bool { return f.Name == name })
}

// maxMapping bounds a mapping file.
const maxMapping = 1 << 20

// ParseMapping reads a mapping file and checks it by itself.
func ParseMapping(data []byte) (Mapping, error) {
	var m Mapping
	if len(data) > maxMapping {
		return m, fmt.Errorf("the mapping is larger than %d bytes", maxMapping)
	}
	data = []byte(strings.TrimPrefix(string(data), bom))
	if err := json.Unmarshal(data, &m, json.RejectUnknownMembers(true)); err != nil {
		return m, mappingError(data, err)
	}
	if m.Backleaf != "mapping" || m.Version != 1 {
		return m, fmt.Errorf(`not a mapping: expected "backleaf":"mapping","v":1`)
	}
	if len(m.Columns) == 0 {
		return m, fmt.Errorf("columns: missing: it says which column is which field")
	}
	taken := map[string]string{}
	for _, col := range slices.Sorted(maps.Keys(m.Columns)) {
		f := m.Columns[col]
		if err := checkField("columns", f); err != nil {
			return m, err
		}
		if other, twice := taken[f]; twice {
			return m, fmt.Errorf("columns: both %q and %q are %s", other, col, f)
		}
		taken[f] = col
	}
	for _, f := range slices.Sorted(maps.Keys(m.Constants)) {
		if err := checkField("constants", f); err != nil {
			return m, err
		}
	}
	for _, f := range slices.Sorted(maps.Keys(m.Words)) {
		if err := checkField("words", f); err != nil {
			return m, err
		}
	}
	return m, m.checkWords()
}

func (m Mapping) checkWords() error {
	if sh, _ := accept.Shapes("currency"); m.Currency != "" && !regexp.MustCompile(sh.Pattern).MatchString(m.Currency) {
		return fmt.Errorf("currency: %q: expected %s", clip(m.Currency), sh.Meaning)
	}
	if m.Dates != "" && !slices.Contains(DateForms, m.Dates) {
		return fmt.Errorf("dates: %q is not %s", clip(m.Dates), record.OneOf(m.Dates, DateForms))
	}
	units := record.Words("LengthUnit")
	for _, u := range []struct {
		name string
		unit record.LengthUnit
	}{{"unit", m.Unit}, {"depth_unit", m.DepthUnit}} {
		if u.unit != "" && !slices.Contains(units, string(u.unit)) {
			return fmt.Errorf("%s: %q is not %s", u.name, clip(string(u.unit)), record.OneOf(string(u.unit), units))
		}
	}
	return nil
}

func checkField(where, f string) error {
	if isField(f) {
		return nil
	}
	var names []string
	for _, x := range Fields {
		names = append(names, x.Name)
	}
	return fmt.Errorf("%s: there is no field %q%s", where, clip(f), nearest(f, names))
}

// mappingError says where a mapping file is wrong.
func mappingError(data []byte, err error) error {
	off, why := int64(0), err.Error()
	var sem *json.SemanticError
	var syn *jsontext.SyntacticError
	switch {
	case errors.As(err, &sem):
		off, why = sem.ByteOffset, fmt.Sprintf("something unexpected at %q", string(sem.JSONPointer))
	case errors.As(err, &syn):
		off, why = syn.ByteOffset, "a sign stands here that no mapping has, or one is missing"
	}
	line := 1 + strings.Count(string(data[:min(max(off, 0), int64(len(data)))]), "\n")
	return fmt.Errorf("line %d: not a mapping: %s", line, why)
}

// clip keeps a message about a long text readable.
func clip(s string) string {
	if r := []rune(s); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return s
}
