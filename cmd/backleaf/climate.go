package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/typed"
)

func newClimate(a *app) *cobra.Command {
	var o moment
	var t record.Climate
	var temp, rh string
	c := &cobra.Command{
		Use: "climate [" + panelWords + "]", Short: "write down temperature and humidity",
		Example: `  backleaf climate --temp "21 °C" --rh 54%
  backleaf climate batch:may --temp "68 F" --rh 60% --place "drying rack"`,
		RunE: func(c *cobra.Command, args []string) error {
			err := act(a, c.Context(), &o, args, func(r *typed.Reader) record.Climate {
				r.Text("temp", temp, &t.Temperature)
				r.Text("rh", rh, &t.Humidity)
				return t
			})
			if err == nil {
				a.sayAir(t)
			}
			return err
		},
	}
	o.flags(c)
	c.Flags().StringVar(&temp, "temp", "", "temperature: \"21 °C\" or \"70 F\"")
	c.Flags().StringVar(&rh, "rh", "", "relative humidity: 55%")
	c.Flags().StringVar(&t.Place, "place", "", "where it was read")
	return c
}

// sayAir says what a reading means for drying and for wood.
func (a *app) sayAir(t record.Climate) {
	air, ok := bench.AirOf(t)
	if !ok {
		return
	}
	wood := record.Figure("")
	if air.WoodKnown {
		wood = record.Figure(fmt.Sprintf("%.1f %%", air.WoodPercent))
	}
	a.told("air", record.With("dew", record.Figure(fmt.Sprintf("%.1f °C", air.DewPointCelsius))),
		record.With("deficit", record.Figure(fmt.Sprintf("%.1f hPa", air.DeficitHPa))), record.With("wood", wood))
}
