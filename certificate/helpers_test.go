package certificate_test

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"backleaf/certificate"
	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/seal"
)

var (
	ctx   = context.Background()
	issue = time.Date(2026, 6, 1, 11, 30, 0, 0, time.FixedZone("", 3*3600))
)

const number = record.Number("KB26-0001-K")

// An invented studio with invented products.
var shelf = []string{
	`{"kind":"material","key":"ply","name":"birch plywood 3 mm","uses":["board"],"board":{"kind":"plywood","species":"birch","plies":3,"thickness":"3 mm"}}`,
	`{"kind":"material","key":"sealer","name":"clear sealer","uses":["sealer","adhesive"],"binder":"acrylic-dispersion","solids_by_volume":"38 %","density":"1.04 g/mL"}`,
	`{"kind":"material","key":"linen","name":"fine linen","uses":["cloth"],"cloth":{"fibre":"linen","weave":"plain","warp":"18 /cm","weft":"17 /cm"}}`,
	`{"kind":"material","key":"primer","name":"white primer","uses":["ground"],"binder":"acrylic-dispersion","solids_by_volume":"42 %","density":"1.4 g/mL"}`,
	`{"kind":"material","key":"gloss","name":"gloss varnish","uses":["varnish"],"binder":"hydrocarbon-resin","resin":"hydrocarbon resin","removable":"yes","removed_with":"white spirit"}`,
	`{"kind":"lot","key":"ply-1","material":"ply"}`,
	`{"kind":"lot","key":"sealer-1","material":"sealer","producer_lot":"L 77"}`,
	`{"kind":"lot","key":"linen-1","material":"linen"}`,
	`{"kind":"lot","key":"primer-1","material":"primer","producer_lot":"P 12"}`,
	`{"kind":"lot","key":"gloss-1","material":"gloss"}`,
}

// work is a panel from the board to the varnish.
var work = []string{
	`{"kind":"cut","batch":"may","size":"30 x 40 cm x 3 mm","board":"ply","board_lot":"ply-1","grain":"width","at":"2026-05-02T09:00:00+03:00","panels":["KB26-0001-K"]}`,
	`{"kind":"coat","purpose":"sealer","faces":["front","back","edges"],"extra":["edges"],"mix":[{"parts":1,"material":"sealer","lot":"sealer-1"}],"wet_each":"38 g","at":"2026-05-02T10:00:00+03:00","panels":["KB26-0001-K"]}`,
	`{"kind":"cloth","faces":["front"],"cloth":"linen","cloth_lot":"linen-1","threads":"along-grain","mix":[{"parts":1,"material":"sealer","lot":"sealer-1"}],"wet_each":"24 g","at":"2026-05-02T14:05:00+03:00","panels":["KB26-0001-K"]}`,
	`{"kind":"trimmed","tool":"knife","edges_eased":"yes","at":"2026-05-02T14:40:00+03:00","panels":["KB26-0001-K"]}`,
	`{"kind":"coat","purpose":"sealer","faces":["back"],"mix":[{"parts":1,"material":"sealer","lot":"sealer-1"}],"wet_each":"16 g","at":"2026-05-02T16:00:00+03:00","panels":["KB26-0001-K"]}`,
	`{"kind":"coat","purpose":"ground","faces":["front"],"mix":[{"parts":3,"material":"primer","lot":"primer-1"},{"parts":1,"material":"sealer","lot":"sealer-1"}],"wet_each":"21 g","at":"2026-05-04T10:00:00+03:00","panels":["KB26-0001-K"]}`,
	`{"kind":"coat","purpose":"ground","faces":["front"],"mix":[{"parts":3,"material":"primer","lot":"primer-1"},{"parts":1,"material":"sealer","lot":"sealer-1"}],"wet_each":"21 g","at":"2026-05-04T16:00:00+03:00","panels":["KB26-0001-K"]}`,
	`{"kind":"paint","medium":"oil","technique":"alla prima","pigments":[{"name":"titanium white","colour_index":"PW 6"}],"at":"2026-05-20","panels":["KB26-0001-K"]}`,
	`{"kind":"varnish","resin":"hydrocarbon resin","removable":"yes","removed_with":"white spirit","gloss":"satin","mix":[{"parts":1,"material":"gloss","lot":"gloss-1"}],"at":"2026-05-30T11:00:00+03:00","panels":["KB26-0001-K"]}`,
	`{"kind":"described","title":"Low tide, evening","made":"2026","signed":"lower right, in paint: AE 26","subject":"tidal flats with two boats","panels":["KB26-0001-K"]}`,
}

// bench is a book for one test.
type bench struct {
	t      testing.TB
	book   *book.Book
	photos map[string][]byte
	now    time.Time
}

const studio = `{"kind":"studio","maker":"Ada Example","mark":"KB","place":"Riga, Latvia","link_base":"HTTPS://EXAMPLE.ORG/P/","time_zone":"Europe/Riga","paper":"a4"}`

// newBench opens a book with a studio and writes texts of entries into it.
func newBench(t testing.TB, texts ...string) *bench {
	t.Helper()
	b, err := book.Create(ctx, filepath.Join(t.TempDir(), "studio.sqlite"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	k := &bench{t, b, map[string][]byte{}, issue.Add(-time.Hour)}
	k.put(texts...)
	return k
}

// finished is a bench with the finished work on it.
func finished(t testing.TB, more ...string) *bench {
	t.Helper()
	return newBench(t, all([]string{studio}, shelf, work, more)...)
}

func all(lists ...[]string) []string {
	var out []string
	for _, l := range lists {
		out = append(out, l...)
	}
	return out
}

func (k *bench) put(texts ...string) {
	k.t.Helper()
	var es []record.Entry
	for _, s := range texts {
		e, err := accept.Parse([]byte(s))
		if err != nil {
			k.t.Fatalf("%s: %v", s, err)
		}
		es = append(es, e)
	}
	if len(es) == 0 {
		return
	}
	if _, err := k.book.Append(ctx, k.now, es...); err != nil {
		k.t.Fatal(err)
	}
}

// photo keeps a photograph of the front.
func (k *bench) photo(file []byte) {
	k.t.Helper()
	c, kind, err := image.DecodeConfig(bytes.NewReader(file))
	if err != nil {
		k.t.Fatal(err)
	}
	sum := sha256.Sum256(file)
	digest := hex.EncodeToString(sum[:])
	k.photos[digest] = file
	k.put(fmt.Sprintf(`{"kind":"photograph","role":"front","sha256":%q,"media_type":"image/%s","width_px":%d,"height_px":%d,"panels":["KB26-0001-K"]}`, digest, kind, c.Width, c.Height))
}

// key is the studio's signing key, of a fixed seed, put on record.
func (k *bench) key() *seal.Key {
	k.t.Helper()
	key, err := seal.KeyFromSeed(bytes.Repeat([]byte{7}, seal.SeedSize))
	if err != nil {
		k.t.Fatal(err)
	}
	return k.keep(key)
}

func (k *bench) keep(key seal.Key) *seal.Key {
	k.t.Helper()
	if _, err := k.book.Append(ctx, k.now, record.Entry{Body: deed.KeyMade(key.Public())}); err != nil {
		k.t.Fatal(err)
	}
	return &key
}

// input reads the panel from the book and makes its deed.
func (k *bench) input(key *seal.Key) certificate.Input {
	k.t.Helper()
	w, err := k.book.WorkshopOf(ctx, number)
	if err != nil {
		k.t.Fatal(err)
	}
	p := w.Panel(number)
	d, err := deed.Make(ctx, k.book, w, p, nil, key, issue)
	if err != nil {
		k.t.Fatal(err)
	}
	return certificate.Input{Workshop: w, Panel: p, Deed: d, Issued: issue, Paper: "a4",
		Photograph: func(ph record.Photograph) ([]byte, error) { return k.photos[ph.SHA256], nil }}
}

func drawn(t testing.TB, in certificate.Input) []byte {
	t.Helper()
	d, err := certificate.Draw(in)
	if err != nil {
		t.Fatal(err)
	}
	return d.PDF
}

// save keeps a file for outside programs; BACKLEAF_KEEP names a folder that
// keeps it to be looked at.
func save(t testing.TB, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	if dir := os.Getenv("BACKLEAF_KEEP"); dir != "" {
		if err := os.WriteFile(filepath.Join(dir, strings.ReplaceAll(t.Name(), "/", "-")+"-"+name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return path
}

// shore is a picture of an invented shore.
func shore(w, h int) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			u, v := float64(x)/float64(w), float64(y)/float64(h)
			wave := 0.02 * math.Sin(u*9) * (1 - v)
			c := color.RGBA{uint8(235 - 60*v), uint8(200 - 40*v), uint8(170 + 30*v), 255}
			if v > 0.45+wave {
				d := (v - 0.45) / 0.55
				c = color.RGBA{uint8(70 + 120*d), uint8(95 + 70*d), uint8(110 - 10*d), 255}
			}
			if v > 0.62+0.1*u+wave {
				c = color.RGBA{uint8(168 - 30*u), uint8(140 - 24*u), uint8(100 - 30*u), 255}
			}
			if dx, dy := u-0.68, v-0.5; dx*dx*3+dy*dy*60 < 0.012 {
				c = color.RGBA{60, 40, 38, 255}
			}
			img.SetRGBA(x, y, c)
		}
	}
	return img
}

func jpegFile(t testing.TB, img image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, nil); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func pngFile(t testing.TB, img image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
