package joint

import (
	"centrepop/layout/fits"
)

// boughtTube tells how far the outside of a tube that is not turned may lie from
// its drawing and from round, which a press fit has to live with.
func (t *joint) boughtTube() {
	tol, bought, known := t.tubeLimits()
	if bought && !known {
		t.caution("No tolerance of " + t.a.title() + " as bought is known here: measure its outside at both ends and in the middle, two ways, before the bore is cut to fit.")
	}
	if !known {
		return
	}
	t.figure("tube outside as bought", "±"+t.w.Read(tol.PlusMinusMm)+", out of round counts in", tol.Source)
	t.caution(t.a.title() + " is as bought, ±" + t.w.Said(tol.PlusMinusMm) +
		" and out of round within that: the interference holds where it is largest; a tube further out of round than the interference grips in places only.")
}

// tubeLimits are the limits of the outside of a shaft that is a tube as bought, and whether they are known.
func (t *joint) tubeLimits() (tol fits.TubeTolerance, bought, known bool) {
	r := t.a.r
	if !r.Part.BoughtTube() || r.Material == nil || t.a.step.Inside {
		return tol, false, false
	}
	tol, err := fits.TubeOutside(fits.TubeStandard(r.Material.Name), t.a.step.Size.NominalMm)
	return tol, true, err == nil
}
