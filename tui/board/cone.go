package board

import (
	"strings"

	"drainboard/tui/theme"
)

// coneCells is the width of a drawn cone, coneRows its height.
const (
	coneCells = 7
	coneRows  = 4
)

// cone draws a conical tank filled to a share of its height. The last row is
// the drain.
func cone(m theme.Marks, share float64) [coneRows]string {
	var rows [coneRows]string
	filled := share * (coneRows - 1)
	for i := range coneRows - 1 {
		// Row 0 is the top; it holds what stands above the rows below it.
		level := filled - float64(coneRows-2-i)
		inside := strings.Repeat(m.Fill(level), coneCells-2-2*i)
		side := strings.Repeat(" ", i)
		rows[i] = side + `\` + inside + `/` + side
	}
	rows[coneRows-1] = "   v   "
	return rows
}
