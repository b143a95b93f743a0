package trade

// LeadLaw is one law on lead in paint and whom it concerns. None of its figures
// is a property of a picture: no paper prints one, nor a legal class, from the
// names of pigments.
type LeadLaw struct {
	Code      string
	Concerns  string // a code
	Figure    string // with its unit; "" where any lead counts, or none is named
	Paintings string // a code: what it means for a painter's picture
	Rests     Standing
}

// LeadLaws lists them; texts of exemptions were not seen.
var LeadLaws = []LeadLaw{
	{Code: "us-16-cfr-1303", Concerns: "sellers-of-household-paint", Figure: "90 ppm", Paintings: "artists-paints-exempt", Rests: standing("73FR77492 memory")},
	{Code: "us-15-usc-1277", Concerns: "makers-of-art-materials", Paintings: "keep-the-label", Rests: standing("D4236 LHAMA")},
	{Code: "us-epa-hud", Concerns: "housing-before-1978", Figure: "1.0 mg/cm²", Paintings: "no-meaning", Rests: standing("lead-guides")},
	{Code: "us-osha-lead", Concerns: "employers", Figure: "50 µg/m³", Paintings: "staff-who-sand", Rests: standing("dust-levels lead-guides")},
	{Code: "ca-sor-2016-193", Concerns: "sellers", Figure: "90 mg/kg", Paintings: "as-us", Rests: standing("SOR-2005-109")},
	{Code: "eu-reach-xvii-16-17", Concerns: "anyone-who-sells-or-uses", Paintings: "restoration-may-be-allowed", Rests: standing("REACH-XVII")},
	{Code: "eu-reach-xiv", Concerns: "users-of-lead-chromates", Paintings: "industry-only", Rests: standing("REACH-XIV-notice memory")},
	{Code: "eu-reach-xvii-63", Concerns: "articles-in-mouths", Figure: "0.05 %", Paintings: "no-meaning", Rests: standing("REACH-XVII")},
	{Code: "uk-reach", Concerns: "anyone-who-sells-or-uses", Paintings: "permit-for-listed-works", Rests: standing("memory")},
	{Code: "who-model-law", Concerns: "states", Figure: "90 ppm", Paintings: "no-meaning", Rests: standing("memory")},
}
