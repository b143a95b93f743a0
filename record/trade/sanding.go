package trade

// Sanding is with what a surface is sanded, in grades of the P scale (ISO
// 6344). A bare "150" of the CAMI scale is as good as P150; "400" is not P400.
type Sanding struct {
	Coarsest   int64 // P grade that is never gone below; 0: none is named
	From, To   int64 // usual P grades
	Finest     int64 // finer polishes the face away from the next layer; 0: none is named
	Wet        bool  // usually wet
	NeverDry   bool  // its dust is toxic
	ByHandOnly bool
	Rests      Standing
}

// Surface is what is sanded.
type Surface string

// Surfaces.
const (
	SurfaceWood       Surface = "wood"         // plywood, wood, before anything; along the grain
	SurfaceFibreboard Surface = "fibreboard"   // MDF face, smooth side of hardboard: only the gloss
	SurfaceEdges      Surface = "edges"        // rounded over 0.5 to 1 mm
	SurfaceComposite  Surface = "composite"    // factory coat, not through to metal
	SurfaceCloth      Surface = "sized-cloth"  // cured
	SurfaceGround     Surface = "ground"       // acrylic ground between coats
	SurfaceLastGround Surface = "last-ground"  // last coat, for acrylic or oil
	SurfaceGesso      Surface = "glue-gesso"   //
	SurfaceOilGround  Surface = "oil-ground"   // firm only
	SurfaceLeadGround Surface = "lead-ground"  //
	SurfaceGloss      Surface = "gloss-finish" // old gloss paint, polyurethane: to full dullness
)

// sandings: common practice, but for the wet work on acrylic grounds (a
// maker's note) and the factory coat of composite.
var sandings = map[Surface]Sanding{
	SurfaceWood:       {From: 120, To: 220, Rests: standing("practice")},
	SurfaceFibreboard: {From: 180, To: 240, Rests: standing("practice MITRA-under-oil")},
	SurfaceEdges:      {From: 150, To: 220, Rests: standing("practice")},
	SurfaceComposite:  {From: 220, To: 400, Rests: standing("maker-acm practice")},
	SurfaceCloth:      {Coarsest: 150, From: 180, To: 220, ByHandOnly: true, Rests: standing("practice")},
	SurfaceGround:     {From: 220, To: 320, Wet: true, Rests: standing("maker-wet-sanding practice")},
	SurfaceLastGround: {From: 320, To: 400, Finest: 600, Wet: true, Rests: standing("practice")},
	SurfaceGesso:      {From: 180, To: 600, Rests: standing("practice")},
	SurfaceOilGround:  {From: 320, To: 400, Wet: true, Rests: standing("memory practice")},
	SurfaceLeadGround: {From: 320, To: 400, Wet: true, NeverDry: true, Rests: standing("memory practice")},
	SurfaceGloss:      {From: 240, To: 320, Rests: standing("practice")},
}

// SandingOf returns with what a surface is sanded.
func SandingOf(s Surface) (Sanding, bool) { x, ok := sandings[s]; return x, ok }
