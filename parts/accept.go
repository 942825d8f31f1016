package parts

// Accept is a finding of the review that the job takes as it is, with the
// reason. It says nothing about whether there is such a finding.
type Accept struct {
	Pos     Pos
	Finding Text   // code of the finding, such as edge
	Part    string // where: name of a part or joint; empty for what is about the whole job
	Feature string // of that part; empty for all of it
	Number  Length // what the finding measured when it was accepted; optional
	Reason  Text
}
