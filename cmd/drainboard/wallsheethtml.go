package main

import (
	_ "embed"
	"fmt"
	"io"

	"drainboard/cmd/drainboard/document"
	"drainboard/model"
	"drainboard/model/paper"
)

//go:embed wallsheet.html
var wallSheetHTML string

// sheetPage is the wall sheet as its template draws it.
type sheetPage struct {
	Title, When string
	Pages       [][]tankPaper
	Plan        []string
}

// tankPaper is one tank: words and boxes.
type tankPaper struct {
	Name, State, About, Marks string
	Due                       string
	Lines                     []string
	Boxes                     [][]boxPaper // one row of boxes each
}

// boxPaper is boxes behind a name, so many of a width in millimetres.
type boxPaper struct {
	Name  string
	Width int
	Times []struct{}
}

func boxes(name string, width, times int) boxPaper {
	return boxPaper{name, width, make([]struct{}, times)}
}

func sheetHTML(w io.Writer, s paper.Sheet, plan []string) error {
	page := sheetPage{Title: "Wall sheet, " + s.Room, When: s.At.Format("Mon 2 Jan 2006 15:04"), Plan: plan}
	for _, tanks := range s.Pages() {
		page.Pages = append(page.Pages, mapped(tanks, func(t paper.SheetTank) tankPaper { return tankOnPaper(t, s) }))
	}
	return document.Page(w, wallSheetHTML, page)
}

func tankOnPaper(t paper.SheetTank, s paper.Sheet) tankPaper {
	p := tankPaper{Name: t.Name, State: string(t.State), About: plain(t.Litres) + " L", Marks: joinMarks(t.Marks)}
	signed := []boxPaper{boxes("by", 14, 1), boxes("at", 20, 1)}
	if t.State != model.Holding {
		p.Lines = []string{emptyWords(t, s)}
		if t.HasCelsius {
			p.Lines = append(p.Lines, "last "+celsiusThen(t.Celsius, s.At.Location()))
		}
		p.Boxes = [][]boxPaper{append([]boxPaper{
			boxes("°C", 18, 1), boxes("wash: acid mL", 16, 1), boxes("water L", 16, 1), boxes("filled °C", 18, 1),
		}, signed...)}
		return p
	}
	p.About = fmt.Sprintf("batch %s, day %d, %s", t.Batch, t.AgeDays, p.About)
	p.Due, p.Lines = dueLine(t, s), []string{waterLine(t, s) + "   " + larvaeLine(t, s)}
	fed := []boxPaper{}
	for _, a := range s.Algae {
		fed = append(fed, boxes("fed "+a+" L", 16, 1))
	}
	p.Boxes = [][]boxPaper{
		{boxes("°C", 18, 1), boxes("lobes", 10, 1), boxes("golden %", 14, 1), boxes("swim: good / fair / poor", 0, 0), boxes("dead %", 14, 1)},
		{boxes("sizes µm", 11, 14)},
		{boxes("sizes µm", 11, 14)},
		{boxes("live", 13, 3), boxes("sample mL", 13, 1), boxes("of mL", 16, 1), boxes("dead", 11, 3)},
		append(fed, signed...),
	}
	return p
}

func joinMarks(marks []string) string {
	words := ""
	for _, m := range marks {
		words += "! " + m + " "
	}
	return words
}
