// Without is the control: the same program without drainboard/tui/darkbg.
package main

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"
)

func main() { fmt.Println("ready", tea.KeyEnter) }
