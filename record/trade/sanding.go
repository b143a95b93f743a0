package trade

// CoarsestOnCloth is the grade of the P scale (ISO 6344) below which sized cloth
// is never sanded: common practice. A bare "150" of the CAMI scale is as good.
const CoarsestOnCloth = 150
