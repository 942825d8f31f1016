package draw

import (
	"reflect"
	"testing"
)

// TestKept: sheets of equal values are drawn once, whatever is done to the copies;
// what a packet did not use is forgotten with the next.
func TestKept(t *testing.T) {
	t.Parallel()
	type of struct{ list []*int }
	values := func(n ...int) of {
		var out of
		for _, v := range n {
			out.list = append(out.list, &v)
		}
		return out
	}
	k := &Kept{}
	get := func(v of) []*Sheet {
		return k.Sheets(v, func() []*Sheet {
			s := &Sheet{Name: "drawn", Starts: make([]string, 1, 9), Blocks: make([]Block, 1, 9)}
			s.Draw.Items = append(make([]Item, 0, 9), Text{Content: "one"})
			return []*Sheet{s}
		})
	}
	for i, c := range []struct {
		v     of
		turn  bool
		drawn int
	}{
		{values(1, 2), false, 1}, {values(1, 2), true, 0}, {values(1, 3), true, 1},
		{values(1, 2), true, 1}, {values(1, 2), true, 0}, {values(1, 2), true, 0},
	} {
		if c.turn {
			k.Turn()
		}
		one, before := get(c.v)[0], k.Drawn
		if before != c.drawn {
			t.Errorf("%d: %d sheets drawn, want %d", i, before, c.drawn)
		}
		if len(one.Draw.Items) != 1 || len(one.Starts) != 1 || len(one.Blocks) != 1 || one.Name != "drawn" || !reflect.DeepEqual(one.Draw.Items[0], Text{Content: "one"}) {
			t.Errorf("%d: not as it was drawn: %+v", i, one)
		}
		one.Draw.Add(Text{Content: "page 1"})
		one.Starts, one.Blocks, one.Name = append(one.Starts, "x"), append(one.Blocks, Block{}), "changed"
	}
	k.Turn()
	one, two := get(values(1, 2))[0], get(values(1, 2))[0]
	one.Draw.Add(Text{Content: "page 1"})
	two.Draw.Add(Text{Content: "page 2"})
	if got := one.Draw.Items[1].(Text).Content; got != "page 1" {
		t.Errorf("a copy has taken %q from the other", got)
	}
	var none *Kept
	none.Turn()
	if got := none.Sheets(1, func() []*Sheet { return nil }); got != nil || Keep(none, 1, func() int { return 7 }) != 7 {
		t.Errorf("nothing that keeps has kept %v", got)
	}
}
