package photo

import (
	"image"
	"image/draw"
)

// scaled draws the picture on white at a size of its own, not above its own
// size: each pixel is the mean of the area that it covers. It takes one row at a
// time, and whole numbers only, so that every machine gives the same bytes. Grey
// stays grey by value; paper prints equal channels as it prints grey.
func scaled(full image.Image, w, h int) *image.RGBA {
	b := full.Bounds()
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	row := image.NewRGBA(image.Rect(0, 0, b.Dx(), 1))
	columns, rows := shares(b.Dx(), w), shares(b.Dy(), h)
	across := make([]uint64, 3*w+3) // one row of the picture, narrowed
	sum := make([]uint64, 3*w+3)    // the rows that a row of the outcome covers, so far
	area := uint64(b.Dx()) * uint64(b.Dy())
	for y, r := range rows {
		draw.Draw(row, row.Rect, image.White, image.Point{}, draw.Src)
		draw.Draw(row, row.Rect, full, image.Pt(b.Min.X, b.Min.Y+y), draw.Over)
		narrow(row.Pix, columns, across)
		add(sum, across, r.first)
		if y+1 < len(rows) && rows[y+1].place == r.place {
			continue
		}
		for x := range w {
			for c := range 3 {
				out.Pix[r.place*out.Stride+4*x+c] = uint8((sum[3*x+c] + area/2) / area)
			}
			out.Pix[r.place*out.Stride+4*x+3] = 255
		}
		clear(sum)
		add(sum, across, r.second)
	}
	return out
}

// A share tells of one of n things which of fewer places it lies in, and how much
// of that place and of the next it fills: n is a whole place.
type share struct {
	place         int
	first, second uint64
}

func shares(n, places int) []share {
	out := make([]share, n)
	for i := range out {
		from, to := i*places, (i+1)*places
		place := from / n
		end := min(to, (place+1)*n)
		out[i] = share{place, uint64(end - from), uint64(to - end)}
	}
	return out
}

// narrow adds up the pixels of a row.
func narrow(pixels []byte, columns []share, into []uint64) {
	clear(into)
	for x, c := range columns {
		p := pixels[4*x : 4*x+3]
		to := into[3*c.place : 3*c.place+6]
		r, g, b := uint64(p[0]), uint64(p[1]), uint64(p[2])
		to[0] += c.first * r
		to[1] += c.first * g
		to[2] += c.first * b
		to[3] += c.second * r
		to[4] += c.second * g
		to[5] += c.second * b
	}
}

func add(to, row []uint64, share uint64) {
	for i, v := range row {
		to[i] += share * v
	}
}
