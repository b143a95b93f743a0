package page_test

import (
	"bytes"
	"compress/gzip"
	"context"
	"encoding/json"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"io"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"

	"backleaf/certificate/page"
	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
)

var (
	ctx   = context.Background()
	drawn = time.Date(2026, 6, 1, 12, 0, 0, 0, time.UTC)
)

// studio, shelf and work are an invented panel; %s stands where text of a
// person stands.
var story = []string{
	`{"kind":"studio","maker":%s,"mark":"KB","place":%s,"contact":%s,"link_base":"HTTPS://EXAMPLE.ORG/P/","time_zone":"UTC","paper":"a4"}`,
	`{"kind":"key-made","fingerprint":"KEYPRINT","public_key":"KEYLINE"}`,
	`{"kind":"material","key":"ply","name":%s,"uses":["board"],"board":{"kind":"plywood","species":"birch","plies":3,"thickness":"3 mm"}}`,
	`{"kind":"material","key":"sealer","name":%s,"uses":["sealer","ground"],"binder":"acrylic-dispersion","hazard":%s}`,
	`{"kind":"cut","batch":"may","size":"30 x 40 cm x 3 mm","board":"ply","grain":"width","at":"2026-05-02T09:00:00Z","panels":["KB26-0001-K"]}`,
	`{"kind":"coat","purpose":"sealer","faces":["front","back","edges"],"mix":[{"parts":1,"material":"sealer"}],"at":"2026-05-02T10:00:00Z","panels":["KB26-0001-K"]}`,
	`{"kind":"paint","medium":"oil","technique":%s,"pigments":[{"name":"lead white","colour_index":"PW 1"}],"at":"2026-05-20","panels":["KB26-0001-K"]}`,
	`{"kind":"described","title":%s,"made":"2026","signed":%s,"inscription":%s,"subject":%s,"distinguishing_features":%s,"own_reference":%s,"edition":%s,"panels":["KB26-0001-K"]}`,
	`{"kind":"photograph","role":"front","sha256":"74fcdb5bf8a1b06cff86ae68a08c2e525594ef9023a2f3295c38c105272f9213","media_type":"image/jpeg","width_px":1200,"height_px":900,"caption":%s,"credit":%s,"panels":["KB26-0001-K"]}`,
	`{"kind":"condition","by":%s,"text":%s,"panels":["KB26-0001-K"]}`,
	`{"kind":"published","shown":"yes","photograph":"yes","panels":["KB26-0001-K"]}`,
}

// told is a story in which each text of a person is made by text.
func told(t testing.TB, text func(n int) string) (*record.Workshop, *record.Panel, *book.Book, seal.Key) {
	t.Helper()
	key, err := seal.KeyFromSeed(bytes.Repeat([]byte{7}, 32))
	if err != nil {
		t.Fatal(err)
	}
	b, err := book.Create(ctx, filepath.Join(t.TempDir(), "studio.sqlite"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	n := 0
	made := deed.KeyMade(key.Public())
	for _, line := range story {
		line = strings.NewReplacer("KEYPRINT", made.Fingerprint, "KEYLINE", made.PublicKey).Replace(line)
		for strings.Contains(line, "%s") {
			n++
			said, _ := json.Marshal(text(n))
			line = strings.Replace(line, "%s", string(said), 1)
		}
		e, err := accept.Parse([]byte(line))
		if err == nil {
			_, err = b.Append(ctx, drawn, e)
		}
		if err != nil {
			t.Fatalf("%s: %v", line, err)
		}
	}
	entries, err := deed.Entries(ctx, b, "KB26-0001-K", 0)
	if err != nil {
		t.Fatal(err)
	}
	var es []record.Entry
	for _, s := range entries {
		es = append(es, s.Entry)
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	return w, w.Panel("KB26-0001-K"), b, key
}

func plainText(n int) string { return fmt.Sprintf("text %d", n) }

func draw(t testing.TB, text func(n int) string, change ...func(*page.Input)) (page.Page, page.Input) {
	t.Helper()
	w, p, b, key := told(t, text)
	in := page.Input{Workshop: w, Panel: p, Key: &key, Photograph: photograph(t, "")}
	for _, c := range change {
		c(&in)
	}
	var err error
	if in.Deed, err = deed.Make(ctx, b, w, p, nil, in.Key, drawn); err != nil {
		t.Fatal(err)
	}
	out, err := page.Draw(in)
	if err != nil {
		t.Fatal(err)
	}
	return out, in
}

// photograph is a JPEG file with a comment.
func photograph(t testing.TB, comment string) []byte {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, 1200, 900))
	for y := range 900 {
		for x := range 1200 {
			img.Set(x, y, color.RGBA{uint8(x / 5), uint8(y / 4), 90, 255})
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, nil); err != nil {
		t.Fatal(err)
	}
	if comment == "" {
		return b.Bytes()
	}
	file := b.Bytes() // after the start of the picture (ITU-T T.81, B.2.4.5)
	note := append([]byte{0xFF, 0xFE, byte((len(comment) + 2) >> 8), byte(len(comment) + 2)}, comment...)
	return slices.Concat(file[:2], note, file[2:])
}

// element finds what a page holds.
func elements(t testing.TB, data []byte) (out []*html.Node) {
	t.Helper()
	doc, err := html.Parse(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	for n := range doc.Descendants() {
		if n.Type == html.ElementNode {
			out = append(out, n)
		}
	}
	return out
}

// hostile is text that would do something, wherever it stood unescaped.
func hostile(n int) string {
	return fmt.Sprintf(`%d"'><script>alert(1)</script></title></script><!-- --><img src=x onerror=alert(2)> {{.}} ${x} javascript:alert(3) \u003c`, n)
}

// Text of a person is text on the page, in the data, in the structured data and
// in every other page: it adds no element and no attribute.
func TestHostileText(t *testing.T) {
	plain, _ := draw(t, plainText)
	bad, in := draw(t, hostile, func(in *page.Input) { in.Photograph = photograph(t, `"><script>alert(4)</script>`) })
	shape := func(data []byte) (out []string) {
		for _, e := range elements(t, data) {
			if e.Namespace == "svg" {
				continue // how many lines a drawing takes depends on its texts
			}
			names := []string{e.Data}
			for _, a := range e.Attr {
				names = append(names, a.Key)
				if strings.HasPrefix(a.Key, "on") || a.Key == "style" || strings.HasPrefix(strings.TrimSpace(a.Val), "javascript:") {
					t.Errorf("<%s %s=%q>", e.Data, a.Key, a.Val)
				}
			}
			slices.Sort(names[1:])
			out = append(out, strings.Join(names, " "))
		}
		return out
	}
	if a, b := shape(plain.HTML), shape(bad.HTML); !slices.Equal(a, b) {
		t.Errorf("other elements:\n%q\n%q", a, b)
	}
	for _, e := range elements(t, bad.HTML) {
		if e.Namespace == "svg" && (e.Data == "script" || e.Data == "image" || e.Data == "foreignObject" || e.Data == "a") {
			t.Errorf("<%s> in the drawing", e.Data)
		}
	}
	for _, e := range elements(t, bad.HTML) {
		if attribute(e, "type") != "application/ld+json" || e.Data != "script" {
			continue
		}
		var found any
		if err := json.Unmarshal([]byte(e.FirstChild.Data), &found); err != nil || !strings.Contains(fmt.Sprint(found), "<script>alert(1)") {
			t.Errorf("the structured data does not hold the text as it was written: %v", err)
		}
	}
	if packed, record := carried(t, bad.HTML); !strings.Contains(string(record), "<script>alert(1)") || packed.Page == "" {
		t.Error("the data does not hold the text as it was written")
	}
	for _, a := range bad.Assets {
		if strings.HasSuffix(a.Name, ".jpeg") && bytes.Contains(a.Data, []byte("alert")) {
			t.Error("a picture keeps what the photograph held")
		}
	}
	c := tell.English()
	taken, err := page.TakenBack(c, in.Workshop, in.Panel, record.Moment(drawn))
	if err != nil {
		t.Fatal(err)
	}
	missing, err := page.NotFound(c, in.Workshop.Studio, "KB26-0142-1", "/P/")
	if err != nil {
		t.Fatal(err)
	}
	index, err := page.Index(c, in.Workshop.Studio, []page.Link{page.LinkTo(c, in.Workshop, in.Panel)})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []page.Page{taken, missing, index} {
		for _, e := range elements(t, p.HTML) {
			if e.Data == "script" || e.Data == "img" || strings.Contains(attribute(e, "href"), ":") {
				t.Errorf("<%s> in a page without a record", e.Data)
			}
		}
		if !strings.Contains(string(p.HTML), "&lt;script&gt;") {
			t.Error("the text is not there")
		}
	}
}

func attribute(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

// data is what a page carries for its script.
type data struct {
	Record []byte `json:"record"`
	Page   string `json:"page"`
}

// carried reads the data of a page, and unpacks its record.
func carried(t testing.TB, page []byte) (d data, record []byte) {
	t.Helper()
	for _, e := range elements(t, page) {
		if attribute(e, "id") == "data" {
			if err := json.Unmarshal([]byte(e.FirstChild.Data), &d); err != nil {
				t.Fatal(err)
			}
		}
	}
	r, err := gzip.NewReader(bytes.NewReader(d.Record))
	if err == nil {
		record, err = io.ReadAll(r)
	}
	if err != nil {
		t.Fatal(err)
	}
	return d, record
}

// The data gives the signed bytes back, and the word for the page is true.
func TestDataIsRead(t *testing.T) {
	out, in := draw(t, plainText)
	d, record := carried(t, out.HTML)
	if !bytes.Equal(record, in.Deed.Record) {
		t.Error("another record than the one that was signed")
	}
	stated, err := page.Stated(out.HTML)
	if err != nil {
		t.Fatal(err)
	}
	origin, _, _ := strings.Cut(d.Page, " panel page\n")
	word := seal.Page{Origin: origin, Number: "KB26-0001-K", Record: seal.DigestOf(in.Deed.Record), Text: stated}
	_, pictures, _ := strings.Cut(d.Page, "\npictures: ")
	pictures, _, _ = strings.Cut(pictures, "\n")
	for s := range strings.FieldsSeq(pictures) {
		p, err := seal.ParseDigest(s)
		if err != nil {
			t.Fatal(err)
		}
		word.Pictures = append(word.Pictures, p)
	}
	if signed, err := word.Sign(*in.Key); err != nil || string(signed) != d.Page || len(word.Pictures) != 3 {
		t.Errorf("%s, %v", d.Page, err)
	}
	for _, a := range out.Assets {
		if name, _, _ := strings.Cut(a.Name, "."); name != seal.DigestOf(a.Data).String() {
			t.Errorf("%s has another digest", a.Name)
		}
	}
	again, err := page.Draw(in)
	if err != nil || !bytes.Equal(out.HTML, again.HTML) {
		t.Error("the same record gives other bytes")
	}
}

// One byte changed anywhere in a page changes what it states, unless it is a
// comment, an attribute of no matter, the data (which is checked by itself), or
// markup that is read the same: what is left of the page is then the same.
func TestStated(t *testing.T) {
	out, _ := draw(t, plainText)
	whole, err := page.Stated(out.HTML)
	if err != nil {
		t.Fatal(err)
	}
	kept := func(data []byte) string {
		doc, err := html.Parse(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		var read strings.Builder
		for n := range doc.Descendants() {
			switch {
			case n.Type == html.ElementNode:
				slices.SortFunc(n.Attr, func(a, b html.Attribute) int { return strings.Compare(a.Key, b.Key) })
				fmt.Fprint(&read, n.Data, n.Attr)
			case n.Type == html.TextNode && attribute(n.Parent, "id") != "data":
				read.WriteString(n.Data)
			}
		}
		return read.String()
	}
	step := 97
	if toolcheck.Thorough() {
		step = 7
	}
	was, noticed := kept(out.HTML), 0
	for at := 0; at < len(out.HTML); at += step {
		changed := bytes.Clone(out.HTML)
		changed[at] ^= 1
		switch now, err := page.Stated(changed); {
		case err != nil || now != whole:
			noticed++
		case kept(changed) != was:
			t.Errorf("byte %d, in %q, is not noticed", at, out.HTML[max(0, at-20):min(len(out.HTML), at+20)])
		}
	}
	if carried := bytes.Index(out.HTML, []byte(`id="data"`)); noticed < carried/step*9/10 {
		t.Errorf("%d of %d changes are noticed", noticed, carried/step)
	}
}

// Nothing on a page leads to another place but the vocabulary of the structured
// data, and the policy forbids the rest.
func TestNothingFromElsewhere(t *testing.T) {
	out, _ := draw(t, plainText)
	policy := ""
	for _, e := range elements(t, out.HTML) {
		for _, a := range e.Attr {
			if slices.Contains([]string{"src", "href", "srcset"}, a.Key) && !strings.HasPrefix(a.Val, "../a/") && a.Val[0] != '#' {
				t.Errorf("<%s %s=%q>", e.Data, a.Key, a.Val)
			}
		}
		if attribute(e, "http-equiv") == "Content-Security-Policy" {
			policy = attribute(e, "content")
		}
	}
	if !strings.HasPrefix(policy, "default-src 'none';") || strings.Contains(policy, "unsafe") || strings.Contains(policy, "http") {
		t.Errorf("the policy is %q", policy)
	}
	for _, a := range out.Assets {
		if strings.HasSuffix(a.Name, ".js") || strings.HasSuffix(a.Name, ".css") {
			if m := regexp.MustCompile(`innerHTML|insertAdjacent|document\.write|eval\(|cookie|localStorage|https?://[a-z]|@import|url\(`).Find(a.Data); m != nil {
				t.Errorf("%s holds %s", a.Name, m)
			}
		}
	}
}

// A page says what the papers say, and what is dangerous before all else that
// is made of words.
func TestPageSays(t *testing.T) {
	out, _ := draw(t, plainText)
	text := strings.Join(strings.Fields(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(string(out.HTML), " ")), " ")
	at := -1
	for _, s := range []string{"Panel KB26-0001-K", "Hazard:", "lead", "No certificate is on record", "text 3", "Build-up of", "Care and display", "Not recorded", "What this page is", "By hand"} {
		next := strings.Index(text, s)
		if next < at {
			t.Errorf("%q stands before what comes before it", s)
		}
		if at = next; at < 0 {
			t.Fatalf("%q is not on the page:\n%s", s, text)
		}
	}
	unsigned, _ := draw(t, plainText, func(in *page.Input) { in.Key, in.Photograph, in.Withheld = nil, nil, true })
	for _, s := range []string{"Nobody can check who wrote it", "It is not shown here"} {
		if !strings.Contains(string(unsigned.HTML), s) {
			t.Errorf("unsigned and without its photograph, a page does not say %q", s)
		}
	}
	if strings.Contains(string(unsigned.HTML), "<img") || strings.Contains(string(unsigned.HTML), `id="data"`) {
		t.Error("it shows what it should not")
	}
}
