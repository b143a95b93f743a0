package benchpage

import (
	"bytes"
	"errors"
	"image/jpeg"
	"io"
	"net/http"
	"sync"

	"backleaf/certificate/photo"
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
	"backleaf/record/studio/verify"
)

// decoding lets one picture be decoded at a time: each may take much memory.
var decoding sync.Mutex

// upload reads the one picture of a form.
func (d *desk) upload() ([]byte, error) {
	if err := d.r.ParseMultipartForm(1 << 20); err != nil {
		return nil, refuse.Unclearly("form-not-read", "the picture cannot be read: %w", err)
	}
	defer d.r.MultipartForm.RemoveAll()
	f, _, err := d.r.FormFile("picture")
	if errors.Is(err, http.ErrMissingFile) {
		return nil, refuse.Unclearly("page-no-picture", "no picture was taken")
	} else if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, photo.MaxBytes))
}

// keep keeps a photograph with a panel, without where it was taken.
func (d *desk) keep() error {
	if d.ReadOnly {
		return refuse.Cannot("page-read-only", "this page is only for reading")
	}
	data, err := d.upload()
	if err != nil {
		return err
	}
	decoding.Lock()
	defer decoding.Unlock()
	v, err := d.Studio.Look(d.ctx, []string{d.r.PathValue("panel")}, nil)
	if err != nil {
		return err
	}
	r := typed.For(v)
	p := record.Photograph{Caption: d.r.FormValue("caption")}
	typed.Word(r, "role", d.r.FormValue("role"), &p.Role)
	if r.Err() != nil {
		return r.Err()
	}
	if data, _, err = kept.Picture(d.say("page-the-picture"), data, &p, false); err != nil {
		return err
	}
	token := d.r.FormValue("token")
	_, err = bench.Photograph(book.Once(d.ctx, token), v, r.At(""), p, data)
	if _, ok := errors.AsType[*book.Posted](err); err != nil && !ok {
		return err
	}
	http.Redirect(d.w, d.r, "/panel/"+string(v.Panels[0])+"?w="+token, http.StatusSeeOther)
	return nil
}

// photograph shows a kept photograph, no larger than a tablet shows it.
func (d *desk) photograph() error {
	f, ok := kept.Find(d.shop, func(f kept.File) bool { return f.Folder == kept.Photographs && f.SHA256 == d.r.PathValue("sum") })
	if !ok {
		return noPage("there is no such photograph")
	}
	data, err := kept.Read(d.Studio.Book.Path(), f)
	if err != nil {
		return err
	}
	decoding.Lock()
	img, err := photo.Print(data, 1200, 1200)
	decoding.Unlock()
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: 85}); err != nil {
		return err
	}
	d.w.Header().Set("Content-Type", "image/jpeg")
	d.w.Header().Set("Cache-Control", "private, max-age=86400, immutable") // its address is its digest
	_, err = d.w.Write(b.Bytes())
	return err
}

// scan finds the panel whose label was photographed.
func (d *desk) scan() error {
	data, err := d.upload()
	if err != nil {
		return err
	}
	decoding.Lock()
	defer decoding.Unlock()
	img, err := photo.Print(data, 2000, 2000)
	if err != nil {
		return refuse.Because("no-picture", err)
	}
	for _, text := range symbols(img) {
		if n, err := d.roll().Find(verify.Typed(text)); err == nil {
			http.Redirect(d.w, d.r, "/panel/"+string(n), http.StatusSeeOther)
			return nil
		}
	}
	return refuse.Cannot("page-no-symbol", "no label of this studio can be read in the picture")
}
