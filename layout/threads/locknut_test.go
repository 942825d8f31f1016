package threads

import "testing"

// TestLockNut: every nut's thread is one that is made, and each has one name; ISO 2982-2 has KM4 on M20x1,
// KM10 on M50x1.5 and KM11 on M55x2, ABMA 8.2 N-06 on 1.173-18 and AN-15 on 2.933-12.
func TestLockNut(t *testing.T) {
	t.Parallel()
	for thread, want := range map[string]string{"M20x1": "KM4", "M50x1.5": "KM10", "M55x2": "KM11", "M100x2": "KM20", "M150x2": "KM30", "1.173-18": "N-06", "1.173-18 UNS LH": "", "2.933-12": "AN-15", "M30x2": "", "M30": "", "1-12 UNF": ""} {
		is, err := Parse(thread)
		if got := LockNut(is); err != nil || got != want {
			t.Errorf("%s: %q, want %q: %v", thread, got, want, err)
		}
	}
	for _, thread := range kmThreads {
		if is, err := Parse(thread); err != nil || is.Designation != thread {
			t.Errorf("%s is %q: %v", thread, is.Designation, err)
		}
	}
}
