package main

import (
	_ "embed"
	"fmt"
)

// notices are the licences of all that is in the binary: the typeface, the
// modules and the Go library. TestNotices writes them anew.
//
//go:embed licences.txt
var notices string

func licences(c *call) error {
	if err := c.parse(0, 0); err != nil {
		return err
	}
	return c.answer(map[string]string{"notices": notices}, func() { fmt.Fprint(c.stdout, notices) })
}
