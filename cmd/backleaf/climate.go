package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func newClimate(a *app) *cobra.Command {
	var b record.Climate
	return onPanels(a, &cobra.Command{
		Use: "climate [" + panelWords + "]", Short: "write down temperature and humidity",
		Example: `  backleaf climate --temp "21 °C" --rh 54%
  backleaf climate batch:may --temp "68 F" --rh 60% --place "drying rack"`,
	}, "", &b, func(f *actFlags) {
		f.value(&b.Temperature, "temp", "temperature: \"21 °C\" or \"70 F\"")
		f.value(&b.Humidity, "rh", "relative humidity: 55%")
		f.text(&b.Place, "place", "where it was read")
	})
}
