package review

import (
	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// measure is the number of a problem that an acceptance holds it to: which of
// its arguments, and whether more of it is worse. A problem without one is a
// choice, such as a class or a metal, and an acceptance of it is for good.
type measure struct {
	arg  int
	more bool
}

var measures = map[plan.ProblemKind]measure{
	"on-bead":             {2, true},
	"thin-part":           {0, false},
	"short-thread":        {0, false},
	"short-engagement":    {0, false},
	"short-protrusion":    {0, false},
	"long-past-nut":       {0, true},
	"long-past-hole":      {0, true},
	"stands-out":          {0, true},
	"bottoms-out":         {0, true},
	"near-bottom":         {0, false},
	"shank-jams":          {0, true},
	"wall-near":           {0, false},
	"neighbour-near":      {0, false},
	plan.CounterboreTight: {0, false},
	plan.HeadsCovered:     {3, false},
	plan.CupShoulderLow:   {1, true},
	plan.CupShoulderHigh:  {1, false},
	plan.ConeShoulderLow:  {1, false},
	plan.CageTouches:      {2, true},
	plan.NutShort:         {1, true},
	plan.NutFew:           {0, false},
	plan.SlotShort:        {1, true},
	plan.SeatShort:        {1, false},
	plan.SeatTightness:    {3, true},
	plan.MayBeLoose:       {0, true},
	plan.RegisterBinds:    {1, true},
	plan.RegisterLoose:    {1, true},
	plan.RegisterOff:      {3, true},
	plan.RegisterFixed:    {1, true},
	plan.RegisterTube:     {1, true},
	plan.PlayUsed:         {1, true},
	plan.FilletGap:        {0, true},
	plan.FilletSmall:      {0, false},
	plan.SquareTooThick:   {0, true},
	plan.BreaksOut:        {4, true},
	plan.UndercutOver:     {3, true},
	plan.Overhangs:        {2, true},
	plan.HolesUnmet:       {4, true},
	plan.HeadShutIn:       {2, true},
	plan.FootBeyond:       {2, true},
	plan.TipUnder:         {1, true},
	plan.AnchoredHigh:     {1, true},
	plan.SeamBeyond:       {2, false},
	plan.BracesOne:        {3, true},
	plan.FilletNoCorner:   {0, true},
	plan.BushCloses:       {2, false},
	plan.BushTight:        {2, false},
	plan.BushShort:        {2, false},
	plan.NutHangs:         {2, false},
	plan.LaidFree:         {2, true},
	plan.PinTight:         {2, true},
	plan.WeldLonger:       {0, false},
	plan.TravelStrikes:    {2, true},
	plan.TravelRuns:       {1, false},
	plan.StudOff:          {1, true},
	plan.StockShort:       {1, false},
	plan.JawsShort:        {0, false},
	plan.JawsThin:         {0, false},
	plan.FlightTight:      {2, false},
	plan.LiftsLow:         {2, true},
	plan.PunchBlocked:     {1, false},
	plan.WeldPast:         {2, true},
	plan.FlightWide:       {2, true},
	plan.PlaceMisses:      {1, true},
	plan.SlideBinds:       {2, true},
	plan.SlideKeyOff:      {0, false},
	plan.LengthsEat:       {3, false},
	plan.SlideNutShort:    {1, true},
	plan.SlideShoulderLow: {1, false},
	plan.SlidePlay:        {3, true},
	plan.SlideLoose:       {2, true},
	plan.SlideNutUndercut: {2, false},
	plan.SlideNoRoom:      {1, true},
	plan.SlideFar:         {1, true},
	plan.SlideLockRoom:    {0, false},
	plan.SlideNutRoom:     {0, false},
	plan.SlideWide:        {1, true},
	plan.FoldInRam:        {1, true},
	plan.NearBend:         {1, false},
	plan.BarHoleNear:      {1, false},
	plan.BarTooThin:       {3, false},
	plan.CornerUnlike:     {2, true},
	plan.CornerSections:   {2, true},
}

// problem records what earlier stages found, about a part or joint.
func (r *reviewer) problem(p plan.Problem, f Finding) {
	about := words.AboutKind(p.Kind)
	r.code = about.Code
	f.Severity, f.Pos, f.Rule, f.Source, f.Fix = about.Severity, p.Pos, about.Rule, about.Source, r.w.Fix(p)
	if m, ok := measures[p.Kind]; ok && m.arg < len(p.Args) {
		if mm := &p.Args[m.arg].Value; m.more {
			f.OverMm = mm
		} else {
			f.LeftMm = mm
		}
	}
	r.add(f)
}
