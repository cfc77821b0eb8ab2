// Command drainboard is the dashboard of a larval room, and the same room on
// the command line: entries in, the room and the next change session out, and
// the sums of the bench.
//
// This package is the wording of the command line. It reads arguments, hands
// facts to package state and package model, and words what they answer. It
// holds no rule of the room and no formula, and nobody imports it.
package main

import (
	"os"
	"time"
)

func main() {
	dir, _ := os.Getwd() // where there is none, a room must be named
	os.Exit(run(environment{
		args: os.Args[1:], stdin: os.Stdin, stdout: os.Stdout, stderr: os.Stderr,
		getenv: os.Getenv, dir: dir, now: time.Now,
	}))
}
