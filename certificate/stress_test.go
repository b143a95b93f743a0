package certificate_test

import (
	"fmt"
	"strings"
	"testing"
)

// Panels that ask much of the page. Each is drawn on both papers.
func stress() map[string]func(t testing.TB) *bench {
	long := func(word string) string { return strings.TrimSpace(strings.Repeat(word+" ", 300/(len(word)+1))) }
	described := func(fields string) string {
		return `{"kind":"described",` + fields + `,"panels":["KB26-0001-K"]}`
	}
	return map[string]func(t testing.TB) *bench{
		"longest": func(t testing.TB) *bench {
			k := newBench(t, all([]string{strings.Replace(studio, "Ada Example", long("Adelheid"), 1)}, shelf, work, []string{
				described(fmt.Sprintf(`"title":%q,"signed":%q,"inscription":%q,"distinguishing_features":%q,"subject":%q,"medium_line":%q`,
					long("Evening"), long("lower"), long("verso"), long("knot"), long("boats"), long("oil")))})...)
			k.photo(jpegFile(t, shore(800, 600)))
			return k
		},
		"one-long-word": func(t testing.TB) *bench {
			k := finished(t, described(fmt.Sprintf(`"title":%q,"subject":%q`, strings.Repeat("a", 300), strings.Repeat("W", 300))))
			k.photo(jpegFile(t, shore(600, 800)))
			return k
		},
		"sixty-layers": func(t testing.TB) *bench {
			k := finished(t)
			for i := range 30 {
				k.put(fmt.Sprintf(`{"kind":"coat","purpose":"ground","faces":["front","back"],"mix":[{"parts":1,"material":"primer"}],"at":"2026-05-%02dT10:00:00+03:00","panels":["KB26-0001-K"]}`, 1+i),
					fmt.Sprintf(`{"kind":"paint","medium":%q,"at":"2026-05-%02dT11:00:00+03:00","panels":["KB26-0001-K"]}`, []string{"oil", "acrylic", "egg-tempera"}[i%3], 1+i))
			}
			k.photo(jpegFile(t, shore(800, 600)))
			return k
		},
		"greek-and-cyrillic": func(t testing.TB) *bench {
			k := newBench(t, all([]string{strings.NewReplacer("Ada Example", "Ἀλέξανδρος Παπαδόπουλος", "Riga, Latvia", "Київ, Україна").Replace(studio)}, shelf, work, []string{
				described(`"title":"Вечір, відплив ☼ Łódź","signed":"внизу справа: Ю. Ш.","inscription":"«Θάλασσα»"`)})...)
			k.photo(jpegFile(t, shore(800, 600)))
			return k
		},
		"hostile": func(t testing.TB) *bench {
			return finished(t, described(`"title":"</text> (Tj) ET Q \\051 <script>alert(1)</script> %PDF-1.4 endobj","signed":"{\\rtf1} =1+1 \u0022quoted\u0022","inscription":"{title} {maker} %d %s"`))
		},
		"nothing-known": func(t testing.TB) *bench {
			return newBench(t, `{"kind":"studio","maker":"Ada Example","mark":"KB"}`,
				`{"kind":"cut","batch":"old","size":"unknown x unknown","at":"unknown","panels":["KB26-0001-K"]}`,
				`{"kind":"paint","panels":["KB26-0001-K"]}`)
		},
		"much-missing": func(t testing.TB) *bench {
			k := newBench(t, all([]string{studio}, shelf, []string{
				`{"kind":"cut","batch":"old","size":"8 x 10 x 1/8 in","board":"ply","at":"1998~","panels":["KB26-0001-K"]}`,
				`{"kind":"coat","purpose":"size","faces":["front"],"panels":["KB26-0001-K"]}`,
				`{"kind":"coat","purpose":"ground","faces":["front"],"mix":[{"parts":1,"material":"primer"},{"parts":2,"material":"sealer"}],"panels":["KB26-0001-K"]}`,
				`{"kind":"cloth","faces":["front"],"panels":["KB26-0001-K"]}`,
				`{"kind":"paint","medium":"unknown","at":"1999/2001","panels":["KB26-0001-K"]}`,
				`{"kind":"varnish","at":"unknown","panels":["KB26-0001-K"]}`,
				described(`"title":"unknown","made":"unknown"`)})...)
			k.photo(jpegFile(t, shore(500, 500)))
			return k
		},
		"tall": func(t testing.TB) *bench { k := finished(t); k.photo(jpegFile(t, shore(300, 1500))); return k },
		"flat": func(t testing.TB) *bench { k := finished(t); k.photo(jpegFile(t, shore(2000, 200))); return k },
		"tiny": func(t testing.TB) *bench { k := finished(t); k.photo(pngFile(t, shore(1, 1))); return k },
	}
}
