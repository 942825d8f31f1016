package main

import (
	"os"
	"os/signal"
	"syscall"

	"centrepop/render/atomicfile"
)

// tidyOnSignal makes a signal to end the program leave nothing half written
// behind. The signal then ends it as it would have, so that a shell sees why.
func tidyOnSignal() {
	signals := make(chan os.Signal, 1)
	for _, s := range []os.Signal{os.Interrupt, syscall.SIGTERM, syscall.SIGHUP} {
		if !signal.Ignored(s) { // by nohup, or for a job in the background
			signal.Notify(signals, s)
		}
	}
	go func() {
		s := <-signals
		atomicfile.Abandon()
		signal.Reset(s)
		if self, err := os.FindProcess(os.Getpid()); err == nil && self.Signal(s) == nil {
			select {} // it ends now
		}
		os.Exit(statusBad)
	}()
}
