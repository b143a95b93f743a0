package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
)

const panelWords = "NUMBERS…"

func newCoat(a *app) *cobra.Command {
	var o bench
	var w coating
	var on, extra []string
	var as string
	c := &cobra.Command{
		Use: "coat " + panelWords, Short: "write down a coat on one or more faces",
		Example: `  backleaf coat batch:may --with sealer-3 --as sealer --on all --extra edges --amount "310 g"
  backleaf coat 0142-0155 --except 0147 --with "3 primer + 1 sealer" --on front --as ground --at 14:05`,
		Args: wanted(1, -1, "the panels that were coated"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.atBench(c.Context(), &o, args, func(s *benchState) ([]record.Body, string, error) {
				coat := record.Coat{}
				var err error
				if coat.Coating, err = w.read(s); err != nil {
					return nil, "", err
				}
				if coat.Faces, err = faces("--on", on); err != nil {
					return nil, "", err
				}
				if len(coat.Faces) == 0 {
					return nil, "", usage("say --on front, --on back,edges or --on all", "which faces were coated?")
				}
				if coat.Extra, err = faces("--extra", extra); err != nil {
					return nil, "", err
				}
				for _, f := range coat.Extra {
					if !slices.Contains(coat.Faces, f) {
						return nil, "", usage("", "--extra: %s was not coated", f)
					}
				}
				if coat.Purpose, err = word[record.Purpose]("--as", as, "Purpose"); err != nil {
					return nil, "", err
				}
				if coat.Purpose == "" {
					if coat.Purpose = s.shop.PurposeOf(coat.Mix); coat.Purpose == "" {
						a.talk("note: what this coat was for is not recorded; say it with --as sealer or the like, or amend the entry with --set purpose=sealer")
					}
				}
				what := orElse(string(coat.Purpose), "coat")
				if m := sayMix(coat.Mix); m != "" {
					what += ", " + m + ","
				}
				return []record.Body{coat}, what + " on " + sayFaces(coat.Faces), nil
			})
		},
	}
	o.flags(c)
	w.flags(c)
	c.Flags().StringSliceVar(&on, "on", nil, "faces: front, back, edges, all")
	c.Flags().StringSliceVar(&extra, "extra", nil, "faces that were given more")
	c.Flags().StringVar(&as, "as", "", "what the coat is for: "+strings.Join(record.Words("Purpose"), ", ")+" (default: what the material is for, if that is one thing)")
	return c
}

func newCloth(a *app) *cobra.Command {
	var o bench
	var w coating
	var on []string
	var cloth, run, oversize, wet, pressed, weighted string
	c := &cobra.Command{
		Use: "cloth " + panelWords, Short: "write down cloth laid into adhesive",
		Example: `  backleaf cloth batch:may --cloth linen-1 --with sealer-3 --amount "420 g" --threads along-grain --wet-through yes
  backleaf cloth 0142 0143 --cloth linen-1 --with sealer-3 --oversize "10 mm" --at "yesterday 15:10"`,
		Args: wanted(1, -1, "the panels that cloth was laid on"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.atBench(c.Context(), &o, args, func(s *benchState) ([]record.Body, string, error) {
				l := record.ClothLaid{}
				var err error
				if l.Coating, err = w.read(s); err != nil {
					return nil, "", err
				}
				if l.Faces, err = faces("--on", on); err != nil {
					return nil, "", err
				}
				if cloth == record.Unknown {
					l.Cloth = record.Unknown
				} else if cloth != "" {
					if l.Cloth, l.ClothLot, err = s.onShelf(record.Key(cloth)); err != nil {
						return nil, "", err
					}
				}
				if err = s.texts(text{"--oversize", oversize, &l.Oversize}, text{"--weighted", weighted, &l.Weighted}); err != nil {
					return nil, "", err
				}
				if l.Run, err = word[record.ThreadRun]("--threads", run, "ThreadRun"); err != nil {
					return nil, "", err
				}
				if l.WetThrough, err = answer("--wet-through", wet); err != nil {
					return nil, "", err
				}
				if l.EdgesPressed, err = answer("--edges-pressed", pressed); err != nil {
					return nil, "", err
				}
				what := "cloth laid"
				if k := orElse(string(l.ClothLot), string(l.Cloth)); k != "" {
					what += ", " + k
				}
				if m := sayMix(l.Mix); m != "" {
					what += " in " + m
				}
				return []record.Body{l}, what + ", on " + sayFaces(l.Faces), nil
			})
		},
	}
	o.flags(c)
	w.flags(c)
	f := c.Flags()
	f.StringSliceVar(&on, "on", []string{"front"}, "face the cloth is on")
	f.StringVar(&cloth, "cloth", "", "lot or material of the cloth")
	f.StringVar(&run, "threads", "", "warp against the board's grain: along-grain, across-grain, bias")
	f.StringVar(&oversize, "oversize", "", "allowance on each side: \"10 mm\"")
	f.StringVar(&wet, "wet-through", "", "wetted from above until saturated: yes, no, unknown")
	f.StringVar(&pressed, "edges-pressed", "", "edges pressed down: yes, no, unknown")
	f.StringVar(&weighted, "weighted", "", "time under weights: \"24 h\"")
	return c
}

func newPaint(a *app) *cobra.Command {
	var o bench
	var w coating
	var on, pigments []string
	var p record.PaintLayer
	var medium, oil, film, gloss string
	c := &cobra.Command{
		Use: "paint " + panelWords, Short: "write down a paint layer",
		Example: `  backleaf paint 0142 --medium oil --technique "thin first layer" --pigment "lead-tin yellow=PY 44" --pigment "ivory black=PBk 9"
  backleaf paint 0143 --medium acrylic --underdrawing "charcoal, fixed" --at "2026-05-09 10:00"`,
		Args: wanted(1, -1, "the panels that were painted"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.atBench(c.Context(), &o, args, func(s *benchState) ([]record.Body, string, error) {
				var err error
				if p.Coating, err = w.read(s); err != nil {
					return nil, "", err
				}
				if p.Faces, err = faces("--on", on); err != nil {
					return nil, "", err
				}
				if p.Medium, err = word[record.PaintMedium]("--medium", medium, "PaintMedium"); err != nil {
					return nil, "", err
				}
				if p.Oil, err = word[record.OilContent]("--oil-content", oil, "OilContent"); err != nil {
					return nil, "", err
				}
				if p.Film, err = word[record.Film]("--film", film, "Film"); err != nil {
					return nil, "", err
				}
				if p.Gloss, err = word[record.Gloss]("--gloss", gloss, "Gloss"); err != nil {
					return nil, "", err
				}
				p.Pigments = parsePigments(pigments)
				what := "paint layer"
				if p.Medium != "" {
					what = string(p.Medium) + " paint layer"
				}
				return []record.Body{p}, what, nil
			})
		},
	}
	o.flags(c)
	w.flags(c)
	f := c.Flags()
	f.StringSliceVar(&on, "on", nil, "faces (default front)")
	f.StringVar(&medium, "medium", "", strings.Join(record.Words("PaintMedium"), ", "))
	f.StringVar(&p.Technique, "technique", "", "how it was laid: glaze, scumble, impasto …")
	f.StringArrayVar(&pigments, "pigment", nil, "pigment, with its Colour Index name where known: \"titanium white=PW 6\"")
	f.StringVar(&p.Underdrawing, "underdrawing", "", "underdrawing below the paint")
	f.StringVar(&oil, "oil-content", "", "against the layer below: lean, same, fat")
	f.StringVar(&film, "film", "", "thin or thick")
	f.StringVar(&gloss, "gloss", "", "matt, satin, gloss")
	return c
}

func parsePigments(typed []string) []record.Pigment {
	var out []record.Pigment
	for _, t := range typed {
		name, index, _ := strings.Cut(t, "=")
		out = append(out, record.Pigment{Name: strings.TrimSpace(name), Index: strings.TrimSpace(index)})
	}
	return out
}

func newVarnish(a *app) *cobra.Command {
	var o bench
	var w coating
	var v record.Varnish
	var on []string
	var removable, gloss string
	c := &cobra.Command{
		Use: "varnish " + panelWords, Short: "write down a varnish",
		Example: `  backleaf varnish 0142 --with varnish-1 --tool "flat brush" --amount-each "6 g"
  backleaf varnish 0143 --resin "hydrocarbon resin" --removable yes --removed-with "white spirit"`,
		Args: wanted(1, -1, "the panels that were varnished"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.atBench(c.Context(), &o, args, func(s *benchState) ([]record.Body, string, error) {
				var err error
				if v.Coating, err = w.read(s); err != nil {
					return nil, "", err
				}
				if v.Faces, err = faces("--on", on); err != nil {
					return nil, "", err
				}
				if v.Removable, err = answer("--removable", removable); err != nil {
					return nil, "", err
				}
				if v.Gloss, err = word[record.Gloss]("--gloss", gloss, "Gloss"); err != nil {
					return nil, "", err
				}
				what := "varnish"
				if m := orElse(sayMix(v.Mix), v.Resin); m != "" {
					what += ", " + m
				}
				return []record.Body{v}, what, nil
			})
		},
	}
	o.flags(c)
	w.flags(c)
	f := c.Flags()
	f.StringSliceVar(&on, "on", nil, "faces (default front)")
	f.StringVar(&v.Resin, "resin", "", "class of resin")
	f.StringVar(&removable, "removable", "", "can it be taken off: yes, no, unknown")
	f.StringVar(&v.RemovedWith, "removed-with", "", "what takes it off")
	f.StringVar(&gloss, "gloss", "", "matt, satin, gloss")
	return c
}
