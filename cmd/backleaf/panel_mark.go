package main

import "backleaf/record"

func panelMark(a *app) {
	b := record.Feature{Face: record.Front}
	act(a, "panel mark", &b, flags{"what": needed{&b.What}, "on": &b.Face, "left": &b.Left, "top": &b.Top, "size": &b.Size, "note": &b.Note})
}
