package read

import (
	"strings"

	"centrepop/parts"
)

// side tells the fits of bores from those of shafts.
type side int

const (
	hole side = iota
	shaft
)

// size reads a nominal diameter, and the fit beside it.
func (f *fields) size(key string, s side) parts.Size {
	size := parts.Size{Nominal: f.length(key)}
	size.Fit = f.fit(f.val("fit"), size.Nominal, s)
	return size
}

// fit reads a fit for a nominal size: a class, or one of light-press, limits
// and plus-minus.
func (r *reader) fit(n *node, nominal parts.Length, s side) parts.Fit {
	if n == nil {
		return parts.Fit{}
	}
	if n.kind != mapNode {
		text, ok := r.scalar(n, "a class or a group", fitExample)
		if !ok {
			return parts.Fit{}
		}
		if !classForm().MatchString(text) {
			r.faultf(n.pos, fitExample, "%s is %s, which is no tolerance class", n.label, parts.Quote(text))
			return parts.Fit{}
		}
		capital := text[0] < 'a'
		if capital != (s == hole) {
			right := map[side]string{hole: "bores take capital letters, such as H7", shaft: "outsides take small letters, such as h9"}[s]
			r.faultf(n.pos, right, "the class %s is for %s", text, map[side]string{hole: "an outside, and this is a bore", shaft: "a bore, and this is an outside"}[s])
			return parts.Fit{}
		}
		return parts.Fit{Pos: n.pos, Class: parts.Text{Value: text, Pos: n.pos}}
	}
	f := r.in(n, fitGroup)
	fit := parts.Fit{Pos: n.pos}
	key, v := f.oneOf()
	switch key {
	case "light-press":
		if s == shaft {
			r.fault(n.keyPos(key), "light-press is for bores that go over a measured part", "give the fit to the bore instead")
			return parts.Fit{}
		}
		fit.LightPress = r.ref(v)
	case "measured":
		if fit.Measured = f.limits(key, v, parts.Length{}); fit.Measured == nil {
			return parts.Fit{}
		}
	case "limits":
		if fit.Limits = f.limits(key, v, nominal); fit.Limits == nil {
			return parts.Fit{}
		}
	case "plus-minus":
		fit.PlusMinus = f.length(key)
		if nominal.Set() && fit.PlusMinus.Mm > 0.1*nominal.Mm {
			r.faultf(v.pos, "a tolerance under a tenth of the size", "plus-minus %s is absurd for the size %s", fit.PlusMinus.Text, nominal.Text)
			return parts.Fit{}
		}
	default:
		return parts.Fit{}
	}
	return fit
}

// limits reads the two sizes to machine to, under a key with the value v; nil where they are no limits of
// the nominal size.
func (f *fields) limits(key string, v *node, nominal parts.Length) []parts.Length {
	low, high := f.pair(key)
	switch {
	case !low.Set() || !high.Set():
	case low.Mm >= high.Mm:
		f.faultf(v.pos, "the smaller size first", "the lower limit %s is not below the upper limit %s", low.Text, high.Text)
	case nominal.Set() && (low.Mm < 0.9*nominal.Mm || high.Mm > 1.1*nominal.Mm):
		f.faultf(v.pos, "the two sizes to machine to, not the deviations", "the limits %s and %s are far from the size %s", low.Text, high.Text, nominal.Text)
	default:
		return []parts.Length{low, high}
	}
	return nil
}

// ref reads part.feature.
func (r *reader) ref(n *node) parts.Ref {
	text, ok := r.scalar(n, "a reference", refExample)
	if !ok {
		return parts.Ref{}
	}
	part, feature, dot := strings.Cut(text, ".")
	if !dot || !nameForm().MatchString(part) || !nameForm().MatchString(feature) {
		r.faultf(n.pos, refExample, "%s is %s, which is no reference", n.label, parts.Quote(text))
		return parts.Ref{}
	}
	return parts.Ref{Part: part, Feature: feature, Pos: n.pos}
}
