package demo

import (
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
)

// Pictures paints the pictures of the demonstration: the work, and its
// weave from close by. They are made here and show no real work.
func Pictures(dir string) error {
	if err := os.MkdirAll(filepath.Join(dir, "pictures"), 0o755); err != nil {
		return err
	}
	for name, img := range map[string]image.Image{"low-water.jpg": paintLowWater(1600, 1200), "weave.jpg": paintWeave(900, 900)} {
		f, err := os.Create(filepath.Join(dir, "pictures", name))
		if err != nil {
			return err
		}
		if err := jpeg.Encode(f, img, &jpeg.Options{Quality: 90}); err != nil {
			f.Close()
			return err
		}
		if err := f.Close(); err != nil {
			return err
		}
	}
	return nil
}

type rgb struct{ r, g, b float64 }

func (a rgb) mix(b rgb, t float64) rgb {
	t = min(max(t, 0), 1)
	return rgb{a.r + (b.r-a.r)*t, a.g + (b.g-a.g)*t, a.b + (b.b-a.b)*t}
}

// paintLowWater is an estuary at low water under an evening sky.
func paintLowWater(w, h int) image.Image {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	n := noise(7)
	horizon := 0.46
	for y := range h {
		for x := range w {
			u, v := float64(x)/float64(w), float64(y)/float64(h)
			var c rgb
			if v < horizon {
				t := v / horizon
				c = rgb{92, 116, 140}.mix(rgb{226, 196, 158}, math.Pow(t, 1.7))
				cloud := n(u*3.2, v*9) + 0.5*n(u*9, v*22)
				c = c.mix(rgb{243, 226, 201}, 0.55*max(cloud, 0)*(1-t*0.4))
				c = c.mix(rgb{96, 104, 118}, 0.5*max(-cloud-0.15, 0))
				glow := math.Exp(-((u-0.68)*(u-0.68)/0.02 + (v-horizon+0.03)*(v-horizon+0.03)/0.004))
				c = c.mix(rgb{252, 224, 170}, 0.8*glow)
				land := 1 - math.Pow(u/0.62, 5)
				if rise := (0.034 + 0.016*n(u*2.5+4, 0.3) + 0.008*n(u*11, 1.3)) * max(land, 0); v > horizon-rise {
					c = rgb{72, 82, 92}.mix(rgb{112, 112, 116}, u)
				}
			} else {
				t := (v - horizon) / (1 - horizon)
				water := rgb{196, 178, 152}.mix(rgb{88, 98, 104}, math.Pow(t, 0.7))
				ripple := n(u*5/(0.15+t), 60*math.Sqrt(t))
				water = water.mix(rgb{238, 214, 172}, 0.45*max(ripple, 0)*math.Exp(-(u-0.68)*(u-0.68)/(0.01+0.08*t)))
				mud := n(u*2.2+0.6*t, t*7+3) + 0.35*n(u*14, t*40)
				c = water
				if bank := mud + 0.9*t - 0.35*math.Sin(u*3.3+t*4); bank > 0.42 {
					c = rgb{104, 88, 72}.mix(rgb{62, 54, 48}, t).mix(rgb{150, 134, 110}, 0.5*max(n(u*40, t*120), 0))
				}
			}
			// Brush and canvas.
			s := 6*n(u*70+v*9, v*260) + 3.2*weave(x, y, 4.3)
			img.Set(x, y, shade(c, s))
		}
	}
	drawBoat(img, w, h)
	return img
}

// drawBoat sets two moored hulls with their masts on the mud.
func drawBoat(img *image.RGBA, w, h int) {
	hull := func(cx, cy, size float64, dark rgb) {
		for y := range h {
			for x := range w {
				u, v := (float64(x)/float64(w)-cx)/size, (float64(y)/float64(h)-cy)/size
				depth := 0.28 * (1 - u*u)
				inHull := math.Abs(u) < 1 && v > -0.06-0.12*u*u*u && v < depth-0.02
				mast := math.Abs(u-0.1-0.04*v) < 0.018 && v < 0 && v > -1.9
				if inHull || mast {
					c := dark
					if inHull && v < 0.02 {
						c = dark.mix(rgb{214, 196, 166}, 0.6)
					}
					img.Set(x, y, shade(c, 5*weave(x, y, 4.3)))
				}
			}
		}
	}
	hull(0.27, 0.57, 0.085, rgb{52, 58, 66})
	hull(0.44, 0.515, 0.045, rgb{84, 70, 62})
}

// paintWeave is bare cloth from close by.
func paintWeave(w, h int) image.Image {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	n := noise(11)
	for y := range h {
		for x := range w {
			u, v := float64(x)/float64(w), float64(y)/float64(h)
			s := 26*weave(x, y, 36) + 9*n(u*60, v*6) + 9*n(u*6, v*60)
			img.Set(x, y, shade(rgb{196, 180, 152}, s))
		}
	}
	return img
}

// weave is the relief of a plain weave, -1 to 1, with threads of the given
// width in pixels.
func weave(x, y int, thread float64) float64 {
	i, j := math.Floor(float64(x)/thread), math.Floor(float64(y)/thread)
	over := math.Mod(i+j, 2) == 0
	a, b := math.Sin(math.Pi*math.Mod(float64(x), thread)/thread), math.Sin(math.Pi*math.Mod(float64(y), thread)/thread)
	if over {
		return a*0.9 + b*0.35 - 0.55
	}
	return b*0.9 + a*0.35 - 0.65
}

func shade(c rgb, s float64) color.RGBA {
	f := func(v float64) uint8 { return uint8(min(max(v+s, 0), 255)) }
	return color.RGBA{f(c.r), f(c.g), f(c.b), 255}
}

// noise returns smooth noise between about -1 and 1, the same for a seed.
func noise(seed uint64) func(x, y float64) float64 {
	r := rand.New(rand.NewPCG(seed, seed))
	var grid [64][64]float64
	for i := range grid {
		for j := range grid[i] {
			grid[i][j] = 2*r.Float64() - 1
		}
	}
	at := func(i, j int) float64 { return grid[((i%64)+64)%64][((j%64)+64)%64] }
	return func(x, y float64) float64 {
		i, j := int(math.Floor(x)), int(math.Floor(y))
		fx, fy := x-math.Floor(x), y-math.Floor(y)
		fx, fy = fx*fx*(3-2*fx), fy*fy*(3-2*fy)
		top := at(i, j)*(1-fx) + at(i+1, j)*fx
		low := at(i, j+1)*(1-fx) + at(i+1, j+1)*fx
		return top*(1-fy) + low*fy
	}
}
