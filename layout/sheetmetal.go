package layout

import (
	"strconv"

	"centrepop/layout/develop"
	"centrepop/parts"
)

// cone makes the flat blank of a rolled cone: an exact sector, or a
// triangulated pattern where the ends are not on one axis. It is cut in gores
// where the stock sheet is too small for one piece.
func (r *resolver) cone(f *parts.Frustum) {
	measured := develop.Outside
	if f.Inside {
		measured = develop.Inside
	}
	sheetW, sheetH := f.SheetWidth.Mm, f.SheetHeight.Mm
	if f.Offset.Mm > 0 {
		p, err := develop.Oblique{
			BaseDiameterMm: f.Large.Mm, TopDiameterMm: f.Small.Mm, Measured: measured, HeightMm: f.Height.Mm,
			OffsetTopMm: f.Offset.Mm, ThicknessMm: f.Thickness.Mm, OverlapMm: f.Overlap.Mm, SeamDeg: f.Seam.Deg,
			Divisions: 24, SheetWidthMm: sheetW, SheetHeightMm: sheetH,
		}.Develop()
		if err != nil {
			r.fault(f.Pos, "the cone cannot be developed: "+patternFault(err), "other sizes, or a larger sheet")
			return
		}
		r.pieces("cone", ConePattern, "Leaning cone", p.Pieces, f.Seam.Deg)
		return
	}
	p, err := develop.Frustum{
		LargeDiameterMm: f.Large.Mm, SmallDiameterMm: f.Small.Mm, Measured: measured, HeightMm: f.Height.Mm,
		ThicknessMm: f.Thickness.Mm, OverlapMm: f.Overlap.Mm, SheetWidthMm: sheetW, SheetHeightMm: sheetH,
	}.Develop()
	if err != nil {
		r.fault(f.Pos, "the cone cannot be developed: "+patternFault(err), "other sizes, or a larger sheet")
		return
	}
	r.pieces("cone", ConePattern, "Cone", []develop.Development{p.Piece}, f.Seam.Deg)
	out := &r.out.Developments[len(r.out.Developments)-1]
	out.Copies = p.Gores
	if p.Gores > 1 {
		out.Title += ", one of " + strconv.Itoa(p.Gores) + " equal gores"
	}
}

// pieces takes over the flat pieces of a rolled or folded part.
func (r *resolver) pieces(name string, kind DevelopmentKind, title string, list []develop.Development, seamDeg float64) {
	for i, d := range list {
		out := r.pattern(name, kind, d)
		out.Title = title + " development"
		if len(list) > 1 {
			out.Name += "-" + strconv.Itoa(i+1)
			out.Title += ", piece " + strconv.Itoa(i+1) + " of " + strconv.Itoa(len(list))
		}
		out.On = r.out.StockText
		out.SeamDeg = seamDeg
		out.Sizes = append(r.values(d.Inputs), r.values(d.Results)...)
		out.Tables = r.tables(d.Tables)
		out.Notes = append(d.Notes, "Edges are those of the metal, at the middle of its thickness. The seam closes at clock "+trim(seamDeg, 2)+"°.")
		r.out.Developments = append(r.out.Developments, out)
	}
}

// developedMassKg is the mass of what is cut from sheet: flat area times
// thickness, laps left out.
func (r *resolver) developedMassKg(thicknessMm float64) float64 {
	if r.material == nil {
		return 0
	}
	area := 0.0
	for _, d := range r.out.Developments {
		if d.Kind == ConePattern || d.Kind == TransitionPattern {
			area += d.AreaMm2 * float64(d.Copies)
		}
	}
	return clean(area * thicknessMm * 1e-9 * r.material.DensityKgM3)
}
