package draw

import (
	"reflect"
	"slices"
	"sync"
)

// Kept is what was made for the last packet and for the one being made: what is
// made of equal values again is taken from there. A nil one keeps nothing. It may
// be used on several goroutines at once.
type Kept struct {
	// Drawn is how many sheets were drawn since the last turn, and not kept.
	Drawn int
	// Ready, where there is one, takes over each sheet that is complete. Nothing is
	// kept then.
	Ready func(*Sheet)

	lock      sync.Mutex
	last, now []keptValue
}

// keptValue is something and the values that it was made of.
type keptValue struct{ of, made any }

// Turn begins another packet: what the last did not use is forgotten.
func (k *Kept) Turn() {
	if k == nil {
		return
	}
	k.lock.Lock()
	defer k.lock.Unlock()
	k.last, k.now, k.Drawn = k.now, nil, 0
}

// Keep returns what was made of equal values before, or makes it. Nothing but the
// values may have a part in what is made, and neither may change afterwards.
func Keep[T any](k *Kept, of any, make func() T) T {
	if !k.keeps() {
		return make()
	}
	k.lock.Lock()
	i := slices.IndexFunc(k.last, func(old keptValue) bool { return reflect.DeepEqual(old.of, of) })
	if i >= 0 {
		defer k.lock.Unlock()
		k.now = append(k.now, k.last[i])
		return k.last[i].made.(T)
	}
	k.lock.Unlock()
	made := make()
	k.lock.Lock()
	defer k.lock.Unlock()
	k.now = append(k.now, keptValue{of, made})
	return made
}

func (k *Kept) keeps() bool { return k != nil && k.Ready == nil }

// Complete hands over sheets to which nothing more is drawn before they are bound.
func (k *Kept) Complete(sheets []*Sheet) {
	if k == nil || k.Ready == nil {
		return
	}
	for _, s := range sheets {
		k.Ready(s)
	}
}

// Sheets returns sheets as they were drawn of equal values before, or draws them.
// They may be bound and numbered: what is kept does not change with them.
func (k *Kept) Sheets(of any, draw func() []*Sheet) []*Sheet {
	if !k.keeps() {
		return draw()
	}
	kept := Keep(k, of, func() []*Sheet {
		sheets := draw()
		k.lock.Lock()
		defer k.lock.Unlock()
		k.Drawn += len(sheets)
		return sheets
	})
	out := make([]*Sheet, len(kept))
	for i, s := range kept {
		one := *s
		one.Draw.Items, one.Starts, one.Blocks = slices.Clip(s.Draw.Items), slices.Clip(s.Starts), slices.Clip(s.Blocks)
		out[i] = &one
	}
	return out
}
