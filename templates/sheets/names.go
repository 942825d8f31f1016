package sheets

// The names of the chapters, for the index and the bookmarks.
const (
	OperationName  = "Operation sheet"
	InspectionName = "Inspection record"
)
