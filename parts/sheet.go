package parts

// sheetSize reads the size of a stock sheet, such as [1000, 2000].
func (r *reader) sheetSize(n *node) (width, height Length) {
	items, ok := r.items(n, 2, 2, "the stock sheet's two sides, such as [1000, 2000]")
	if !ok {
		return Length{}, Length{}
	}
	items[0].label, items[1].label = "width of "+n.label, "height of "+n.label
	return r.length(items[0], positive), r.length(items[1], positive)
}
