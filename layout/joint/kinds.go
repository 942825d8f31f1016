package joint

import "centrepop/parts"

type kind interface {
	// ends refuses features that cannot be joined so.
	ends(s *shop, t *joint)
	title(t *joint) string
	// place is A in the coordinates of B where neither a place nor faces of the joint say it.
	place(t *joint) (at placement, ok bool)
	// work fills t.out with the numbers, the steps and what to check.
	work(m *making, t *joint)
	// buy lists what the merchant delivers for it.
	buy(s *shop, t *joint, list *buying)
	// massKg is what holds the parts together, seals and weld metal left out.
	massKg(s *shop, t *joint) float64
	// tools lists what the shop makes for it; before are the joints made before.
	tools(j *assembly, t *joint, before []*joint, list *tooling)
	// traps finds the wrong ways to put on what is moved, and what makes them impossible.
	traps(j *making, t *joint, moved []parts.Instance)
}

// plain is a kind of joint that weighs nothing, needs no tool and places nothing by itself, and whose round
// parts may be turned.
type plain struct{}

func (plain) place(*joint) (at placement, ok bool)              { return at, false }
func (plain) massKg(*shop, *joint) float64                      { return 0 }
func (plain) tools(*assembly, *joint, []*joint, *tooling)       {}
func (plain) traps(j *making, t *joint, moved []parts.Instance) { j.witness(t, moved) }

// kinds are all kinds of joint that the reader knows.
var kinds = map[parts.JointKind]kind{
	parts.PressKind:   pressKind{},
	parts.WeldKind:    weldKind{},
	parts.BoltKind:    boltKind{},
	parts.BearingKind: bearingKind{},
	parts.SlideKind:   slideKind{},
	parts.ScrewKind:   screwKind{},
}

// kindOf is the kind of a joint: of a bearing by its rolling bodies.
func kindOf(in *parts.Joint) kind {
	if in.Bearing != nil && in.Bearing.Ball {
		return ballKind{}
	}
	return kinds[in.Kind]
}
