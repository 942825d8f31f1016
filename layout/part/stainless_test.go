package part_test

import "testing"

// Austenitic steel is drilled at the low end of 15 to 25 m/min: 531 rev/min for Ø9 and
// 415 for Ø11.5, 300 of the lathe and 340 of the mill are next under them; C45 at 17.5, the middle of 12 to 23.
func TestStainlessDrilledSlowly(t *testing.T) {
	t.Parallel()
	pl := demo(t, "pugmill")
	inOrder(t, planned(t, pl, "barrel-end"), "Drill Ø11.5, open out: 300 rev/min.", "Drill Ø9: 340 rev/min.")
	inOrder(t, planned(t, pl, "bearing-housing"), "Drill Ø11.5, open out", "Drill Ø9: 540 rev/min.")
}
