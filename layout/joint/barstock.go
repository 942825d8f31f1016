package joint

import (
	"centrepop/layout/bars"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// bars plans what the bars of frames are sawn from, one row for a section and
// material, in the order of the parts: what fills less than wholeShare of one is bought to length.
func (j *shop) bars() []plan.BarStock {
	type kind struct{ section, material string }
	var kinds []kind
	pieces := map[kind][]bars.Piece{}
	for _, r := range j.models {
		section, member, ok := r.Sawn()
		if !ok {
			continue
		}
		k := kind{r.StockText(), r.Out.Material}
		if pieces[k] == nil {
			kinds = append(kinds, k)
		}
		pieces[k] = append(pieces[k], bars.Piece{Name: r.Part.Name.Value, Member: member, Count: r.Part.Quantity, Keep: bars.KeepOf(section)})
	}
	stock := j.sold()
	var out []plan.BarStock
	for _, k := range kinds {
		row := plan.BarStock{Section: k.section, Material: k.material, BarMm: stock.BarMm, KerfMm: stock.KerfMm, TrimMm: stock.TrimMm, Source: "bar length, kerf and trim: common practice, no source"}
		laid, err := bars.Nest(pieces[k], stock)
		if err != nil {
			row.Source = tooLongForBars
		}
		if len(laid) == 1 && row.BarMm-laid[0].OffcutMm < wholeShare*row.BarMm {
			used := row.BarMm - laid[0].OffcutMm
			row.BarMm = j.w.Up(used, 10, 1.0/2)
			laid[0].OffcutMm = row.BarMm - used
		}
		for _, b := range laid {
			bar := plan.StockBar{OffcutMm: words.Round(geom.Clean(b.OffcutMm), 1)}
			bar.Cuts = seq.Map(b.Cuts, j.stockCut)
			row.Bars = append(row.Bars, bar)
		}
		out = append(out, row)
	}
	return out
}

// stockCut is a piece on its bar.
func (j *shop) stockCut(c bars.Cut) plan.StockCut {
	r := j.model(c.Name)
	from, long := c.Span()
	return plan.StockCut{
		Part: c.Name, Name: r.Out.Title, FromMm: geom.Clean(from), LengthMm: geom.Clean(long),
		StartDeg: c.Member.StartDeg, EndDeg: c.Member.EndDeg, Turned: c.Turned, Reversed: c.Reversed, Shared: c.SharedWithBefore,
	}
}
