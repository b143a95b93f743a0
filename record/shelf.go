package record

import "backleaf/record/pattern"

// Key names a material, a lot or a batch within one book: lower-case letters,
// digits, points and hyphens, e.g. "sealer-3".
type Key string

var keyShape = pattern.Of(`^[a-z0-9][a-z0-9.-]{0,39}$`)

// WellFormed reports that k has the form of a key.
func (k Key) WellFormed() bool { return keyShape().MatchString(string(k)) }

// Material is a product, bought or made: what a lot is a lot of.
type Material struct {
	Key        Key    `json:"key"`
	Name       string `json:"name"`              // as on the tin
	Uses       []Use  `json:"uses"`              // one product may serve several
	Maker      string `json:"producer,omitzero"` // who makes the product
	Basis      string `json:"basis,omitzero"`    // where its values come from, e.g. "typical, common practice" or a data sheet and its date
	BasisIs    Basis  `json:"basis_kind,omitzero"`
	Binder     Binder `json:"binder,omitzero"`
	Waterborne Answer `json:"waterborne,omitzero"`

	SolidsMass   Percent     `json:"solids_by_mass,omitzero"`
	SolidsVolume Percent     `json:"solids_by_volume,omitzero"`
	Density      Density     `json:"density,omitzero"`
	TouchDryFrom Duration    `json:"touch_dry_from,omitzero"`
	TouchDryTo   Duration    `json:"touch_dry_to,omitzero"`
	CureFrom     Duration    `json:"cure_from,omitzero"`
	CureTo       Duration    `json:"cure_to,omitzero"`
	MinFilm      Temperature `json:"film_forms_above,omitzero"` // lowest temperature at which a film forms
	Thinner      string      `json:"thinner,omitzero"`
	ThinnerIs    Solvent     `json:"thinner_kind,omitzero"`
	Removable    Answer      `json:"removable,omitzero"`
	RemovedWith  string      `json:"removed_with,omitzero"`
	RemoverIs    Solvent     `json:"removed_with_kind,omitzero"`
	Resin        string      `json:"resin,omitzero"` // resin class of a varnish
	ResinIs      Resin       `json:"resin_kind,omitzero"`
	Gloss        Gloss       `json:"gloss,omitzero"`
	Pigments     []Pigment   `json:"pigments,omitzero"`
	Hazard       string      `json:"hazard,omitzero" is:"text"` // hazard text as on the sheet or tin
	Toxic        Answer      `json:"toxic_dry,omitzero"`        // harmful when sanded or cleaned later (lead, cadmium …)

	Board Board `json:"board,omitzero"`
	Cloth Cloth `json:"cloth,omitzero"`
}

// Board is what a sheet is.
type Board struct {
	Kind         BoardKind `json:"kind,omitzero"`
	Species      string    `json:"species,omitzero"` // of wood or veneer
	Wood         Species   `json:"species_kind,omitzero"`
	Plies        int64     `json:"plies,omitzero"`
	Thickness    Length    `json:"thickness,omitzero"`
	CoreVeneer   Length    `json:"core_veneer,omitzero"` // thickness of one inner veneer of plywood
	Density      Density   `json:"density,omitzero"`
	Formaldehyde string    `json:"formaldehyde_class,omitzero"` // as printed on the sheet: "E1", "TSCA Title VI", "F****", "none added"
}

// Cloth is what a bolt is.
type Cloth struct {
	Fibre Fibre       `json:"fibre,omitzero"`
	Weave Weave       `json:"weave,omitzero"`
	Warp  ThreadCount `json:"warp,omitzero"`
	Weft  ThreadCount `json:"weft,omitzero"`
	Mass  MassPerArea `json:"mass,omitzero"`
	Width Length      `json:"width,omitzero"`
	Sized Answer      `json:"sized,omitzero"` // came sized or primed
}

// Lot is one tin, bolt or sheet of a material. When it came in is the entry's
// own date. Its price is private and stands outside the journal.
type Lot struct {
	Key      Key     `json:"key"`
	Material Key     `json:"material" ref:"material"`
	As       []int64 `json:"material_as,omitzero"`  // see Part.As
	MakerLot string  `json:"producer_lot,omitzero"` // the number on the tin
	Supplier string  `json:"supplier,omitzero"`
	Quantity Amount  `json:"quantity,omitzero"`
	Sheet    Size    `json:"sheet,omitzero"`                           // size of one sheet, of a board
	Offcut   Key     `json:"offcut_of,omitzero" ref:"lot of material"` // lot of which it is what was left
	Expires  When    `json:"expires,omitzero"`
	Opened   When    `json:"opened,omitzero"`
	Private  string  `json:"private_sha256,omitzero" is:"sha256"` // salted digest of the price
	Note     string  `json:"note,omitzero" is:"text"`
}

// Pigment is a colourant, by Colour Index generic name where known ("PW 6").
type Pigment struct {
	Name  string `json:"name"`
	Index string `json:"colour_index,omitzero"`
}

func (Material) Kind() Kind { return "material" }
func (Lot) Kind() Kind      { return "lot" }
