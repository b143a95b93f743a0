package paper

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"fmt"

	"backleaf/record/pdf"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
)

// finishFonts completes every composite font. The library names characters by
// their UTF-16 code (Identity-H with a map from code to glyph). What it leaves
// out, and ISO 19005 or ISO 32000 ask for: a subset tag in the name, widths
// equal to the font program's, a table to Unicode of what is there, and for
// A-1 the set of characters present.
func (f *file) finishFonts(kind Kind) error {
	return f.Dicts(func(d pdf.Dict) error {
		if d["Type"] != any(pdf.Name("Font")) || d["Subtype"] != any(pdf.Name("Type0")) {
			return nil
		}
		return f.finishFont(d, kind)
	})
}

func (f *file) finishFont(d pdf.Dict, kind Kind) error {
	descendants, err := f.Array(d["DescendantFonts"])
	if err != nil {
		return err
	}
	if len(descendants) != 1 {
		return fmt.Errorf("%w: font without descendant", pdf.ErrMalformed)
	}
	cid, err := f.Dict(descendants[0])
	if err != nil {
		return err
	}
	descriptor, err := f.Dict(cid["FontDescriptor"])
	if err != nil {
		return err
	}
	program, err := f.Decoded(descriptor["FontFile2"])
	if err != nil {
		return err
	}
	gids, err := f.Decoded(cid["CIDToGIDMap"])
	if err != nil {
		return err
	}
	name, codes, widths, err := readSubset(program, gids)
	if err != nil {
		return err
	}
	d["BaseFont"], cid["BaseFont"], descriptor["FontName"] = name, name, name
	d["ToUnicode"] = f.Add(pdf.Deflated(zlib.DefaultCompression, toUnicode(codes)))
	cid["CIDSystemInfo"] = pdf.Dict{"Registry": pdf.String("Adobe"), "Ordering": pdf.String("Identity"), "Supplement": int64(0)}
	cid["W"] = widths
	if kind == A1b {
		descriptor["CIDSet"] = f.Add(pdf.Deflated(zlib.DefaultCompression, cidSet(codes)))
	}
	return nil
}

// readSubset returns the tagged name of a font program, the codes it has a
// glyph for, and their widths as a /W array (ISO 32000-1, 9.7.4.3).
func readSubset(program, gids []byte) (name pdf.Name, codes []int, widths []any, err error) {
	face, err := sfnt.Parse(program)
	if err != nil {
		return "", nil, nil, fmt.Errorf("cannot read embedded font: %w", err)
	}
	var buf sfnt.Buffer
	post, err := face.Name(&buf, sfnt.NameIDPostScript)
	if err != nil {
		return "", nil, nil, fmt.Errorf("cannot read embedded font: %w", err)
	}
	for code := 0; 2*code+1 < len(gids); code++ {
		gid := sfnt.GlyphIndex(gids[2*code])<<8 | sfnt.GlyphIndex(gids[2*code+1])
		if gid == 0 {
			continue
		}
		advance, err := face.GlyphAdvance(&buf, gid, em, font.HintingNone)
		if err != nil {
			return "", nil, nil, fmt.Errorf("cannot read embedded font: glyph %d: %w", gid, err)
		}
		if n := len(codes); n > 0 && codes[n-1] == code-1 {
			run := len(widths) - 1
			widths[run] = append(widths[run].([]any), int64(advance.Round()))
		} else {
			widths = append(widths, int64(code), []any{int64(advance.Round())})
		}
		codes = append(codes, code)
	}
	digest := sha256.Sum256(program)
	tag := make([]byte, 6)
	for i := range tag {
		tag[i] = 'A' + digest[i]%26
	}
	return pdf.Name(string(tag) + "+" + post), codes, widths, nil
}

// toUnicode writes the table that text extraction uses (9.10.3): each code is
// its own character, in blocks of at most 100 as the format allows.
func toUnicode(codes []int) []byte {
	var b bytes.Buffer
	b.WriteString("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n" +
		"/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n" +
		"/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n" +
		"1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	for len(codes) > 0 {
		n := min(100, len(codes))
		fmt.Fprintf(&b, "%d beginbfchar\n", n)
		for _, c := range codes[:n] {
			fmt.Fprintf(&b, "<%04X> <%04X>\n", c, c)
		}
		b.WriteString("endbfchar\n")
		codes = codes[n:]
	}
	b.WriteString("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n")
	return b.Bytes()
}

// cidSet has one bit for each character present, the highest bit first; 0 is
// the glyph for what is missing, which every font has.
func cidSet(codes []int) []byte {
	last := 0
	if len(codes) > 0 {
		last = codes[len(codes)-1]
	}
	set := make([]byte, last/8+1)
	set[0] = 0x80
	for _, c := range codes {
		set[c/8] |= 0x80 >> (c % 8)
	}
	return set
}
