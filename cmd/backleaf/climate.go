package main

import "backleaf/record"

func newClimate(a *app) {
	var b record.Climate
	act(a, "climate", &b, flags{"temp": &b.Temperature, "rh": &b.Humidity, "place": &b.Place})
}
