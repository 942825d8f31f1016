package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"os/exec"
	"os/signal"
	"runtime"
	"strconv"
	"time"
)

// pollEvery is how often the files of a job are looked at. Looking is a few
// calls of the file system; it sees files renamed over, deleted and on network
// drives, which notifications do not everywhere.
const pollEvery = 80 * time.Millisecond

// watch serves the sheets of a job to browsers on this machine, and makes them
// again when a file of the job changes. It writes nothing.
func watch(c *call) error {
	port := c.flags.Int("port", 0, "`PORT` to listen on, 0 for any that is free")
	open := c.flags.Bool("open", false, "open the page in the browser")
	if err := c.parse(1, 1); err != nil {
		return err
	}
	if *port < 0 || *port > 65535 {
		return badUse("--port %d: 0 to 65535", *port)
	}
	job := jobIn(c.args[0])
	if info, err := os.Stat(job); err != nil || !info.Mode().IsRegular() {
		return badUse("%s is not a job file that can be read", job)
	}
	listener, err := net.Listen("tcp4", net.JoinHostPort("127.0.0.1", strconv.Itoa(*port)))
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	f := newFollower(job)
	go f.follow(ctx, pollEvery)
	address := "http://" + listener.Addr().String() + "/"
	if *c.json {
		err = c.print(map[string]string{"address": address})
	} else {
		_, err = fmt.Fprintf(c.stdout, "%s\nend with Ctrl-C\n", address)
	}
	if err != nil {
		return err
	}
	if *open {
		if err := openBrowser(address); err != nil {
			fmt.Fprintf(c.stderr, "the browser does not open: %s\n", err)
		}
	}
	server := &http.Server{Handler: f.handler(listener.Addr().String()), ReadHeaderTimeout: 5 * time.Second, BaseContext: func(net.Listener) context.Context { return ctx }}
	go func() {
		<-ctx.Done()
		// What is still being sent to a browser may be cut off.
		_ = server.Close()
	}()
	if err := server.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

// openBrowser opens an address with what the system has for it.
func openBrowser(address string) error {
	switch runtime.GOOS {
	case "darwin":
		return exec.Command("open", address).Start()
	case "windows":
		return exec.Command("rundll32", "url.dll,FileProtocolHandler", address).Start()
	}
	return exec.Command("xdg-open", address).Start()
}
