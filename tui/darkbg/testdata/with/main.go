// With prints "ready" as soon as it has started.
package main

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	_ "drainboard/tui/darkbg"
)

func main() { fmt.Println("ready", tea.KeyEnter) }
