package benchpage_test

import (
	"os"
	"path/filepath"
	"testing"
)

// views are the pages of the demonstration, by the name of their picture.
var views = map[string]string{
	"today": "/", "panels": "/panels", "shelf": "/shelf", "batch": "/batch/linen", "panel": "/panel/7", "finish": "/finish/1",
	"coat": "/act/coat?batch=linen&panel=10-14&task=prime", "cloth": "/act/cloth?batch=linen&panel=10&task=lay", "cut": "/act/cut",
	"sand": "/act/sand?batch=linen&panel=10&task=sand", "inspect": "/act/inspect?panel=10", "describe": "/act/describe?panel=1",
	"handover": "/act/handover?panel=1", "certificate": "/act/certificate?panel=1", "lot": "/act/lot", "find": "/find?q=harbour", "find-panels": "/find?q=low+water", "ask": "/find?q=3+is+the+varnish+removable",
	"entry": "/entry/30", "amend": "/act/amend?entry=30", "withdraw": "/act/withdraw?entry=30&panel=10", "refused": "/panel/9999",
	"label": "/act/label?panel=1-2&batch=linen", "lot-again": "/act/lot?material=sealer&quantity=2.5+L&key=sealer-2&back=/shelf", "ask-none": "/find?q=1+who+sang",
	"sold": "/panel/3", "batch-mdf": "/batch/mdf", "later": "/panel/3?then=20",
}

// TestGallery takes a picture of every page at two sizes, light and dark, into
// the folder that BACKLEAF_SHOTS names, to be looked at.
func TestGallery(t *testing.T) {
	dir := os.Getenv("BACKLEAF_SHOTS") // with BACKLEAF_REQUIRE_TOOLS=1
	if dir == "" {
		t.Skip("BACKLEAF_SHOTS names no folder for pictures")
	}
	b := serve(t, demonstration(t))
	for _, size := range []struct {
		name          string
		width, height int64
		dark          bool
	}{{"tablet", 820, 1180, false}, {"phone", 390, 844, true}, {"tablet-dark", 820, 1180, true}, {"phone-light", 390, 844, false}} {
		p := open(t, b.url, size.width, size.height, size.dark)
		for name, path := range views {
			p.to(path)
			p.shot(filepath.Join(dir, size.name+"-"+name+".png"))
		}
		p.to("/act/note?batch=linen&panel=10&text=dry")
		p.tap("Write it down")
		p.says("Take it back")
		p.shot(filepath.Join(dir, size.name+"-written.png"))
	}
}

// demonstration makes the invented studio and returns its book.
func demonstration(t testing.TB) string {
	t.Helper()
	dir := t.TempDir()
	command(t, "", "demo", dir, "--quiet")
	return filepath.Join(dir, "studio.sqlite")
}
