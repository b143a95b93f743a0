package main

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/measure"
)

func newTrim(a *app) *cobra.Command {
	var o bench
	var t record.Trimmed
	var eased string
	c := &cobra.Command{
		Use: "trim " + panelWords, Short: "write down cloth trimmed flush",
		Example: `  backleaf trim batch:may --tool "fresh blade" --eased yes
  backleaf trim 0142-0155 --at 15:20`,
		Args: wanted(1, -1, "the panels that were trimmed"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.atBench(c.Context(), &o, args, func(s *benchState) ([]record.Body, string, error) {
				if bare := s.which(func(p *record.Panel) bool { return len(record.Each[record.ClothLaid](p)) == 0 }); bare != "" {
					a.talk("note: no cloth is recorded on %s", bare)
				}
				var err error
				t.Eased, err = answer("--eased", eased)
				return []record.Body{t}, "trimmed", err
			})
		},
	}
	o.flags(c)
	c.Flags().StringVar(&t.Tool, "tool", "", "blade, scissors …")
	c.Flags().StringVar(&eased, "eased", "", "edges eased with sandpaper: yes, no, unknown")
	c.Flags().StringVar(&t.Note, "note", "", "remark")
	return c
}

var gritText = regexp.MustCompile(`^([A-Za-z]*)\s*([0-9]{2,4})$`)

func newSand(a *app) *cobra.Command {
	var o bench
	var t record.Sanded
	var on []string
	var grit, wet, through, dusted string
	c := &cobra.Command{
		Use: "sand " + panelWords, Short: "write down a sanding",
		Long: `Write down a sanding. The scale belongs to the grit: P180 (ISO 6344) and CAMI 180
are not the same paper. Wear a dust mask, use extraction, and never dry-sand
anything that holds lead; local rules come first.`,
		Example: `  backleaf sand batch:may --on front --grit P180 --dusted yes
  backleaf sand 0142 --on front,edges --grit "CAMI 220" --through no`,
		Args: wanted(1, -1, "the panels that were sanded"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.atBench(c.Context(), &o, args, func(*benchState) ([]record.Body, string, error) {
				var err error
				if t.Faces, err = faces("--on", on); err != nil {
					return nil, "", err
				}
				what := "sanded " + sayFaces(t.Faces)
				if grit != "" {
					m := gritText.FindStringSubmatch(grit)
					if m == nil {
						return nil, "", usage("", "--grit %q: expected a scale and a number, like P180 or \"CAMI 180\"", grit)
					}
					if m[1] == "" {
						return nil, "", usage("look at the back of the paper: a P before the number, or none (CAMI)", "--grit %s: which scale, P or CAMI?", grit)
					}
					if t.Scale, err = word[record.GritScale]("--grit", m[1], "GritScale"); err != nil {
						return nil, "", err
					}
					t.Grit, _ = strconv.ParseInt(m[2], 10, 64)
					what += " with " + string(t.Scale) + " " + m[2]
					if t.Grit < 150 {
						a.talk("note: %s %s is coarser than 150: it may cut through to fibre or board", t.Scale, m[2])
					}
				}
				if t.Wet, err = answer("--wet", wet); err != nil {
					return nil, "", err
				}
				if t.Through, err = answer("--through", through); err != nil {
					return nil, "", err
				}
				t.Dusted, err = answer("--dusted", dusted)
				return []record.Body{t}, what, err
			})
		},
	}
	o.flags(c)
	f := c.Flags()
	f.StringSliceVar(&on, "on", []string{"front"}, "faces")
	f.StringVar(&grit, "grit", "", "scale and number: P180, \"CAMI 220\"")
	f.StringVar(&wet, "wet", "", "sanded wet: yes, no, unknown")
	f.StringVar(&through, "through", "", "sanded through to fibre or board: yes, no, unknown")
	f.StringVar(&dusted, "dusted", "", "dust taken off: yes, no, unknown")
	f.StringVar(&t.Note, "note", "", "remark")
	return c
}

func newWarm(a *app) *cobra.Command {
	var o bench
	var t record.WarmAir
	var on []string
	var long string
	c := &cobra.Command{
		Use: "warm " + panelWords, Short: "write down drying helped by warm air",
		Long: "Write down drying helped by warm air. It drives water out; it hardens nothing.",
		Example: `  backleaf warm batch:may --for "10 min"
  backleaf warm 0142 --on back --for "5 min" --at 15:00`,
		Args: wanted(1, -1, "the panels that were warmed"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.atBench(c.Context(), &o, args, func(s *benchState) ([]record.Body, string, error) {
				var err error
				if t.Faces, err = faces("--on", on); err != nil {
					return nil, "", err
				}
				return []record.Body{t}, "warm air", s.texts(text{"--for", long, &t.For})
			})
		},
	}
	o.flags(c)
	c.Flags().StringSliceVar(&on, "on", nil, "faces")
	c.Flags().StringVar(&long, "for", "", "how long: \"10 min\"")
	c.Flags().StringVar(&t.Note, "note", "", "remark")
	return c
}

func newInspect(a *app) *cobra.Command {
	var o bench
	var t record.Inspection
	var bow, span, toward, edges, adhesion string
	c := &cobra.Command{
		Use: "inspect " + panelWords, Short: "write down a look at a panel",
		Example: `  backleaf inspect 0142 --bow "1.5 mm" --span "60 cm" --hollow-to front --edges sound --adhesion sound
  backleaf inspect batch:may --adhesion sound --remarks "tapped all over"`,
		Args: wanted(1, -1, "the panels that were looked at"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.atBench(c.Context(), &o, args, func(s *benchState) ([]record.Body, string, error) {
				if err := s.texts(text{"--bow", bow, &t.Bow}, text{"--span", span, &t.Span}); err != nil {
					return nil, "", err
				}
				if !t.Bow.IsZero() && t.Span.IsZero() {
					return nil, "", usage("give the span it was measured over, like --span \"60 cm\"", "a bow means nothing without its span")
				}
				var err error
				if t.Toward, err = word[record.Toward]("--hollow-to", toward, "Toward"); err != nil {
					return nil, "", err
				}
				if t.Edges, err = word[record.Sound]("--edges", edges, "Sound"); err != nil {
					return nil, "", err
				}
				t.Adhesion, err = word[record.Sound]("--adhesion", adhesion, "Sound")
				return []record.Body{t}, "inspected", err
			})
		},
	}
	o.flags(c)
	f := c.Flags()
	f.StringVar(&bow, "bow", "", "height of the bow: \"1.5 mm\"")
	f.StringVar(&span, "span", "", "length it was measured over: \"60 cm\"")
	f.StringVar(&toward, "hollow-to", "", "front, back, flat")
	f.StringVar(&edges, "edges", "", strings.Join(record.Words("Sound"), ", "))
	f.StringVar(&adhesion, "adhesion", "", "by tapping: "+strings.Join(record.Words("Sound"), ", "))
	f.StringVar(&t.By, "by", "", "who looked")
	f.StringVar(&t.Remarks, "remarks", "", "anything else")
	return c
}

func newClimate(a *app) *cobra.Command {
	var o bench
	var t record.Climate
	var temp, rh string
	c := &cobra.Command{
		Use: "climate [" + panelWords + "]", Short: "write down temperature and humidity",
		Example: `  backleaf climate --temp "21 °C" --rh 54%
  backleaf climate batch:may --temp "68 F" --rh 60% --place "drying rack"`,
		RunE: func(c *cobra.Command, args []string) error {
			err := a.atBench(c.Context(), &o, args, func(s *benchState) ([]record.Body, string, error) {
				err := s.texts(text{"--temp", temp, &t.Temperature}, text{"--rh", rh, &t.Humidity})
				if err == nil {
					err = roomTemperature(t.Temperature)
				}
				return []record.Body{t}, strings.TrimSpace("climate " + t.Temperature.String() + " " + t.Humidity.String()), err
			})
			if err != nil {
				return err
			}
			return a.sayAir(t)
		},
	}
	o.flags(c)
	c.Flags().StringVar(&temp, "temp", "", "temperature: \"21 °C\" or \"70 F\"")
	c.Flags().StringVar(&rh, "rh", "", "relative humidity: 55%")
	c.Flags().StringVar(&t.Place, "place", "", "where it was read")
	return c
}

// sayAir says what a reading means for drying and for wood.
func (a *app) sayAir(t record.Climate) error {
	mc, ok := t.Temperature.Millicelsius()
	mp, ok2 := t.Humidity.Millipercent()
	if !ok || !ok2 {
		return nil
	}
	celsius, rh := float64(mc)/1000, float64(mp)/1000
	dew, err := measure.DewPointCelsius(celsius, rh)
	if err != nil {
		return nil // outside the range of the formula: nothing to say
	}
	deficit, err := measure.DryingDeficitHPa(celsius, rh)
	if err != nil {
		return nil
	}
	line := fmt.Sprintf("dew point %.1f °C; drying deficit %.1f hPa, an index and no hours", dew, deficit)
	if mc, err := measure.EMC(celsius, rh); err == nil {
		line += fmt.Sprintf("; wood settles near %.1f %% moisture (solid-wood estimate)", mc)
	}
	a.say("%s", line)
	return nil
}

func newNote(a *app) *cobra.Command {
	var o bench
	c := &cobra.Command{
		Use: "note [" + panelWords + "] TEXT", Short: "write down anything else",
		Example: `  backleaf note 0142 "small dent in the lower left corner, filled"
  backleaf note "new brush for the sealer from today"`,
		Args: wanted(1, -1, "the text of the note, last"),
		RunE: func(c *cobra.Command, args []string) error {
			t := record.Note{Text: args[len(args)-1]}
			return a.atBench(c.Context(), &o, args[:len(args)-1], func(*benchState) ([]record.Body, string, error) {
				return []record.Body{t}, "note", nil
			})
		},
	}
	o.flags(c)
	return c
}
