package page

import (
	"bytes"
	_ "embed"
	"fmt"
	"image/jpeg"

	"github.com/go-json-experiment/json"

	"backleaf/certificate/photo"
	"backleaf/record/pattern"
	"backleaf/record/seal"
	"backleaf/record/tell"
)

// Assets is the folder of assets, beside those of the panels.
const Assets = "a"

// An Asset is a file named by its digest: whoever changes it changes its name.
type Asset struct {
	Name    string // SHA-256, a dot, and what it is
	Data    []byte
	picture bool
}

func asset(ending string, data []byte) Asset {
	return Asset{Name: seal.DigestOf(data).String() + ending, Data: data}
}

func (a Asset) digest() seal.Digest { return seal.DigestOf(a.Data) }

//go:embed page.css
var style []byte

//go:embed icon.svg
var icon []byte

//go:embed check.js
var script []byte

// scriptAsset is the same for all pages of a language: it begins with its words.
func scriptAsset(c *tell.Catalogue) (Asset, error) {
	words, err := json.Marshal(c.Page.Checking, json.Deterministic(true))
	if err != nil {
		return Asset{}, err
	}
	return asset(".js", fmt.Appendf(nil, "\"use strict\";\nconst words = %s;\n%s", words, unread().ReplaceAll(script, nil))), nil
}

// unread is what a browser needs nothing of: remarks, indents and empty lines.
var unread = pattern.Of(`(?m)^ *//.*\n| // .*$|^ +|^\n`)

// widths are those of the pictures that a browser may choose from, in pixels:
// the column of text on a small and on a large screen, and twice that.
var widths = []int{480, 960, 1600}

// quality is that of the pictures on the page: no fault shows at arm's length
// (common practice).
const quality = 82

// A picture is a photograph in several sizes.
type picture struct {
	Sizes         []sized
	Alt           string
	Width, Height int
	Credit        string
}

type sized struct {
	URL   string
	Width int
}

// pictures draws a photograph upright, in sRGB, without anything else that the
// file held, in each of the widths that it has pixels for.
func pictures(file []byte, p *Page) (picture, error) {
	var out picture
	full, _, err := photo.Size(file)
	if err != nil {
		return out, err
	}
	for i, w := range widths {
		if i > 0 && widths[i-1] >= full {
			break
		}
		img, err := photo.Print(file, w, 4*w)
		if err != nil {
			return out, err
		}
		var b bytes.Buffer
		if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: quality}); err != nil {
			return out, err
		}
		size := img.Bounds().Size()
		a := asset(".jpeg", b.Bytes())
		a.picture = true
		p.Assets = append(p.Assets, a)
		out.Sizes = append(out.Sizes, sized{"../" + Assets + "/" + a.Name, size.X})
		out.Width, out.Height = size.X, size.Y
	}
	return out, nil
}
