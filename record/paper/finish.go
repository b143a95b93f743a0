package paper

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"strings"
	"time"
)

// Kind is the archive format of a file.
type Kind int

const (
	// A1b is PDF/A-1b (ISO 19005-1:2005): labels and dossiers.
	A1b Kind = iota
	// A3b is PDF/A-3b (ISO 19005-3:2012): certificates, which carry attachments.
	A3b
)

func (k Kind) String() string { return [...]string{"PDF/A-1b", "PDF/A-3b"}[k] }

// version is the PDF version that the format builds on.
func (k Kind) version() string { return [...]string{"1.4", "1.7"}[k] }

// producer is written as the program that made the file.
const producer = "backleaf"

// finish reads the file that the PDF library wrote and writes its objects
// again with what the archive formats ask for: an identifier, an output
// intent, metadata, complete font dictionaries, printable annotations, no
// transparency groups, and attachments.
func finish(raw []byte, info Info, kind Kind, attachments []Attachment) ([]byte, error) {
	if kind != A1b && kind != A3b {
		return nil, fmt.Errorf("cannot write PDF: no such kind %d", int(kind))
	}
	if kind == A1b && len(attachments) > 0 {
		return nil, fmt.Errorf("cannot write PDF: %v allows no attachments", kind)
	}
	if info.Created.IsZero() {
		return nil, fmt.Errorf("cannot write PDF: no date of creation given")
	}
	info = info.clean()
	f, err := openPDF(raw)
	if err != nil {
		return nil, err
	}
	catalog, err := f.dict(f.trailer["Root"])
	if err != nil {
		return nil, err
	}
	if err := f.finishPages(catalog["Pages"], 0); err != nil {
		return nil, err
	}
	if err := f.finishFonts(kind); err != nil {
		return nil, err
	}
	for k := range catalog {
		if k != "Type" && k != "Pages" {
			delete(catalog, k)
		}
	}
	catalog["Lang"] = pdfString(info.Language)
	catalog["ViewerPreferences"] = pdfDict{"DisplayDocTitle": true, "PrintScaling": pdfName("None")}
	catalog["Metadata"] = f.add(&pdfStream{pdfDict{"Type": pdfName("Metadata"), "Subtype": pdfName("XML")}, info.xmp(kind)})
	catalog["OutputIntents"] = []any{f.outputIntent()}
	if err := f.attach(catalog, attachments, info.Modified); err != nil {
		return nil, err
	}
	return f.write(kind, catalog, info.dict())
}

// clean makes the texts fit for both places and fills in what may be left out.
func (i Info) clean() Info {
	for _, s := range []*string{&i.Title, &i.Author, &i.Subject, &i.Keywords} {
		*s = OneLine(*s)
	}
	if i.Language == "" {
		i.Language = "en"
	}
	if i.Modified.IsZero() {
		i.Modified = i.Created
	}
	return i
}

// dict is the information dictionary (ISO 32000-1, 14.3.3).
func (i Info) dict() pdfDict {
	d := pdfDict{
		"Creator":      pdfString(producer),
		"Producer":     pdfString(producer),
		"CreationDate": pdfString(pdfDate(i.Created)),
		"ModDate":      pdfString(pdfDate(i.Modified)),
	}
	for k, v := range map[pdfName]string{"Title": i.Title, "Author": i.Author, "Subject": i.Subject, "Keywords": i.Keywords} {
		if v != "" {
			d[k] = textString(v)
		}
	}
	return d
}

// pdfDate writes a moment with its offset (7.9.4).
func pdfDate(t time.Time) string {
	return "D:" + t.Format("20060102150405") + strings.Replace(t.Format("-07:00"), ":", "'", 1) + "'"
}

// finishPages walks the page tree.
func (f *pdfFile) finishPages(node any, depth int) error {
	if depth > maxNesting {
		return fmt.Errorf("%w: page tree", errPDF)
	}
	d, err := f.dict(node)
	if err != nil {
		return err
	}
	if d["Type"] == any(pdfName("Pages")) {
		kids, err := f.array(d["Kids"])
		if err != nil {
			return err
		}
		for _, kid := range kids {
			if err := f.finishPages(kid, depth+1); err != nil {
				return err
			}
		}
		return nil
	}
	delete(d, "Group") // the pages are opaque, and A-1 forbids transparency
	annots, err := f.array(d["Annots"])
	if err != nil {
		return err
	}
	for _, a := range annots {
		annot, err := f.dict(a)
		if err != nil {
			return err
		}
		const printFlag = 4
		annot["F"] = int64(printFlag)
	}
	return nil
}

func (f *pdfFile) outputIntent() pdfDict {
	profile := f.add(&pdfStream{pdfDict{"N": int64(3)}, sRGBProfile()})
	return pdfDict{
		"Type":                      pdfName("OutputIntent"),
		"S":                         pdfName("GTS_PDFA1"),
		"OutputConditionIdentifier": pdfString("sRGB IEC61966-2.1"),
		"RegistryName":              pdfString("http://www.color.org"),
		"Info":                      pdfString("sRGB IEC61966-2.1"),
		"DestOutputProfile":         profile,
	}
}

// write writes all objects that can be reached, numbered anew in the order in
// which they are met, so that nothing depends on how they were numbered.
func (f *pdfFile) write(kind Kind, catalog, info pdfDict) ([]byte, error) {
	w := &pdfWriter{file: f, numbers: map[int]int{}}
	root := w.number(f.add(catalog))
	about := w.number(f.add(info))
	fmt.Fprintf(&w.buf, "%%PDF-%s\n%%\xE2\xE3\xCF\xD3\n", kind.version())
	for i := 0; i < len(w.queue); i++ {
		o, err := f.object(w.queue[i])
		if err != nil {
			return nil, err
		}
		if o, err = w.renumber(o, 0); err != nil {
			return nil, err
		}
		w.offsets = append(w.offsets, w.buf.Len())
		fmt.Fprintf(&w.buf, "%d 0 obj\n", i+1)
		writeObject(&w.buf, o)
		w.buf.WriteString("\nendobj\n")
	}
	digest := sha256.Sum256(w.buf.Bytes())
	id := pdfString(digest[:16])
	start := w.buf.Len()
	fmt.Fprintf(&w.buf, "xref\n0 %d\n0000000000 65535 f\r\n", len(w.offsets)+1)
	for _, at := range w.offsets {
		fmt.Fprintf(&w.buf, "%010d 00000 n\r\n", at)
	}
	w.buf.WriteString("trailer\n")
	writeObject(&w.buf, pdfDict{"Size": len(w.offsets) + 1, "Root": root, "Info": about, "ID": []any{id, id}})
	fmt.Fprintf(&w.buf, "\nstartxref\n%d\n%%%%EOF\n", start)
	return w.buf.Bytes(), nil
}

type pdfWriter struct {
	file    *pdfFile
	buf     bytes.Buffer
	numbers map[int]int // old to new
	queue   []int       // old numbers in the order of the new ones
	offsets []int
}

func (w *pdfWriter) number(ref pdfRef) pdfRef {
	n, ok := w.numbers[ref.num]
	if !ok {
		w.queue = append(w.queue, ref.num)
		n = len(w.queue)
		w.numbers[ref.num] = n
	}
	return pdfRef{n, 0}
}

// renumber copies an object with its references changed.
func (w *pdfWriter) renumber(o any, depth int) (any, error) {
	if depth > maxNesting {
		return nil, fmt.Errorf("%w: nested too deep", errPDF)
	}
	switch o := o.(type) {
	case pdfRef:
		return w.number(o), nil
	case []any:
		out := make([]any, len(o))
		for i, v := range o {
			var err error
			if out[i], err = w.renumber(v, depth+1); err != nil {
				return nil, err
			}
		}
		return out, nil
	case pdfDict:
		out := pdfDict{}
		for _, k := range sortedKeys(o) {
			var err error
			if out[k], err = w.renumber(o[k], depth+1); err != nil {
				return nil, err
			}
		}
		return out, nil
	case *pdfStream:
		dict := pdfDict{}
		for k, v := range o.dict {
			if k != "Length" { // written from the data
				dict[k] = v
			}
		}
		d, err := w.renumber(dict, depth+1)
		if err != nil {
			return nil, err
		}
		return &pdfStream{d.(pdfDict), o.data}, nil
	}
	return o, nil
}
