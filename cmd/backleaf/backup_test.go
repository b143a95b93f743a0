package main

import (
	"bytes"
	"image"
	"image/png"
	"os"
	"strconv"

	"github.com/rogpeppe/go-internal/testscript"
)

// picture makes a PNG file of so many pixels: picture FILE SIDE.
func picture(ts *testscript.TestScript, _ bool, args []string) {
	side, err := strconv.Atoi(args[1])
	ts.Check(err)
	var b bytes.Buffer
	ts.Check(png.Encode(&b, image.NewGray(image.Rect(0, 0, side, side))))
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), b.Bytes(), 0o666))
}
