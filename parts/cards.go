package parts

import (
	"cmp"
	"math"
	"strings"
)

// FirstRun is what a machine needs at its first run besides what its joints
// say.
type FirstRun struct {
	Pos        Pos
	Checks     []Text  // before it turns
	WarmUp     Number  // minutes before the start; 0 if none
	WarmUpHow  Text    // what warms, and how
	Runs       []Run   // in order; empty if the job says none
	Watch      []Watch // where the temperature is taken
	AgainHours float64 // bolts and end play are looked at again after so many hours
}

// Run is one stretch of a first run.
type Run struct {
	Pos     Pos
	Minutes Number
	Speed   Number // rev/min of what the job turns; 0 if not said
	Load    Text   // empty runs idle
}

// Watch is a place whose temperature is watched: a bearing joint or a place in
// words.
type Watch struct {
	Pos     Pos
	Bearing Text
	Place   Text
	MostC   Number // stop above, °C
}

// Upkeep is what wears, and what is greased and tightened.
type Upkeep struct {
	Pos   Pos
	Ports []Port
	Bolts []Retighten
	Wear  []Wear
}

// Port is a place to grease or oil: that of a bearing joint, or one in words.
type Port struct {
	Pos     Pos
	Bearing Text
	Place   Text
	Grease  Text // empty: as the bearing says
	Amount  Text // empty: as the bearing's size asks
	Every   Text
}

// Retighten is a bolt joint to look at.
type Retighten struct {
	Joint Text
	Every Text
}

// Wear is a part of the job, or a bought item, that wears.
type Wear struct {
	Pos   Pos
	Part  Text
	Item  Text
	Look  Text // what to look at, and when to change it
	Every Text
}

// Motor is the maker's plate of a motor and what the electrician needs to know
// of the machine. Only which way it turns is reasoned with.
type Motor struct {
	Pos           Pos
	Maker         Text
	KW, HP        Number // one of the two, as on the plate
	Volts         Text
	Phases        int
	Hz, Amps      Number
	RPM           Number // of the motor
	OutRPM        Number // of the gear's output
	Frame         Text
	Flange        Text
	Enclosure     Text
	Rotation      string   // clockwise, counter-clockwise or either
	SeenFrom      string   // drive-end or non-drive-end
	Drives        JointRef // the step of a shaft that it turns; may be unset
	Through       string   // coupling, reversing-gear, belt or gear-pair
	Earth         Text
	EmergencyStop Text
	Guards        []Text // interlocked
	Notes         []Text
}

// OnPlate is the voltage on the plate with its unit, which some write with it.
func (m *Motor) OnPlate() string {
	return strings.TrimRight(strings.TrimSuffix(strings.TrimSpace(m.Volts.Value), "V"), " ") + " V"
}

// WattsPerHP is a horsepower of 550 foot-pounds a second.
const WattsPerHP = 745.7

// Watts is the power on the plate, 0 where it is not given.
func (m *Motor) Watts() float64 { return 1000*m.KW.Value + WattsPerHP*m.HP.Value }

// Kilowatts is that in kW.
func (m *Motor) Kilowatts() float64 { return m.Watts() / 1000 }

// OutputNm is the torque of that power at the output, losses left out: P / (2 π n), 0 where the
// plate gives no speed.
func (m *Motor) OutputNm() float64 {
	rpm := cmp.Or(m.OutRPM.Value, m.RPM.Value)
	if rpm == 0 {
		return 0
	}
	return 60 * m.Watts() / (2 * math.Pi * rpm)
}

// TurnsClockwise tells how the shaft turns that a motor drives, seen from beyond
// its end at the motor. Behind a motor in line one looks the same way; a belt or a
// pair of gears beside it has both shaft ends on the side that one looks from, as long as nothing that stands says
// otherwise.
func (m *Motor) TurnsClockwise() bool {
	clockwise := m.Rotation == "clockwise"
	if m.InLine() != (m.SeenFrom == "non-drive-end") {
		clockwise = !clockwise
	}
	if m.Through == "reversing-gear" || m.Through == "gear-pair" {
		clockwise = !clockwise
	}
	return clockwise
}

// InLine tells whether the motor looks at the end of the shaft that it drives.
func (m *Motor) InLine() bool { return m.Through == "coupling" || m.Through == "reversing-gear" }
