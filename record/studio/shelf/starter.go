// Package shelf is the materials and lots of a studio, and where they went.
package shelf

import "backleaf/record"

// typical marks every value of the starter shelf for what it is.
const typical = "typical, common practice"

// Starter is a shelf of generic materials with typical values. They save
// typing; they are no one's data sheet.
func Starter() []record.Material {
	return []record.Material{
		board("birch-ply-3mm", "birch plywood, thin", record.Board{Kind: record.Plywood, Species: "birch", Plies: 3, Thickness: length("3 mm"), Density: density("680 kg/m3")}),
		board("birch-ply-6mm", "birch plywood", record.Board{Kind: record.Plywood, Species: "birch", Plies: 5, Thickness: length("6.5 mm"), Density: density("670 kg/m3")}),
		board("mdf-3mm", "MDF, thin", record.Board{Kind: record.MDF, Thickness: length("3 mm"), Density: density("800 kg/m3")}),
		board("mdf-6mm", "MDF", record.Board{Kind: record.MDF, Thickness: length("6 mm"), Density: density("750 kg/m3")}),
		board("hardboard-3mm", "hardboard, standard", record.Board{Kind: record.Hardboard, Thickness: length("3.2 mm"), Density: density("950 kg/m3")}),
		board("tempered-hardboard-3mm", "hardboard, tempered", record.Board{Kind: record.TemperedHardboard, Thickness: length("3.2 mm"), Density: density("1000 kg/m3")}),
		cloth("linen-fine", "linen, fine", record.Cloth{Fibre: "linen", Weave: "plain", Warp: threads("18 /cm"), Weft: threads("18 /cm"), Mass: weight("180 g/m2")}),
		cloth("linen-medium", "linen, medium", record.Cloth{Fibre: "linen", Weave: "plain", Warp: threads("13 /cm"), Weft: threads("12 /cm"), Mass: weight("240 g/m2")}),
		cloth("cotton-duck", "cotton duck", record.Cloth{Fibre: "cotton", Weave: "basket", Warp: threads("20 /cm"), Weft: threads("14 /cm"), Mass: weight("340 g/m2")}),
		{Key: "acrylic-sealer", Name: "acrylic dispersion sealer and adhesive", Uses: []record.Use{"sealer", "adhesive", "size"},
			Binder: record.Acrylic, Waterborne: record.Yes, SolidsMass: percent("45 %"), SolidsVolume: percent("42 %"), Density: density("1.04 g/mL"),
			TouchDryFrom: lasts("20 min"), TouchDryTo: lasts("30 min"), CureFrom: lasts("24 h"), CureTo: lasts("36 h"), MinFilm: degrees("10 °C"),
			Thinner: "water", Removable: record.No, Hazard: "Preservatives can sensitise skin: wear gloves.", Basis: typical},
		{Key: "acrylic-medium", Name: "acrylic gloss medium", Uses: []record.Use{"stain-block", "isolation", "medium"},
			Binder: record.Acrylic, Waterborne: record.Yes, SolidsMass: percent("46 %"), SolidsVolume: percent("43 %"), Density: density("1.04 g/mL"), Gloss: "gloss",
			TouchDryFrom: lasts("20 min"), TouchDryTo: lasts("60 min"), CureFrom: lasts("24 h"), CureTo: lasts("72 h"), MinFilm: degrees("10 °C"),
			Thinner: "water", Removable: record.No, Hazard: "Preservatives can sensitise skin: wear gloves.", Basis: typical},
		{Key: "acrylic-ground", Name: "acrylic dispersion ground, white", Uses: []record.Use{"ground"},
			Binder: record.Acrylic, Waterborne: record.Yes, SolidsMass: percent("55 %"), SolidsVolume: percent("38 %"), Density: density("1.35 g/mL"), Gloss: "matt",
			TouchDryFrom: lasts("30 min"), TouchDryTo: lasts("2 h"), CureFrom: lasts("24 h"), CureTo: lasts("72 h"), MinFilm: degrees("10 °C"),
			Thinner: "water", Removable: record.No, Pigments: []record.Pigment{{Name: "titanium white", Index: "PW 6"}, {Name: "chalk", Index: "PW 18"}},
			Hazard: "Sanding dust: wear a mask, use extraction.", Basis: typical},
		{Key: "pva-size", Name: "PVA dispersion size, pH neutral", Uses: []record.Use{"size", "adhesive"},
			Binder: record.PVA, Waterborne: record.Yes, SolidsMass: percent("25 %"), Density: density("1.03 g/mL"),
			TouchDryFrom: lasts("30 min"), TouchDryTo: lasts("60 min"), CureFrom: lasts("24 h"), CureTo: lasts("48 h"), MinFilm: degrees("10 °C"), Thinner: "water", Basis: typical},
		{Key: "hide-glue", Name: "animal glue size", Uses: []record.Use{"size", "adhesive"},
			Binder: record.AnimalGlue, Waterborne: record.Yes, SolidsMass: percent("7 %"), Density: density("1.01 g/mL"),
			TouchDryFrom: lasts("1 h"), TouchDryTo: lasts("3 h"), CureFrom: lasts("12 h"), CureTo: lasts("24 h"), Thinner: "water",
			Removable: record.Yes, RemovedWith: "warm water", Basis: typical},
		{Key: "oil-ground", Name: "oil ground, titanium white", Uses: []record.Use{"ground"},
			Binder: record.DryingOil, Waterborne: record.No, SolidsVolume: percent("85 %"), Density: density("1.7 g/mL"),
			TouchDryFrom: lasts("2 d"), TouchDryTo: lasts("7 d"), CureFrom: lasts("6 months"), CureTo: lasts("12 months"), Thinner: "white spirit",
			Pigments: []record.Pigment{{Name: "titanium white", Index: "PW 6"}}, Hazard: "Solvent: ventilate. Oily rags can catch fire by themselves: spread flat or keep under water in a lidded metal can.", Basis: typical},
		{Key: "shellac-barrier", Name: "pigmented shellac", Uses: []record.Use{"sealer"},
			Binder: record.Shellac, Waterborne: record.No, SolidsVolume: percent("30 %"), Density: density("1.1 g/mL"),
			TouchDryFrom: lasts("15 min"), TouchDryTo: lasts("45 min"), CureFrom: lasts("3 h"), CureTo: lasts("24 h"), Thinner: "ethanol",
			Hazard: "Flammable: no flame, ventilate.", Basis: typical},
		{Key: "hydrocarbon-varnish", Name: "hydrocarbon resin varnish", Uses: []record.Use{"varnish"},
			Binder: "hydrocarbon-resin", Resin: "hydrocarbon resin", Waterborne: record.No, SolidsVolume: percent("25 %"), Density: density("0.87 g/mL"), Gloss: "gloss",
			TouchDryFrom: lasts("1 h"), TouchDryTo: lasts("6 h"), CureFrom: lasts("1 d"), CureTo: lasts("3 d"), Thinner: "white spirit",
			Removable: record.Yes, RemovedWith: "white spirit", Hazard: "Solvent: ventilate, wear gloves, lid on.", Basis: typical},
		{Key: "acrylic-resin-varnish", Name: "acrylic resin varnish, in solvent", Uses: []record.Use{"varnish"},
			Binder: "acrylic-resin", Resin: "acrylic resin", Waterborne: record.No, SolidsVolume: percent("22 %"), Density: density("0.88 g/mL"), Gloss: "satin",
			TouchDryFrom: lasts("1 h"), TouchDryTo: lasts("6 h"), CureFrom: lasts("1 d"), CureTo: lasts("3 d"), Thinner: "white spirit",
			Removable: record.Yes, RemovedWith: "white spirit with some aromatics", Hazard: "Solvent: ventilate, wear gloves, lid on.", Basis: typical},
	}
}

func board(k record.Key, name string, b record.Board) record.Material {
	return record.Material{Key: k, Name: name, Uses: []record.Use{"board"}, Board: b, Basis: typical,
		Hazard: "Sawing and sanding dust: wear a mask, use extraction."}
}

func cloth(k record.Key, name string, c record.Cloth) record.Material {
	return record.Material{Key: k, Name: name, Uses: []record.Use{"cloth"}, Cloth: c, Basis: typical}
}

// must reads a value written in this file.
func must[T any, P interface {
	*T
	UnmarshalText([]byte) error
}](s string) (v T) {
	if err := P(&v).UnmarshalText([]byte(s)); err != nil {
		panic(err)
	}
	return v
}

func length(s string) record.Length       { return must[record.Length](s) }
func density(s string) record.Density     { return must[record.Density](s) }
func percent(s string) record.Percent     { return must[record.Percent](s) }
func lasts(s string) record.Duration      { return must[record.Duration](s) }
func degrees(s string) record.Temperature { return must[record.Temperature](s) }
func threads(s string) record.ThreadCount { return must[record.ThreadCount](s) }
func weight(s string) record.MassPerArea  { return must[record.MassPerArea](s) }
