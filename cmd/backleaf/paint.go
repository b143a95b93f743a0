package main

import "backleaf/record"

func newPaint(a *app) {
	var b record.PaintLayer
	act(a, "paint", &b, coating(&b.Coating), flags{"on": &b.Faces, "medium": &b.Medium, "technique": &b.Technique, "pigment": &b.Pigments,
		"underdrawing": &b.Underdrawing, "oil-content": &b.Oil, "film": &b.Film, "gloss": &b.Gloss})
}
