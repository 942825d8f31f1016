package threads

import "centrepop/parts/seq"

// All returns every known thread in a fixed order: metric by diameter then
// falling pitch, then G, R, Rc, Rp, NPT, UNC, UNF, UN, UNS by size, Tr and Acme. The slice is new at
// each call.
func All() []Thread {
	var list []Thread
	for _, row := range metricRows {
		if row.coarse > 0 {
			list = append(list, metricThread(row, row.coarse))
		}
		list = append(list, seq.Map(row.fine, func(p float64) Thread { return metricThread(row, p) })...)
	}
	for _, series := range []string{PipeG, PipeR, PipeRc, PipeRp} {
		for _, row := range pipeRows {
			if t, ok := pipeThread(series, row); ok {
				list = append(list, t)
			}
		}
	}
	list = append(list, seq.Map(nptRows, nptThread)...)
	list = append(list, seq.Map(unified(), func(u sized) Thread { return u.Thread })...)
	for _, row := range trRows {
		list = append(list, seq.Map(row.pitches, func(p float64) Thread { return trThread(row.d, p, "", false, 1) })...)
	}
	return append(list, seq.Map(acmeRows, func(r acmeRow) Thread { return acmeThread(r, "", false, 1) })...)
}
