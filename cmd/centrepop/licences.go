package main

import (
	_ "embed"
	"io"
)

// notices are the licences of all that is in the binary: the typeface, the
// modules and the Go library. TestNotices writes them anew.
//
//go:embed licences.txt
var notices string

// licences prints the notices.
func licences(c *call) error {
	if err := c.parse(0, 0); err != nil {
		return err
	}
	if *c.json {
		return c.print(map[string]string{"notices": notices})
	}
	_, err := io.WriteString(c.stdout, notices)
	return err
}
