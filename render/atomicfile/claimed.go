package atomicfile

// claimed says how a file was found when it was to be locked.
type claimed uint8

const (
	taken    claimed = iota // another process holds it, or has removed it
	held                    // it is locked now
	lockless                // files cannot be locked here
)
