package benchpage_test

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
	"math/rand/v2"
	"mime/multipart"
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	xdraw "golang.org/x/image/draw"
	"golang.org/x/image/math/f64"

	"backleaf/record"
	"backleaf/record/studio/kept"
	"backleaf/record/toolcheck"
)

// sendPicture sends a picture as a form does.
func (p *place) sendPicture(path string, picture []byte, fields url.Values) (status int, to, body string) {
	p.Helper()
	var b bytes.Buffer
	m := multipart.NewWriter(&b)
	w, err := m.CreateFormFile("picture", "../../photo.jpg")
	if err == nil {
		_, err = w.Write(picture)
	}
	for k := range fields {
		err = m.WriteField(k, fields.Get(k))
	}
	if err != nil || m.Close() != nil {
		p.Fatal(err)
	}
	r, err := client().Post(p.url+path, m.FormDataContentType(), &b)
	status, body = p.answer(r, err)
	return status, r.Header.Get("Location"), body
}

func asJPEG(t testing.TB, img image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: 80}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// A label photographed by a person, turned, blurred and dim, opens its panel.
// The label is the one that is printed, rendered by another program.
func TestScan(t *testing.T) {
	toolcheck.Require(t, "pdftoppm")
	p := in(t, 3, nil)
	_, pdf := p.get("/preview/label?panel=2")
	dir := t.TempDir()
	file := filepath.Join(dir, "label.pdf")
	if err := os.WriteFile(file, []byte(pdf), 0o644); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("pdftoppm", "-r", "300", "-W", "1500", "-H", "1300", "-png", "-singlefile", file, filepath.Join(dir, "label")).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	f, err := os.Open(filepath.Join(dir, "label.png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	page, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name        string
		turn, size  float64
		blur        int
		dark, light float64
		noise       float64
	}{
		{"straight", 0, 1, 0, 0, 255, 0},
		{"turned a little", 7, 0.8, 0, 20, 235, 4},
		{"upside down", 180, 0.7, 1, 20, 235, 4},
		{"on its side, blurred", 93, 0.8, 2, 30, 220, 6},
		{"dim", -12, 0.8, 1, 10, 70, 3},
		{"pale", 20, 0.8, 1, 120, 215, 4},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.name != "turned a little" {
				toolcheck.Long(t)
			}
			status, to, body := p.sendPicture("/scan", asJPEG(t, photographed(page, c.turn, c.size, c.blur, c.dark, c.light, c.noise)), nil)
			if status != http.StatusSeeOther || to != "/panel/MR26-0002-Q" {
				t.Errorf("%d %q\n%.1500s", status, to, body)
			}
		})
	}
	if status, _, body := p.sendPicture("/scan", asJPEG(t, image.NewGray(image.Rect(0, 0, 400, 300))), nil); status != http.StatusUnprocessableEntity || !strings.Contains(body, "no label") && !strings.Contains(body, "No label") {
		t.Errorf("a picture without a label: %d", status)
	}
}

// photographed is a page as a camera sees it.
func photographed(page image.Image, turn, size float64, blur int, dark, light, noise float64) image.Image {
	b := page.Bounds()
	side := int(math.Hypot(float64(b.Dx()), float64(b.Dy())) * size)
	out := image.NewGray(image.Rect(0, 0, side, side))
	for i := range out.Pix {
		out.Pix[i] = 200
	}
	s, c := math.Sincos(turn * math.Pi / 180)
	cx, cy := float64(b.Dx())/2, float64(b.Dy())/2
	half := float64(side) / 2
	xdraw.BiLinear.Transform(out, f64.Aff3{size * c, -size * s, half - size*(c*cx-s*cy), size * s, size * c, half - size*(s*cx+c*cy)}, page, b, xdraw.Over, nil)
	r := rand.New(rand.NewPCG(1, 2))
	from := out
	for range blur {
		from, out = out, image.NewGray(out.Rect)
		for y := 1; y < side-1; y++ {
			for x := 1; x < side-1; x++ {
				sum := 0
				for dy := -1; dy <= 1; dy++ {
					for dx := -1; dx <= 1; dx++ {
						sum += int(from.GrayAt(x+dx, y+dy).Y)
					}
				}
				out.SetGray(x, y, color.Gray{uint8(sum / 9)})
			}
		}
	}
	for i, v := range out.Pix {
		out.Pix[i] = uint8(min(255, max(0, dark+(light-dark)*float64(v)/255+noise*r.NormFloat64())))
	}
	return out
}

// A photograph is kept once, under its digest and no other name, without the
// place it was taken; what is no picture is refused.
func TestPhotograph(t *testing.T) {
	p := in(t, 3, nil)
	before := p.size()
	picture := asJPEG(t, image.NewGray(image.Rect(0, 0, 640, 480)))
	fields := url.Values{"role": {"front"}, "token": {"one-picture"}, "caption": {"<i>x</i>"}}
	for range 2 {
		if status, to, body := p.sendPicture("/panel/1/keep", picture, fields); status != http.StatusSeeOther || !strings.HasPrefix(to, "/panel/MR26-0001-F") {
			t.Fatalf("%d %q %.800s", status, to, body)
		}
	}
	if p.size() != before+1 {
		t.Errorf("%d entries", p.size()-before)
	}
	w, err := p.session.Book.Workshop(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	ph, ok := record.Latest[record.Photograph](w.Panels[0])
	if data, err := kept.Read(p.session.Book.Path(), kept.Photograph(ph.Body)); !ok || err != nil || !bytes.Equal(data, picture) {
		t.Errorf("what is kept: %v", err)
	}
	if status, _ := p.get("/photograph/" + ph.Body.SHA256); status != http.StatusOK {
		t.Errorf("it is not shown: %d", status)
	}
	if status, _, _ := p.sendPicture("/panel/1/keep", []byte("<svg/>"), url.Values{"role": {"front"}, "token": {"two"}}); status != http.StatusUnprocessableEntity || p.size() != before+1 {
		t.Errorf("no picture: %d", status)
	}
}
