// Package press computes interference fits of round parts: the pressure in the
// joint, the stresses in hub and shaft, the force to press them together, the
// force and torque they hold, and the temperatures for joining with clearance.
//
// In: two members with their materials, the interference on diameter, the
// engaged length, friction and roughness. Out: numbers in mm, N, N m, MPa and
// degrees Celsius. Everything is pure; bad input returns an error.
//
// Basis: thick cylinders in plane stress (Lamé), as in Shigley, Mechanical
// Engineering Design, equations 3-49 to 3-57 (8th and 9th edition), with the
// rules of DIN 7190 for roughness, lead-in and joining temperature (from memory
// where a comment says so). Both members are taken as elastic and as long as the
// joint: a hub longer than the shaft end, a flange beside the bore or yielding
// makes the truth differ, and Result.Cautions says when a part yields.
package press

import (
	"cmp"
	"fmt"
	"math"

	"centrepop/layout/lookup"
)

// Member is one of the two round parts.
type Member struct {
	OutsideMm float64  // outside diameter, mm: of the hub's body, or of the shaft at the joint
	InsideMm  float64  // inside diameter, mm: of the hub's bore, or of a hollow shaft; 0 for a solid shaft
	Material  Material // elastic data and strength
}

// Smoothing is the part of the summed roughness Rz that pressing flattens, so
// that the working interference is smaller than the measured one:
// loss = Smoothing (RzHub + RzShaft).
type Smoothing float64

// The two figures DIN 7190 has given. The older keeps the holding force on the
// safe side, the newer the stress and press force.
const (
	Smoothing2001 Smoothing = 0.8 // DIN 7190:2001 (from memory)
	Smoothing2017 Smoothing = 0.4 // DIN 7190-1:2017 (as a secondary source quotes it)
)

// Input is one joint.
type Input struct {
	Hub            Member
	Shaft          Member
	InterferenceMm float64   // shaft diameter minus bore diameter before joining, mm, above 0; Range does not read it
	LengthMm       float64   // engaged length, mm
	Friction       Friction  // coefficients lowest and highest; FrictionFor proposes
	HubRzUm        float64   // mean peak-to-valley height Rz of the bore, micrometres; 0 to leave roughness out
	ShaftRzUm      float64   // the same of the shaft
	Smoothing      Smoothing // 0 takes Smoothing2001 (Range: see there)
}

// Stress is the state at one surface, MPa, tension positive. Axial stress is
// taken as zero.
type Stress struct {
	HoopMPa     float64
	RadialMPa   float64
	VonMisesMPa float64
}

// Result is what the joint comes to.
type Result struct {
	InterferenceMm float64 // on diameter before joining, mm
	LossMm         float64 // taken off by flattened roughness, mm
	EffectiveMm    float64 // what is left to press, mm, never below 0
	PressureMPa    float64 // between hub and shaft

	HubBore      Stress // at the joint in the hub
	HubOutside   Stress // at the hub's outside
	ShaftOutside Stress // at the joint in the shaft
	ShaftBore    Stress // at a hollow shaft's bore, or the centre of a solid one

	// Safety of each member against its first yield, or for brittle material
	// against breaking: strength divided by the governing stress (von Mises, or
	// for brittle material see Material.Brittle) at its worst surface.
	// Never above 1000, so that it is finite where there is no pressure.
	HubSafety    float64
	ShaftSafety  float64
	BoreClosesMm float64 // decrease of a hollow shaft's bore diameter, mm; 0 for a solid one

	// Axial force in N to press the last millimetre in, at the friction span.
	// It is also what the finished joint holds against being pushed out.
	ForceN lookup.Range
	// Torque in N m the joint holds, at the friction span.
	TorqueNm lookup.Range

	Cautions []Caution // what a person should know, in a fixed order; nil if nothing
}

// Solve computes the joint at the interference of the input. It errs if a size,
// material figure, friction or roughness is missing, negative, NaN or infinite,
// if hub bore and shaft differ by over 1 percent, if a wall is not positive, or
// if the interference is not above 0.
func Solve(in Input) (Result, error) {
	if err := in.check(); err != nil {
		return Result{}, err
	}
	if !positive(in.InterferenceMm) {
		return Result{}, fmt.Errorf("press: interference %v mm is not a positive number", in.InterferenceMm)
	}
	in.Smoothing = cmp.Or(in.Smoothing, Smoothing2001)
	return in.solve()
}

// Limits is a joint at both ends of the limits of a fit.
type Limits struct {
	Loosest  Result // least interference: what the joint is sure to hold
	Tightest Result // greatest interference: what press and parts must stand
}

// ForceN returns the span of press forces in N to prepare for: loosest joint at
// the lowest friction, tightest joint at the highest.
func (l Limits) ForceN() lookup.Range {
	return lookup.Range{Min: l.Loosest.ForceN.Min, Max: l.Tightest.ForceN.Max}
}

// TorqueNm returns the span of torques in N m the joint may hold, likewise.
func (l Limits) TorqueNm() lookup.Range {
	return lookup.Range{Min: l.Loosest.TorqueNm.Min, Max: l.Tightest.TorqueNm.Max}
}

// Range computes the joint at the least and the greatest interference of a fit
// (mm on diameter; minMm may be zero or below, as in a transition fit, and then
// holds nothing; maxMm must be above 0). With in.Smoothing left 0 the loosest
// case loses the greater roughness allowance (Smoothing2001) and the tightest
// the smaller (Smoothing2017), each on the careful side. Errors as Solve, and if
// minMm is above maxMm.
func Range(in Input, minMm, maxMm float64) (Limits, error) {
	if err := in.check(); err != nil {
		return Limits{}, err
	}
	if !positive(maxMm) {
		return Limits{}, lookup.Refuse("press: greatest interference %v is not a positive number: this is no press fit", lookup.Mm(maxMm))
	}
	if !(minMm <= maxMm) || math.IsInf(minMm, 0) {
		return Limits{}, fmt.Errorf("press: least interference %v mm must be a number not above the greatest, %v mm", minMm, maxMm)
	}
	loose, tight := in, in
	loose.InterferenceMm, tight.InterferenceMm = minMm, maxMm
	if in.Smoothing == 0 {
		loose.Smoothing, tight.Smoothing = Smoothing2001, Smoothing2017
	}
	var out Limits
	var err error
	if out.Loosest, err = loose.solve(); err != nil {
		return Limits{}, err
	}
	if out.Tightest, err = tight.solve(); err != nil {
		return Limits{}, err
	}
	return out, nil
}

// check refuses input the formulas cannot take.
func (in Input) check() error {
	for _, m := range []struct {
		name string
		Member
	}{{"hub", in.Hub}, {"shaft", in.Shaft}} {
		if !positive(m.OutsideMm) {
			return fmt.Errorf("press: %s outside diameter %v mm is not a positive number", m.name, m.OutsideMm)
		}
		if !(m.InsideMm >= 0 && m.InsideMm < m.OutsideMm) {
			return lookup.Refuse("press: %s inside diameter %v does not fit its outside %v", m.name, lookup.Mm(m.InsideMm), lookup.Mm(m.OutsideMm))
		}
		if err := m.Material.check(); err != nil {
			return fmt.Errorf("press: %s: %w", m.name, err)
		}
	}
	if bore, shaft := in.Hub.InsideMm, in.Shaft.OutsideMm; math.Abs(bore-shaft) > 0.01*shaft {
		return lookup.Refuse("press: hub bore %v and shaft %v differ by more than 1 percent", lookup.Mm(bore), lookup.Mm(shaft))
	}
	d := in.interfaceMm()
	if d >= in.Hub.OutsideMm || d <= in.Shaft.InsideMm {
		return lookup.Refuse("press: no wall left between %v and the joint at %v", lookup.Mm(in.Hub.OutsideMm), lookup.Mm(d))
	}
	if !positive(in.LengthMm) {
		return fmt.Errorf("press: engaged length %v mm is not a positive number", in.LengthMm)
	}
	if err := in.Friction.check(); err != nil {
		return err
	}
	if !notNegative(in.HubRzUm) || !notNegative(in.ShaftRzUm) || !notNegative(float64(in.Smoothing)) {
		return fmt.Errorf("press: roughness %v and %v um and smoothing %v must be zero or more", in.HubRzUm, in.ShaftRzUm, float64(in.Smoothing))
	}
	return nil
}

func (in Input) interfaceMm() float64 { return (in.Hub.InsideMm + in.Shaft.OutsideMm) / 2 }

// solve applies the formulas to checked input.
func (in Input) solve() (Result, error) {
	d, do, di := in.interfaceMm(), in.Hub.OutsideMm, in.Shaft.InsideMm
	hub, shaft := in.Hub.Material, in.Shaft.Material
	r := Result{InterferenceMm: in.InterferenceMm}
	r.LossMm = float64(in.Smoothing) * (in.HubRzUm + in.ShaftRzUm) / 1000
	r.EffectiveMm = max(0, in.InterferenceMm-r.LossMm)

	// Shigley 3-56 with diameters. The ratios below are hoop over pressure at
	// the joint: hub in tension, shaft in compression.
	hubRatio := (do*do + d*d) / ((do - d) * (do + d))
	shaftRatio := (d*d + di*di) / ((d - di) * (d + di))
	compliance := (hubRatio+hub.Nu)/hub.EMPa + (shaftRatio-shaft.Nu)/shaft.EMPa
	p := r.EffectiveMm / (d * compliance)
	if !notNegative(p) {
		return Result{}, fmt.Errorf("press: the sizes are out of all proportion: no finite answer")
	}
	if p == 0 {
		r.HubSafety, r.ShaftSafety = maxSafety, maxSafety
		r.Cautions = in.cautions(r)
		return r, nil
	}
	r.PressureMPa = p
	r.HubBore = state(p*hubRatio, -p)
	r.HubOutside = state(p*(hubRatio-1), 0) // hoop plus radial is the same through the wall
	r.ShaftOutside = state(-p*shaftRatio, -p)
	if di > 0 {
		r.ShaftBore = state(-p*(shaftRatio+1), 0)
	} else {
		r.ShaftBore = state(-p, -p)
	}
	r.BoreClosesMm = -di * r.ShaftBore.HoopMPa / shaft.EMPa
	r.HubSafety = hub.safety(r.HubBore, r.HubOutside)
	r.ShaftSafety = shaft.safety(r.ShaftOutside, r.ShaftBore)
	normal := p * math.Pi * d * in.LengthMm
	r.ForceN = lookup.Range{Min: in.Friction.Min * normal, Max: in.Friction.Max * normal}
	r.TorqueNm = lookup.Range{Min: r.ForceN.Min * d / 2000, Max: r.ForceN.Max * d / 2000}
	if !notNegative(r.TorqueNm.Max) {
		return Result{}, fmt.Errorf("press: the sizes are out of all proportion: no finite answer")
	}
	r.Cautions = in.cautions(r)
	return r, nil
}

// state builds a Stress with its von Mises value for plane stress.
func state(hoop, radial float64) Stress {
	return Stress{hoop, radial, math.Sqrt(hoop*hoop - hoop*radial + radial*radial)}
}
