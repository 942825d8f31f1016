package threads

import (
	"slices"
	"strconv"
	"strings"
)

// kmThreads are the threads of the bearing lock nuts KM0 to KM30. ISO 2982-2.
var kmThreads = []string{
	"M10x0.75", "M12x1", "M15x1", "M17x1", "M20x1", "M25x1.5", "M30x1.5", "M35x1.5", "M40x1.5", "M45x1.5", "M50x1.5",
	"M55x2", "M60x2", "M65x2", "M70x2", "M75x2", "M80x2", "M85x2", "M90x2", "M95x2", "M100x2", "M105x2",
	"M110x2", "M115x2", "M120x2", "M125x2", "M130x2", "M135x2", "M140x2", "M145x2", "M150x2",
}

// LockNut is the name of the bearing lock nut that runs on a thread: KM6 on M30x1.5 (ISO 2982-2), N-06 on
// 1.173-18 (ABMA 8.2); empty where none does, as on any left-hand one.
func LockNut(t Thread) string {
	if t.LeftHand {
		return ""
	}
	if n := slices.Index(kmThreads, t.Designation); n >= 0 {
		return "KM" + strconv.Itoa(n)
	}
	for _, row := range nutRows {
		if strings.HasPrefix(t.Designation, row.size+"-"+number(row.tpi)+" ") {
			return row.nut
		}
	}
	return ""
}
