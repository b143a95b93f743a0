package paper

import "backleaf/record/pdf"

// outline writes the bookmarks (ISO 32000-1, 12.3.3), all on one level, and
// shows them when the file is opened.
func (f *file) outline(catalog pdf.Dict, pages []any, d *Document) {
	var items []pdf.Dict
	for _, m := range d.marks {
		if m.page < 0 || m.page >= len(pages) {
			continue
		}
		top := int64((d.pages[m.page].HeightMM - m.topMM) / mmPerPt)
		items = append(items, pdf.Dict{"Title": pdf.Text(m.title), "Dest": []any{pages[m.page], pdf.Name("XYZ"), nil, top, nil}})
	}
	if items == nil {
		return
	}
	root := pdf.Dict{"Type": pdf.Name("Outlines"), "Count": int64(len(items))}
	parent := f.Add(root)
	var refs []pdf.Ref
	for _, item := range items {
		item["Parent"] = parent
		refs = append(refs, f.Add(item))
	}
	for i, item := range items {
		if i > 0 {
			item["Prev"] = refs[i-1]
		}
		if i+1 < len(refs) {
			item["Next"] = refs[i+1]
		}
	}
	root["First"], root["Last"] = refs[0], refs[len(refs)-1]
	catalog["Outlines"], catalog["PageMode"] = parent, pdf.Name("UseOutlines")
}
