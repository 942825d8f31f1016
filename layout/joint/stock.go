package joint

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/bars"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// wholeShare of a bar's length is what pieces come to at least before a bar is bought for
// them; for less the merchant saws them. Common practice, no source.
const wholeShare = 0.5

// sold is a bar as it is sold, and what sawing it costs: each cut, and its first end. Common
// practice, no source.
func (j *shop) sold() bars.Stock {
	if j.job.Units == parts.Inches {
		return bars.Stock{BarMm: bars.SoldMm(true), KerfMm: 3.0 / 32 * geom.MmPerInch, TrimMm: 3.0 / 8 * geom.MmPerInch}
	}
	return bars.Stock{BarMm: bars.SoldMm(false), KerfMm: 2, TrimMm: 10}
}

// stockForms are the forms of stock in the order of the list.
var stockForms = []string{"round", "tube", "square", "flat", "plate", "sheet", "casting", "bought"}

// cuts lists the stock of the parts, a row for a size and material: what is sawn to a
// length, blanks by their thickness, castings. The bars of frames are listed apart.
func (j *shop) cuts() []plan.CutRow {
	var out []plan.CutRow
	bought := map[string]parts.Stock{}
	for _, r := range j.models {
		s := r.Part.Stock
		if _, _, bar := r.Sawn(); bar || s.Form == "" {
			continue
		}
		s.Length = parts.Length{}
		if !s.ByArea() {
			s.Cut = ""
		}
		key := plan.CutRow{Stock: r.StockWords(s), Material: r.Out.Material}
		bought[key.Stock] = s
		i := slices.IndexFunc(out, func(c plan.CutRow) bool { return c.Stock == key.Stock && c.Material == key.Material })
		if i < 0 {
			i, key.Bars = len(out), []plan.CutBar{{}}
			out = append(out, key)
		}
		out[i].Bars[0].Pieces = append(out[i].Bars[0].Pieces, j.blanks(r)...)
	}
	rank := func(c plan.CutRow) int { return slices.Index(stockForms, bought[c.Stock].Form) }
	slices.SortStableFunc(out, func(a, b plan.CutRow) int { return cmp.Compare(rank(a), rank(b)) })
	for i := range out {
		if s := bought[out[i].Stock]; !s.ByArea() && s.Form != "casting" && !s.Bought() {
			j.saw(&out[i])
		}
	}
	return out
}

// blanks are the pieces of stock of a part, those of plate and sheet rounded up.
func (j *shop) blanks(r *part.Model) []plan.CutPiece {
	one := plan.CutPiece{Part: r.Out.Title, Name: r.Part.Name.Value, Count: r.Part.Quantity, LengthMm: geom.Clean(r.Part.Stock.Length.Mm)}
	sides := func(of plan.CutPiece, x, y float64) plan.CutPiece {
		of.LengthMm, of.AcrossMm = j.up(max(x, y)), j.up(min(x, y))
		return of
	}
	box := r.BlankPath().Bounds()
	switch {
	case r.Part.Stock.Form == "casting", r.Part.Stock.Bought(): // it comes as it is ordered, not cut to a length
		return []plan.CutPiece{one}
	case !r.Part.Stock.ByArea():
		if one.LengthMm == 0 && r.Part.Flat() {
			one.LengthMm = geom.Clean(max(box.W(), box.H()))
		} else if one.LengthMm == 0 {
			one.LengthMm = r.BlankLengthMm()
		}
		return []plan.CutPiece{one}
	case r.Flat() || r.Part.Turned() && r.Part.Rolled == nil:
		one.Round = r.RoundBlank()
		return []plan.CutPiece{sides(one, box.W(), box.H())}
	}
	var out []plan.CutPiece
	for _, d := range r.Out.Developments {
		if d.Kind.Blank() {
			one.Count = r.Part.Quantity * max(d.Copies, 1)
			out = append(out, sides(one, d.MaxMm.XMm-d.MinMm.XMm, d.MaxMm.YMm-d.MinMm.YMm))
		}
	}
	return out
}

// tooLongForBars is the source of what no bar that is sold gives.
const tooLongForBars = "order to length: a piece is longer than a bar"

// saw lays the pieces of a row on bars. Pieces that fill little of one are bought sawn.
func (j *shop) saw(row *plan.CutRow) {
	pieces := row.Bars[0].Pieces
	bar := j.sold()
	row.KerfMm, row.TrimMm = bar.KerfMm, bar.TrimMm
	var wanted []bars.Piece
	total := row.TrimMm
	for _, p := range pieces {
		wanted = append(wanted, bars.Piece{Name: p.Name, Member: bars.Member{LengthMm: p.LengthMm, WidthMm: 1}, Count: p.Count}) // cut square, at any width
		total += float64(p.Count) * (p.LengthMm + row.KerfMm)
	}
	if total < wholeShare*bar.BarMm {
		row.Stock += ", saw cut"
		return
	}
	row.BarMm, row.Source = bar.BarMm, "bar length, kerf and trim: common practice, no source"
	laid, err := bars.Nest(wanted, bar)
	if err != nil {
		row.BarMm, row.Source = 0, tooLongForBars
		return
	}
	row.Bars = nil
	for _, b := range laid {
		cut := plan.CutBar{OffcutMm: geom.Clean(b.OffcutMm)}
		for _, c := range b.Cuts {
			if n := len(cut.Pieces); n > 0 && cut.Pieces[n-1].Name == c.Name && cut.Pieces[n-1].LengthMm == geom.Clean(c.Member.LengthMm) {
				cut.Pieces[n-1].Count++
				continue
			}
			cut.Pieces = append(cut.Pieces, plan.CutPiece{Part: j.model(c.Name).Out.Title, Name: c.Name, Count: 1, LengthMm: geom.Clean(c.Member.LengthMm), FromMm: geom.Clean(c.FromMm)})
		}
		row.Bars = append(row.Bars, cut)
	}
}

// sawShort has the bars of frames sawn for the gaps of their corners, and for what the welds
// draw in, those of which all copies have the same at each end.
func (s *shop) sawShort(a *assembly, together clusters, order []*joint) {
	s.short = map[string]bool{}
	type end struct {
		of   parts.Instance
		side parts.Side
	}
	off := map[end]float64{}
	for _, t := range order {
		m := making{assembly: a, all: together.joints[together.of[t]]}
		var r *ring
		if t.in.Weld != nil && t.in.Weld.Type != "fillet" {
			r = m.ringOf(t)
		}
		if r == nil {
			continue
		}
		prep, err := t.prep(geom.Clean(math.Min(t.a.thickMm(), t.b.thickMm())))
		if err != nil {
			continue
		}
		mm := prep.GapMm.Use - r.drawsMm(prep.Shape.Symbol()).mean()
		if stands, _, ok := t.stands(); ok && !t.corner() {
			side, _ := stands.barEnd()
			off[end{stands.Instance(), side}] = mm
			continue
		}
		for _, f := range []feature{t.a, t.b} {
			side, _ := f.mitre()
			off[end{f.Instance(), side}] = mm / 2 / math.Cos(f.r.Part.Bar.End(side).Mitre.Deg*math.Pi/180)
		}
	}
	for _, r := range s.models {
		if r.Part.Bar == nil {
			continue
		}
		at := func(copy int, side parts.Side) float64 {
			return r.SawnMm(off[end{parts.Instance{Part: r.Part.Name.Value, Copy: copy}, side}])
		}
		left, right, same := at(1, parts.LeftEnd), at(1, parts.RightEnd), true
		for n := 2; n <= r.Part.Quantity; n++ {
			same = same && at(n, parts.LeftEnd) == left && at(n, parts.RightEnd) == right
		}
		s.short[r.Part.Name.Value] = same && r.SawShort(left, right)
	}
}
