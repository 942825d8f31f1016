package plan

// FirstRun is the card of a machine's first run, in the order to go through it.
type FirstRun struct {
	Stages   []RunStage `json:"stages"`
	Watch    []Watched  `json:"watch,omitempty"`
	Degrees  string     `json:"degrees"` // the unit that temperatures are written in
	Cautions []string   `json:"cautions,omitempty"`
}

// RunStage is one stage of a first run: lines to tick, each with what is wanted
// and a blank, or runs with a temperature for each place watched.
type RunStage struct {
	Title string     `json:"title"`
	Lines []CardLine `json:"lines,omitempty"`
	Runs  []RunRow   `json:"runs,omitempty"`
}

// CardLine is one thing to do or to look at.
type CardLine struct {
	Do     string `json:"do"`
	Wanted string `json:"wanted,omitempty"` // in the job's units
	Source string `json:"source,omitempty"`
}

// RunRow is one stretch of a run.
type RunRow struct {
	What  string `json:"what"` // idle, or the load
	After string `json:"after"`
	Speed string `json:"speed,omitempty"`
}

// Watched is a place whose temperature is written down.
type Watched struct {
	Where string `json:"where"`
	Most  string `json:"most,omitempty"` // in the job's units; empty if the job sets no limit
}

// Upkeep is the card that hangs at the machine.
type Upkeep struct {
	Ports    []UpkeepRow `json:"ports,omitempty"`
	Bolts    []UpkeepRow `json:"bolts,omitempty"`
	Wear     []UpkeepRow `json:"wear,omitempty"`
	Sources  []string    `json:"sources,omitempty"` // of the amounts and torques worked out
	Cautions []string    `json:"cautions,omitempty"`
}

// UpkeepRow is one thing to look after.
type UpkeepRow struct {
	Where string `json:"where"`
	What  string `json:"what"` // grease and amount, torque, or what to look at
	Every string `json:"every"`
}

// Motor is the page for the electrician: what the plate and the machine say,
// and what is to be signed. It holds nothing computed.
type Motor struct {
	Plate    []Fact   `json:"plate"`
	Machine  []Fact   `json:"machine"`
	Sign     []string `json:"sign"`
	Notes    []string `json:"notes,omitempty"`
	Cautions []string `json:"cautions"`
}

// Fact is a label with its value; an empty value is filled in by hand.
type Fact struct {
	Label string `json:"label"`
	Value string `json:"value"`
}

// SourceTable lists where the values of some tables are from.
type SourceTable struct {
	Title string      `json:"title"`
	Rows  []SourceRow `json:"rows"`
}

// SourceRow is one table or column with its source and its state: checked, from
// memory, common practice, unchecked; several where its rows differ.
type SourceRow struct {
	What   string `json:"what"`
	Source string `json:"source"`
	State  string `json:"state"`
}
